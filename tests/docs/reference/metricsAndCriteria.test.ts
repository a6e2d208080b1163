import { describe, expect, it } from 'vitest';
import { CRITERION_KEYS, WAIVED } from '../../../src/assess/criterion.ts';
import { CRITERION_DEFINITIONS } from '../../../src/assess/criterionDefinitions.ts';
import { suitability } from '../../../src/assess/suitability.ts';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { METRIC_KEYS } from '../../../src/measure/metric.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { openingInstants } from '../../../src/survey/openingInstants.ts';
import { exampleText } from '../../support/examples.ts';
import { expectPage } from '../../support/generatedPages.ts';
import { NO_LIMITS } from '../../support/judgedRun.ts';
import { metricsPage } from '../../support/reference/metricsPage.ts';

const scenario = parseScenario(exampleText('may-this-belt-be-plugged.yaml'));
const result = simulate(scenario);
const instants = openingInstants(scenario);
const { thermal: _t, duty: _d, contactors: _c, limits: _l, protection: _p, ...bare } = scenario;

/** The criteria of the belt with other limits; the run does not depend on them. */
function judgedWith(limits: Partial<typeof NO_LIMITS>) {
  const changed = { ...result, scenario: { ...scenario, limits: { ...NO_LIMITS, ...limits } } };
  return suitability(changed, instants.means).criteria;
}

const full = suitability(result, instants.means).criteria;
const empty = suitability({ ...result, scenario: bare }, null).criteria;

it('the page of metrics and criteria is what the code says', () => {
  const page = metricsPage();
  for (const key of [...METRIC_KEYS, ...CRITERION_KEYS]) expect(page).toContain(`| \`${key}\` |`);
  expectPage('examples/guides/metrics-and-criteria.md', page);
});

describe('the words of each criterion say what the judgement does:', () => {
  it.each(CRITERION_KEYS)('%s', (key) => {
    const { limitIs, required, waivedBy } = CRITERION_DEFINITIONS[key];
    const of = (criteria: typeof full) => criteria.find((criterion) => criterion.key === key)!;
    expect(of(full).limitIs).toBe(limitIs);
    if (typeof required === 'string')
      for (const criteria of [full, empty]) expect(of(criteria).required).toBe(required === 'always');
    else expect(of(full).required).toBe(true);
    const waived = of(judgedWith(Object.fromEntries(waivedBy.map((limit) => [limit, 'none']))));
    expect(waived.source === WAIVED).toBe(waivedBy.length > 0);
  });

  it('and a criterion without a word about waiving is not waived by any limit', () => {
    const all = Object.keys(NO_LIMITS).filter((key) => key !== 'decelerationRadius');
    const waived = judgedWith(Object.fromEntries(all.map((limit) => [limit, 'none'])))
      .filter(({ source }) => source === WAIVED)
      .map(({ key }) => key);
    expect(waived).toEqual(CRITERION_KEYS.filter((key) => CRITERION_DEFINITIONS[key].waivedBy.length > 0));
  });

  it.each(['operationsPerHour', 'overloadRelay'] as const)(
    '%s is not required without what it needs',
    (key) => {
      const { thermal } = scenario;
      const without = { ...bare, ...(thermal === undefined ? {} : { thermal }) };
      const { criteria } = suitability({ ...result, scenario: without }, null);
      expect(criteria.find((criterion) => criterion.key === key)?.required).toBe(false);
    },
  );
});
