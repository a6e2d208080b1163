import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { ADJUSTABLES } from '../../../../src/scenario/edit/adjustable.ts';
import { textEditor } from '../../../../src/scenario/edit/applyEdits.ts';
import { ADJUSTABLE_KEYS, type Edit } from '../../../../src/scenario/edit/edit.ts';
import type { SchemeName } from '../../../../src/scenario/scenario.ts';
import { adjusted, EXAMPLES, edited, example, SCHEMES } from './editing.ts';

const apply = textEditor(8);

/** Examples as they are, and with elements that none of them has. */
const TEXTS = EXAMPLES.flatMap((name) => {
  const text = example(name);
  const more = edited(
    text,
    { kind: 'adjust', key: 'lineResistance', value: 0.8 },
    { kind: 'adjust', key: 'dropOutSpeed', value: 7 },
    { kind: 'endTime', value: 12.5 },
  );
  return [
    [name, text],
    [`${name} and more`, more],
  ] as const;
});

const RUNS = 12;

describe.each(TEXTS)('in %s', (_, text) => {
  const scenario = parseScenario(text);

  it.each(ADJUSTABLE_KEYS)('turning %s twice to the same value is turning it once', (key) => {
    const { min, max } = ADJUSTABLES[key].range(scenario);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const edit: Edit = { kind: 'adjust', key, value: min + share * (max - min) };
        const once = apply(text, [edit]);
        expect(apply(once.text, [edit])).toEqual(once);
      }),
      { numRuns: RUNS },
    );
  });

  it.each(ADJUSTABLE_KEYS)('turning %s to the value that stands changes nothing', (key) => {
    const value = ADJUSTABLES[key].read(scenario);
    const taken = value !== null || ADJUSTABLES[key].absentWords !== null;
    if (taken) expect(apply(text, [{ kind: 'adjust', key, value }]).text).toBe(text);
  });

  it('the end, the scheme and the faults that stand are neutral too', () => {
    for (const end of [12.25, 37 / 3, 'auto'] as const) {
      const edit: Edit = { kind: 'endTime', value: end };
      const once = edited(text, edit);
      expect(edited(once, edit)).toBe(once);
    }
    expect(edited(text, { kind: 'endTime', value: scenario.solver.endTime })).toBe(text);
    expect(edited(text, { kind: 'scheme', scheme: scenario.starter.control?.scheme ?? null })).toBe(text);
    for (const scheme of SCHEMES) {
      const edit: Edit = { kind: 'scheme', scheme: scheme satisfies SchemeName };
      const once = edited(text, edit);
      expect(edited(once, edit)).toBe(once);
    }
    expect(edited(text, { kind: 'faults', faults: scenario.starter.faults ?? [] })).toBe(text);
  });
});

it('the breakaway torque keeps its ratio, and does not creep by rounding when the same torque is set again', () => {
  const text = example('how-hard-does-plugging-twist-the-shaft').replace(
    /torque: \{ kind: friction.*/u,
    'torque: { kind: friction, torque: 7 N m, breakaway: 9.1 N m }',
  );
  expect(text).toContain('9.1 N m');
  const once = adjusted(text, 'loadTorque', 6.7326);
  // 9.1 / 7 = 1.3 of the value that was asked for.
  expect(once).toContain('torque: 6.733 N m, breakaway: 8.752 N m');
  expect(adjusted(once, 'loadTorque', 6.7326)).toBe(once);
  expect(adjusted(once, 'loadTorque', 6.733)).toBe(once);
});

it('a value that stands with more digits than a hand means keeps them, and so do a time in another unit and an angle a turn away', () => {
  const text = example('may-this-belt-be-plugged')
    .replace(/(?<=^load:\n) {2}inertia: [^#\n]*/mu, '  inertia: 0.1234567 kg m^2 ')
    .replace(/angle: [^#\n]*/u, 'angle: 420 deg ');
  expect(adjusted(text, 'loadInertia', 0.1234567)).toBe(text);
  expect(adjusted(text, 'closingAngle', Math.PI / 3)).toBe(text);
  const timed = edited(text, { kind: 'endTime', value: 12.5 }).replace('12.5 s', '12500 ms');
  expect(timed).toContain('12500 ms');
  expect(edited(timed, { kind: 'endTime', value: 12.5 })).toBe(timed);
});
