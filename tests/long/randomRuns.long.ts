import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { METRIC_KEYS, simulate } from '../../src/index.ts';
import { runPhaseVariableModel } from '../independent/phaseVariableModel.ts';
import { compareRuns } from '../support/compareRuns.ts';
import { type Difference, SMALL_MACHINE_FLOORS } from '../support/disagreements.ts';
import { randomScenario, TIGHT } from './randomScenario.ts';

const SEED = 20_240;
const RUNS = 200;
const COMPARED = 20;

/** Largest residual of the energy ledger, share of the throughput. */
const LEDGER = 1e-6;

const STATUSES = [
  'finished',
  'endTimeReached',
  'switchNeverOpened',
  'notSettled',
  'lineToLineShortCircuit',
  'nonFiniteValue',
  'stepLimit',
];

const result: string[] = [];

afterAll(() => {
  const text = [
    '# Random runs',
    '',
    'Written by `npm run test:long`.',
    '',
    ...result.map((line) => `- ${line}`),
    '',
  ];
  writeFileSync(new URL('result.md', import.meta.url), text.join('\n'));
});

it('every random run closes its ledger, ends with a known status and measures no NaN', () => {
  const counts = new Map<string, number>();
  const wrong: string[] = [];
  let worst = 0;
  fc.sample(randomScenario([0.05, 2], 'auto'), { seed: SEED, numRuns: RUNS }).forEach((scenario, index) => {
    const { status, metrics, ledger } = simulate(scenario);
    counts.set(status.code, (counts.get(status.code) ?? 0) + 1);
    worst = Math.max(worst, ledger.residual);
    if (!STATUSES.includes(status.code)) wrong.push(`run ${index}: status ${status.code}`);
    if (!(ledger.residual < LEDGER)) wrong.push(`run ${index}: ledger residual ${ledger.residual}`);
    for (const key of METRIC_KEYS) {
      const { value, time, multiple } = metrics[key];
      const numbers = [value, time, multiple?.value].filter((n) => n !== null && n !== undefined);
      if (!numbers.every(Number.isFinite)) wrong.push(`run ${index}: ${key} ${numbers.join(', ')}`);
    }
  });
  result.push(
    `${RUNS} runs, seed ${SEED}, default tolerance, automatic end`,
    ...STATUSES.map((code) => `${code}: ${counts.get(code) ?? 0}`),
    `worst ledger residual: ${worst.toExponential(0)} of the throughput (allowed ${LEDGER})`,
  );
  expect(wrong).toEqual([]);
  // The scenarios are plausible: nearly all of them must come to their end.
  expect(counts.get('finished')).toBeGreaterThan(0.8 * RUNS);
});

it('random runs agree with the phase-variable model in every metric', () => {
  const found: Difference[] = fc
    .sample(randomScenario([0.6, 1.2], 1), { seed: SEED, numRuns: COMPARED })
    .flatMap((scenario, index) => {
      const { current, torque } = scenario.machine.rated;
      const floors = {
        ...SMALL_MACHINE_FLOORS,
        A: (SMALL_MACHINE_FLOORS.A! * current!) / 6,
        N·m: (SMALL_MACHINE_FLOORS.N·m! * torque!) / 12,
        A·s: (SMALL_MACHINE_FLOORS.A·s! * current!) / 6,
      };
      return compareRuns(
        scenario,
        simulate(scenario).metrics,
        runPhaseVariableModel(scenario).metrics,
        floors,
      ).map(({ words, excess }) => ({ words: `run ${index}, ${words}`, excess }));
    });
  const worst = found.reduce((a, b) => (b.excess > a.excess ? b : a));
  result.push(
    `${COMPARED} runs compared with the phase-variable model, seed ${SEED}, tolerance ${TIGHT}`,
    `${found.length} values, times and phases compared; worst error: ${worst.excess.toPrecision(1)} of what is allowed`,
  );
  expect(found.filter(({ excess }) => excess > 1).map(({ words }) => words)).toEqual([]);
});
