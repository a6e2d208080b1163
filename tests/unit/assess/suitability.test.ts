/** All criteria of real runs, joined. */
import { describe, expect, it } from 'vitest';
import { CRITERION_KEYS } from '../../../src/assess/criterion.ts';
import { suitability } from '../../../src/assess/suitability.ts';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { shortRun } from '../../support/shortRun.ts';

/** The example without what it says for a judgement. */
const bare = (text: string): Scenario => {
  const { thermal: _t, duty: _d, contactors: _c, limits: _l, protection: _p, ...plain } = parseScenario(text);
  return plain;
};
const scenario = bare(shortRun());
const result = simulate(scenario);
const judged = suitability(result, null);

describe('the suitability of a run', () => {
  it('has every criterion once, in the order of presentation', () => {
    expect(judged.criteria.map(({ key }) => key)).toEqual(CRITERION_KEYS);
  });

  it('is not judged while limits and ratings are missing', () => {
    expect(judged.verdict.outcome).toBe('notJudged');
    expect(judged.verdict.decisive).toEqual(
      expect.arrayContaining(['windingTemperature', 'contactLife', 'shaftTorque']),
    );
    expect(judged.wear).toBeNull();
    for (const { outcome, remark } of judged.criteria)
      if (outcome === 'notJudged') expect(remark).toMatch(/^not judged because \S/);
  });

  it('carries the plot of currents and the consequences of failures', () => {
    expect(judged.timeCurrent.start?.perPeriod.length).toBeGreaterThan(5);
    expect(judged.timeCurrent.plug?.perPeriod.length).toBeGreaterThan(1);
    expect(judged.consequences?.coast.outcome).toBe('rest');
  });

  it('is refused where the dead time lets the contactors meet', () => {
    const short = simulate(
      bare(
        shortRun(
          ['changeoverDelay: 12 ms', 'changeoverDelay: 0 ms'],
          ['closingTime: 18 ms', 'closingTime: 10 ms'],
        ),
      ),
    );
    expect(short.status.code).toBe('lineToLineShortCircuit');
    const { verdict, criteria } = suitability(short, null);
    expect(verdict.outcome).toBe('notSuitable');
    expect(verdict.sentence).toContain('line-to-line short circuit');
    expect(criteria.map(({ key }) => key)).toEqual(CRITERION_KEYS);
  });

  it('shows no value of a run whose figures may not be used', () => {
    const open = suitability(
      { ...result, usable: false, ledger: { ...result.ledger, residual: 1e-3 } },
      null,
    );
    expect(open.verdict).toMatchObject({
      outcome: 'notJudged',
      sentence: 'Plugging could not be judged because the energy balance of the run does not close.',
    });
    for (const criterion of open.criteria)
      expect(criterion).toMatchObject({ outcome: 'notJudged', value: null, margin: null });
  });

  it('of a hoist without a brake is refused whatever else is missing', () => {
    const torques = [
      { kind: 'friction', torque: 2, breakaway: 3 },
      { kind: 'gravity', torque: 20 },
    ] as const;
    const hoist: Scenario = { ...scenario, load: { ...scenario.load, torques } };
    const { verdict } = suitability(simulate(hoist), null);
    expect(verdict.outcome).toBe('notSuitable');
    expect(verdict.decisive).toContain('staysAtRest');
  });
});
