/** Inverse questions beside what a closed form or one run more says of the boundary. */
import { describe, expect, it } from 'vitest';
import { judged } from '../../../src/assess/criterion.ts';
import type { RunResult } from '../../../src/measure/result.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import type { Extreme, ExtremeName } from '../../../src/survey/inverse/extreme.ts';
import { extreme, extremes, type Judge, smallestResistor } from '../../../src/survey/inverse/extremes.ts';
import { PLUGGING_DUTY } from '../../support/contactors.ts';
import { ARCING_STARTER, scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const FRICTION = 4;
const SCENARIO: Scenario = {
  ...scenarioOf(KRAUSE.hp3, {
    starter: { ...ARCING_STARTER, zeroSpeedSwitch: { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0.002 } },
    load: { inertia: 0.05, torques: [{ kind: 'friction', torque: FRICTION, breakaway: FRICTION }] },
    actions: [
      { at: 0, do: 'startForward' },
      { at: 1, do: 'plug' },
    ],
    solver: { relativeTolerance: 1e-7 },
  }),
  duty: { ...PLUGGING_DUTY, operationsPerHour: 10, runningTime: 1 },
};
const PRESENT = simulate(SCENARIO);

/** A judge with one criterion that reads one figure of the run. */
function judgeBy(read: (result: RunResult) => number | null, limit: number): Judge {
  const of = (result: RunResult) => ({
    result,
    criteria: [
      judged({
        key: 'stopTime',
        name: 'the one criterion',
        value: read(result),
        unit: '1',
        limit,
        limitIs: 'most',
        source: 'test',
        remark: '',
        required: true,
      }),
    ],
    against: result.operations.reversal === null ? ['not plugged'] : [],
  });
  return { run: of, scenario: (scenario) => of(simulate(scenario)) };
}

function answerTo(name: ExtremeName, judge: Judge): Extreme {
  return extreme(name, PRESENT, judge);
}

describe('how far a quantity may go', () => {
  it('finds the inertia at which the stop takes the longest time allowed', () => {
    const longest = 1;
    const stop = ({ metrics }: RunResult) => metrics.stopTimeFromTouch.value;
    const { boundary, present } = answerTo('largestInertia', judgeBy(stop, longest));
    expect(present).toBe(0.05);
    const { value, beyond, binding } = boundary!;
    // The stop time is all but proportional to the inertia: each run takes it from what the motor and friction give.
    const [first, second] = [value!, beyond!].map((inertia) => {
      const run = simulate({
        ...SCENARIO,
        load: { ...SCENARIO.load, inertia },
        // Whole periods later: the same closing angle.
        actions: [SCENARIO.actions[0]!, { at: 6, do: 'plug' }],
      });
      return stop(run)!;
    });
    expect(first).toBeLessThanOrEqual(longest);
    expect(second).toBeGreaterThan(longest);
    expectWithin(beyond! / value!, 1.005, { absolute: 0.0051 }, 'bracket of one per cent');
    expect(binding).toEqual(['the one criterion']);
  });

  it('finds the operations per hour at which a criterion of the duty fails, without another run', () => {
    const perHour = ({ scenario }: RunResult) => scenario.duty!.operationsPerHour;
    const { boundary, present } = answerTo('mostOperations', judgeBy(perHour, 77));
    expect(present).toBe(10);
    expectWithin(boundary!.value!, 77, { relative: 0.01 }, 'operations per hour');
    expect(boundary!.value).toBeLessThanOrEqual(77);
  });

  it('finds the smallest resistor that keeps the crest within its limit', () => {
    const crest = ({ metrics }: RunResult) => metrics.plugPeakCurrent.value;
    const limit = 0.6 * crest(PRESENT)!;
    const { boundary, present } = answerTo('smallestResistor', judgeBy(crest, limit));
    expect(present).toBe(0);
    const run = (resistance: number) =>
      crest(
        simulate({
          ...SCENARIO,
          starter: {
            ...SCENARIO.starter,
            lineResistors: { resistance, closingTime: 0.022, openingTime: 0.012, bypassAfter: null },
          },
        }),
      )!;
    expect(run(boundary!.value!)).toBeLessThanOrEqual(limit);
    expect(run(0.98 * boundary!.value!)).toBeGreaterThan(limit);
  });

  it('rounds the resistor to choose up to three digits, so that what is printed passes', () => {
    const crest = ({ metrics }: RunResult) => metrics.plugPeakCurrent.value;
    for (const share of [0.6, 0.7]) {
      const judge = judgeBy(crest, share * crest(PRESENT)!);
      const exact = extreme('smallestResistor', PRESENT, judge).boundary!.value!;
      const chosen = smallestResistor(PRESENT, judge)!;
      expect(chosen).toBe(Number(chosen.toPrecision(3)));
      expect(chosen).toBeGreaterThanOrEqual(exact);
      expect(chosen).toBeLessThan(1.011 * exact);
    }
  });

  it('says that no resistor is needed where plugging passes without', () => {
    const { boundary, missing } = answerTo(
      'smallestResistor',
      judgeBy(() => 0, 1),
    );
    expect(boundary).toBe(null);
    expect(missing).toBe('none is needed: plugging passes without');
  });

  it('finds the dead times between which the arcs are out and the stop is in time', () => {
    const arcs = ({ metrics }: RunResult) => -(metrics.arcMargin.value ?? Number.NEGATIVE_INFINITY);
    const least = 0.012;
    const shortest = answerTo('shortestDeadTime', judgeBy(arcs, -least)).boundary!;
    // The margin is the dead time less the arcs' duration, which depends on the closing angle alone.
    const present = PRESENT.metrics;
    const arcing = present.partingToTouch.value! - present.arcMargin.value!;
    expectWithin(shortest.value!, least + arcing, { relative: 0.011 }, 'shortest');
    // Contactors that close in 22 ms and open in 12 ms make no dead time below 10 ms.
    expectWithin(
      answerTo(
        'shortestDeadTime',
        judgeBy(() => 0, 1),
      ).boundary!.value!,
      0.01,
      { absolute: 1e-9 },
      'least',
    );
    const commandToRest = ({ metrics }: RunResult) => metrics.stopTimeFromParting.value;
    const longest = answerTo('longestDeadTime', judgeBy(commandToRest, 1)).boundary!;
    expect(longest.kind).toBe('found');
    expect(longest.value).toBeGreaterThan(present.partingToTouch.value!);
  });

  it('ends the longest dead time where the load has come to rest by itself', () => {
    const friction = 12;
    const torques = [{ kind: 'friction' as const, torque: friction, breakaway: friction }];
    const heavy = simulate({ ...SCENARIO, load: { inertia: 0.05, torques } });
    const longest = extreme(
      'longestDeadTime',
      heavy,
      judgeBy(() => 0, 1),
    ).boundary!;
    expect(longest.binding).toEqual(['not plugged']);
    // Friction brings the shaft to the drop-out speed of the switch in J·Δω/T.
    const inertia = KRAUSE.hp3.machine.inertia + 0.05;
    const speed = heavy.trajectory.at(heavy.operations.reversal!.parting!).speed;
    const coasting = (inertia * (speed - 5)) / friction;
    expectWithin(longest.value!, coasting, { relative: 0.02 }, 'coasting to drop-out');
  });

  it('finds the lowest drop-out speed after which the shaft does not turn back', () => {
    const { boundary, present } = answerTo(
      'dropOutForLeastCreep',
      judgeBy(() => 0, 1),
    );
    expect(present).toBe(5);
    expect(boundary!.binding).toEqual(['reverse creep']);
    const creep = (dropOutSpeed: number) =>
      simulate({
        ...SCENARIO,
        starter: {
          ...SCENARIO.starter,
          zeroSpeedSwitch: { dropOutSpeed, pickUpSpeed: 1.5 * dropOutSpeed, delay: 0.002 },
        },
      }).metrics.creepRevolutions.value!;
    expect(creep(boundary!.value!)).toBeLessThanOrEqual(1e-3);
    expect(creep(0.97 * boundary!.value!)).toBeGreaterThan(1e-3);
  });

  it('says what a scenario lacks', () => {
    const { duty: _, ...bare } = SCENARIO;
    const without = simulate({ ...bare, starter: { ...bare.starter, zeroSpeedSwitch: null } });
    const found = extremes(
      without,
      judgeBy(() => 0, 1),
    );
    expect(found.find(({ name }) => name === 'mostOperations')!.missing).toBe('the duty is missing');
    expect(found.find(({ name }) => name === 'dropOutForLeastCreep')!.missing).toBe(
      'the starter has no zero-speed switch',
    );
    const coasting = simulate({ ...SCENARIO, actions: [SCENARIO.actions[0]!, { at: 1, do: 'coast' }] });
    for (const { missing } of extremes(
      coasting,
      judgeBy(() => 0, 1),
    ))
      expect(missing).toBe('no plug or reversal takes place in this run');
  });
});
