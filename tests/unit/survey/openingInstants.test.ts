import { describe, expect, it } from 'vitest';
import { dutyStretches, poleDuties } from '../../../src/measure/poleDuties.ts';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import { openingInstants } from '../../../src/survey/openingInstants.ts';
import { BARE_CONTACTOR, pairOf } from '../../support/contactors.ts';
import { ARCING_STARTER, scenarioOf, type Variation } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Nothing is known about bouncing. */
const NO_BOUNCE_TIMES = { forward: null, reverse: null };

const SWITCH = { dropOutSpeed: 6, pickUpSpeed: 12, delay: 0.005 };

function plugStop(variation: Variation = {}) {
  return scenarioOf(KRAUSE.hp3, {
    initial: 'runningForward',
    actions: [{ at: 0.05, do: 'plug' }],
    ...variation,
    starter: { ...ARCING_STARTER, zeroSpeedSwitch: SWITCH, ...variation.starter },
  });
}

describe('a plug stop over instants of opening', () => {
  const survey = openingInstants(plugStop(), 4);

  it('is run as often as asked, and every run is averaged', () => {
    expect(survey.runs).toBe(4);
    expect(survey.failed).toBe(0);
    expect(survey.means?.breakings.map(({ contactor, runs }) => [contactor, runs])).toEqual([
      ['forward', 4],
      ['reverse', 4],
    ]);
    expect(survey.sentence).toContain('4 runs');
  });

  it('finds the mean of many instants with few, though the closing angle decides how long the stop takes', () => {
    // Friction that makes the stop a matter of some periods, as in small drives: the opening then follows the closing angle.
    const brisk = plugStop({
      load: { inertia: 0, torques: [{ kind: 'friction', torque: 12, breakaway: 12 }] },
      solver: { relativeTolerance: 1e-6 },
    });
    const current = (count: number) => openingInstants(brisk, count).means!.breakings[1]!.equivalentCurrent!;
    // Arc charges lie between 63 % and 137 % of their mean; each run counts for the phases that it stands for.
    expectWithin(current(13), current(97), { relative: 0.05 }, 'equivalent current');
  });

  it('names the closing angle with the largest torque', () => {
    const scenario = plugStop();
    const { worstAngle } = openingInstants(scenario, 7);
    const torqueAt = (angle: number) => {
      const { metrics } = simulate({ ...scenario, supply: { ...scenario.supply, angle } });
      return Math.max(Math.abs(metrics.plugMinimumTorque.value!), Math.abs(metrics.plugMaximumTorque.value!));
    };
    const all = Array.from({ length: 7 }, (_, k) => torqueAt(scenario.supply.angle + (k * Math.PI) / 7));
    expectWithin(torqueAt(worstAngle!), Math.max(...all), { relative: 1e-4 }, 'torque at the worst angle');
    // The angle matters: the best of these gives far less.
    expect(Math.min(...all)).toBeLessThan(0.8 * Math.max(...all));
    const coasting = openingInstants(plugStop({ actions: [{ at: 0.05, do: 'coast' }] }), 2);
    expect(coasting.worstAngle).toBe(null);
  });

  it('reads duties from the stretches around the contacts as from the whole run', () => {
    const run = runTrajectory(plugStop());
    const whole = poleDuties(quadratureOf(run), NO_BOUNCE_TIMES);
    const parts = poleDuties(quadratureOf(run, dutyStretches(run)), NO_BOUNCE_TIMES);
    expect(parts.length).toBe(whole.length);
    for (const [i, duty] of whole.entries())
      for (const [key, value] of Object.entries(duty))
        if (typeof value === 'number')
          expectWithin(Reflect.get(parts[i]!, key), value, { relative: 1e-6, absolute: 1e-9 }, `${i} ${key}`);
  });

  it('finds the forward contactor AC-3-like and the reversing one AC-4-like', () => {
    expect(survey.categories).toEqual(['AC-3-like', 'AC-4-like']);
  });

  it('knows the charge of bouncing where the scenario states how long the contacts bounce, for that contactor alone', () => {
    const contactors = pairOf(BARE_CONTACTOR, { reverse: { ...BARE_CONTACTOR, bounceTime: 0.002 } });
    const [reverse] = openingInstants({ ...plugStop(), contactors }, 1).means?.makings ?? [];
    for (const { meanBounceCharge } of reverse?.poles ?? []) expect(meanBounceCharge).toBeGreaterThan(0);
    expect(survey.means?.makings[0]?.poles.map(({ meanBounceCharge }) => meanBounceCharge)).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('parts at different instants: the current at parting differs from run to run', () => {
    const pole = survey.means?.breakings[0]?.poles[0];
    expect(pole?.worstCurrent).toBeGreaterThan(1.1 * (pole?.meanCurrent ?? Number.NaN));
  });
});

describe('runs that do not end well', () => {
  it('are counted and left out, and the sentence says so', () => {
    // Contacts touch 6 ms after the others part: arcs of up to two thirds of a period (11 ms) are out by then at some instants only.
    const short = openingInstants(
      plugStop({ starter: { changeoverDelay: 0, closingTime: 0.012, openingTime: 0.006 } }),
      8,
    );
    expect(short.failed).toBeGreaterThan(0);
    expect(short.failed).toBeLessThan(8);
    expect(short.means?.breakings[0]?.runs).toBe(8 - short.failed);
    expect(short.sentence).toContain(`${short.failed} of these runs`);
  });

  it('all of them leave no figures', () => {
    const none = openingInstants(
      plugStop({ starter: { changeoverDelay: 0, closingTime: 0.006, openingTime: 0.006 } }),
      2,
    );
    expect(none.means).toBeNull();
    expect(none.categories).toEqual([]);
    expect(none.sentence).toContain('None of these runs ends well');
  });
});
