import fc from 'fast-check';
import { expect, it } from 'vitest';
import { assertScenario } from '../../src/scenario/assertScenario.ts';
import { renderScenario } from '../../src/scenario/renderScenario.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { scenarioToYaml } from '../../src/scenario/scenarioToYaml.ts';
import { anyJudgement } from '../support/anyJudgement.ts';
import { JUDGEMENT } from '../unit/scenario/everyKey.ts';
import { minimalScenario, parseScenario } from '../unit/scenario/minimalScenario.ts';

const base = parseScenario(minimalScenario({ machine: JUDGEMENT.machine }));

it('whatever a file states for the judgement comes back from it the same to the last bit', () => {
  fc.assert(
    fc.property(anyJudgement, (sections) => {
      const original: Scenario = { ...base, ...sections };
      assertScenario(original);
      expect(parseScenario(JSON.parse(JSON.stringify(renderScenario(original))))).toEqual(original);
    }),
    { numRuns: 150, seed: 11 },
  );
});

it('the same from YAML text', () => {
  fc.assert(
    fc.property(anyJudgement, (sections) => {
      const original: Scenario = { ...base, ...sections };
      expect(parseScenario(scenarioToYaml(original))).toEqual(original);
    }),
    { numRuns: 40, seed: 12 },
  );
});

it('the cases above hold every key, stated and not, in a good number of them', () => {
  const all = fc.sample(anyJudgement, { numRuns: 150, seed: 11 });
  const counts = new Map<string, number>();
  const take = (data: unknown, path: string): void => {
    const kind = data === null ? 'null' : data === 'none' ? 'none' : 'stated';
    const isGroup = typeof data === 'object' && data !== null && !Array.isArray(data);
    if (!isGroup || path.endsWith('mechanicalBrake') || path.endsWith('overload')) {
      counts.set(`${path} ${kind}`, (counts.get(`${path} ${kind}`) ?? 0) + 1);
      return;
    }
    for (const [key, value] of Object.entries(data)) take(value, `${path}.${key}`);
  };
  for (const one of all) take(one, '');
  // Six keys of the title block, 15 thermal, 9 of the duty, 12 of each contactor and two more lives, 15 limits, overload and
  // curves, five of the alternatives.
  const keys = [...counts.keys()].filter((key) => key.endsWith(' stated'));
  expect(keys).toHaveLength(6 + 15 + 9 + 2 * 12 + 2 + 15 + 2 + 5);
  for (const key of keys) expect(counts.get(key)).toBeGreaterThan(10);
  const limits = [...counts.keys()].filter((key) => key.endsWith(' none'));
  expect(limits).toHaveLength(14);
});
