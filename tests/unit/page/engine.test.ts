import { expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';
import { newEngine } from '../../../src/page/worker/engine.ts';
import type { RunAnswer, RunOrder } from '../../../src/page/worker/protocol.ts';
import { hide } from '../../../src/report/lesson/hiddenFault.ts';
import { exampleText } from '../../support/examples.ts';

const text = exampleText('may-this-belt-be-plugged.yaml');
const OUTSIDE = { version: '0.0.0', plotlySource: async () => '' };
const ORDER: RunOrder = {
  text,
  fileName: 'belt.yaml',
  edits: [],
  units: 'SI',
  hidden: null,
  detail: { draft: false, span: null },
};

async function runOf(order: Partial<RunOrder>): Promise<Extract<RunAnswer, { kind: 'run' }>> {
  const answer = await newEngine(OUTSIDE).run({ ...ORDER, ...order });
  if (answer.kind !== 'run') throw new Error(`${answer.kind} instead of a run`);
  return answer;
}

it('every number shown is that of the same scenario run by the library', async () => {
  const { view } = await runOf({});
  const { metrics } = simulate(parseScenario(text));
  const rows = view.numbers.flatMap((group) => group.rows);
  expect(rows.length).toBeGreaterThan(30);
  for (const { key, value } of rows) expect(value).toBe(metrics[key].value);
});

it('the text that comes back is what was run: parsed again it is the scenario of the view', async () => {
  const answer = await runOf({ edits: [{ kind: 'adjust', key: 'loadInertia', value: 0.09 }] });
  expect(answer.text).not.toBe(text);
  expect(parseScenario(answer.text)).toEqual(answer.view.scenario);
  expect(answer.view.scenario.load.inertia).toBeCloseTo(0.09, 12);
});

it('a text that is no scenario is refused with line and column, and comes back unchanged', async () => {
  const broken = text.replace('lineVoltage: 400 V', 'lineVoltage: 400 parsecs');
  const answer = await newEngine(OUTSIDE).run({ ...ORDER, text: broken });
  if (answer.kind !== 'refused') throw new Error(answer.kind);
  expect(answer.text).toBe(broken);
  const line = broken.split('\n').findIndex((row) => row.includes('parsecs')) + 1;
  expect(answer.problems).toEqual([expect.objectContaining({ file: 'belt.yaml', line, column: 16 })]);
});

it('what only solving the circuit finds has its line and column too', async () => {
  const contradictory = text.replace(
    'rated: { power: 7.5 kW, speed: 1455 rpm',
    'rated: { power: 7.5 kW, speed: 1600 rpm',
  );
  const answer = await newEngine(OUTSIDE).run({ ...ORDER, text: contradictory });
  if (answer.kind !== 'refused') throw new Error(answer.kind);
  for (const { line, column } of answer.problems) {
    expect(line).toBeGreaterThan(1);
    expect(column).toBeGreaterThan(1);
  }
});

it('a change that makes no sense here is told in words and changes nothing', async () => {
  const answer = await newEngine(OUTSIDE).run({
    ...ORDER,
    edits: [{ kind: 'button', at: 0.5, do: 'press', button: 'stop' }],
  });
  expect(answer).toMatchObject({ kind: 'notChanged', text });
});

it('an instant that is asked for is exact, in the units of the page', async () => {
  const engine = newEngine(OUTSIDE);
  await engine.run(ORDER);
  const point = simulate(parseScenario(text)).trajectory.at(1.0305);
  const frame = await engine.frame(1.0305, 'us');
  expect(frame.iA).toBe(point.iA);
  // 1 lbf·ft = 1.3558179483314003 N·m: the foot and the pound are defined, so is standard gravity.
  expect(frame.torque).toBeCloseTo(point.torque / 1.3558179483314003, 9);
});

it('a hidden fault acts in the run, and neither text nor view tell it', async () => {
  const healthy = await runOf({});
  const fault = hide([{ kind: 'deadPole', contactor: 'reverse', pole: 'B' }]);
  const hidden = await runOf({ hidden: { fault, told: false } });
  expect(hidden.text).toBe(text);
  expect(hidden.view.scenario.starter.faults ?? []).toEqual([]);
  const stop = ({ view }: typeof healthy) =>
    view.numbers.flatMap(({ rows }) => rows).find(({ key }) => key === 'stopTimeFromTouch')?.value;
  expect(stop(hidden)).not.toBe(stop(healthy));
  const told = await runOf({ hidden: { fault, told: true } });
  expect(told.view.scenario.starter.faults).toHaveLength(1);
});

it('the whole judgement says what the command line says', async () => {
  const judged = await newEngine(OUTSIDE).judge({ text, fileName: 'belt.yaml', units: 'SI', hidden: null });
  expect(judged.verdict.outcome).toBe('suitable');
  expect(judged.rows.map(([name]) => name)).toContain('coasting');
  expect(judged.rows.every((row) => row.length === judged.heads.length)).toBe(true);
});

it('a draft has the numbers of the full run, and settling brings the full pictures and the verdict', async () => {
  const engine = newEngine(OUTSIDE);
  const span = [1.02, 1.08] as const;
  const draft = await engine.run({ ...ORDER, detail: { draft: true, span } });
  const full = await runOf({});
  if (draft.kind !== 'run') throw new Error(draft.kind);
  expect(draft.view.numbers).toEqual(full.view.numbers);
  const { t } = draft.view.film.columns;
  expect(t.length).toBeLessThan(full.view.film.columns.t.length / 2);
  // From end to end, and never back.
  expect(t[0]).toBe(draft.view.film.tStart);
  expect(t.at(-1)).toBe(draft.view.film.tEnd);
  expect(t.every((at, i) => i === 0 || at > t[i - 1]!)).toBe(true);
  // What is seen is as dense as ever: 80 samples a cycle of 20 ms over 60 ms, or the fewest that a picture has.
  expect(t.filter((at) => at >= span[0] && at <= span[1]).length).toBeGreaterThanOrEqual(240);
  const settled = await engine.settle();
  expect(settled.serial).toBe(draft.serial);
  expect(settled.pictures?.film.columns.t).toEqual(full.view.film.columns.t);
  expect(settled.verdict?.criteria.length).toBeGreaterThan(15);
  expect((await engine.settle()).pictures).toBeNull();
});
