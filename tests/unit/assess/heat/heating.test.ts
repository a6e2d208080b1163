import { beforeAll, describe, expect, it } from 'vitest';
import type { Criterion, CriterionKey } from '../../../../src/assess/criterion.ts';
import { mostPerHour } from '../../../../src/assess/heat/dutyCycle.ts';
import type { HeatPulse } from '../../../../src/assess/heat/heat.ts';
import { heatCriteria } from '../../../../src/assess/heat/heatCriteria.ts';
import { type Heating, heating } from '../../../../src/assess/heat/heating.ts';
import { heatOfRun } from '../../../../src/assess/heat/heatOfRun.ts';
import { steadyState } from '../../../../src/machine/steadyState.ts';
import { integral, quadratureOf } from '../../../../src/measure/quadrature.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import type { DutyData, Scenario, ThermalData } from '../../../../src/scenario/scenario.ts';
import { steadySpeed } from '../../../../src/shaft/steadySpeed.ts';
import { ARCING_STARTER, PLAIN_CONTROL, scenarioOf, type Variation } from '../../../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../../../support/textbookMachines.ts';
import { NO_THERMAL } from '../../../support/thermalModels.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const STARTED_AND_PLUGGED: Variation = {
  starter: { ...ARCING_STARTER, zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 14, delay: 0.01 } },
  load: { inertia: 0.03, torques: [{ kind: 'friction', torque: 2, breakaway: 3 }] },
  actions: [
    { at: 0, do: 'startForward' },
    { at: 0.8, do: 'plug' },
  ],
  solver: { relativeTolerance: 1e-7 },
};
const REVERSED: Variation = {
  ...STARTED_AND_PLUGGED,
  actions: [
    { at: 0, do: 'startForward' },
    { at: 0.8, do: 'startReverse' },
  ],
};
const LEFT_TO_COAST: Variation = {
  ...STARTED_AND_PLUGGED,
  actions: [
    { at: 0, do: 'startForward' },
    { at: 0.8, do: 'coast' },
  ],
};

const DUTY: DutyData = {
  cycle: 'startPlugStop',
  operationsPerHour: 20,
  operationsPerDay: null,
  runningTime: 20,
  cyclicDurationFactor: null,
  pluggingShare: 1,
  inchingShare: 0,
  contactsChanged: null,
  operationsSince: null,
};
const CLASS_155: Partial<ThermalData> = {
  insulationClass: '155',
  lockedRotorTimeHot: 10,
  lockedRotorTimeCold: 20,
};

let plugged: RunResult;
let reversed: RunResult;
let coasted: RunResult;

beforeAll(() => {
  plugged = simulate(scenarioOf(KRAUSE.hp3, STARTED_AND_PLUGGED));
  reversed = simulate(scenarioOf(KRAUSE.hp3, REVERSED));
  coasted = simulate(scenarioOf(KRAUSE.hp3, LEFT_TO_COAST));
});

/** The same run with other data of the judgement: none of them changes it. */
function judgedWith(
  result: RunResult,
  thermal: Partial<ThermalData> | null,
  duty: Partial<DutyData> | null = {},
  more: Partial<Scenario> = {},
): RunResult {
  return {
    ...result,
    scenario: {
      ...result.scenario,
      ...(thermal && { thermal: { ...NO_THERMAL, ...thermal } }),
      ...(duty && { duty: { ...DUTY, ...duty } }),
      ...more,
    },
  };
}

function heatingOf(result: RunResult): Heating {
  const found = heating(result);
  if (typeof found === 'string') throw new Error(found);
  return found;
}

function heatOf(result: RunResult, fitted = false) {
  const heat = heatOfRun(result, fitted);
  if (typeof heat === 'string') throw new Error(heat);
  return heat;
}

function criterion(result: RunResult, key: CriterionKey): Criterion {
  const found = heatCriteria(result, heating(result)).find((candidate) => candidate.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found;
}

describe('heat of a run', () => {
  it('is that of the whole run less what runs between start and stop', () => {
    const { start, running, stop } = heatOf(plugged);
    const { statorLoss, rotorLoss } = plugged.ledger;
    // From 99 % of the steady speed to the stop the loss is nearly that of steady running.
    const between = (part: 'winding' | 'cage') =>
      running[part] * (0.8 - (ARCING_STARTER.closingTime + start.duration));
    const parts = (part: 'winding' | 'cage') => start[part] + between(part) + stop[part];
    // Between them lie some tens of joules of swinging about the steady speed.
    expectWithin(parts('winding'), statorLoss, { relative: 0.02 }, 'winding');
    expectWithin(parts('cage'), rotorLoss[0]!, { relative: 0.02 }, 'cage');
  });

  it('of a start ends at 99 % of the steady speed', () => {
    const { start } = heatOf(plugged);
    const end = plugged.operations.start!.touch! + start.duration;
    const speed = 0.99 * steadySpeed(plugged.scenario, 1)!;
    expectWithin(plugged.trajectory.at(end).speed, speed, { relative: 1e-9 }, 'speed at its end');
    // The metric ends at 95 %.
    expectWithin(start.cage, plugged.metrics.startRotorHeat.value!, { relative: 0.01 }, 'cage');
  });

  it('of a stop is all that comes after its command', () => {
    const { stop } = heatOf(plugged);
    const quadrature = quadratureOf(plugged.trajectory);
    const sinceCommand = (name: 'statorLoss' | 'cage1Loss') =>
      integral(quadrature, name, 0.8, plugged.trajectory.tEnd);
    expectWithin(stop.winding, sinceCommand('statorLoss'), { relative: 1e-9 }, 'winding');
    // In the cage a last eddy of the residual flux dies away after the poles have cleared.
    expectWithin(stop.cage, sinceCommand('cage1Loss'), { relative: 1e-3 }, 'cage');
    // The metrics end at zero speed, before the delayed switch has opened.
    expect(stop.winding).toBeGreaterThan(plugged.metrics.plugStatorHeat.value!);
  });

  it('while running is the loss of the circuit at the steady speed of the load', () => {
    const { machine, supply } = KRAUSE.hp3;
    const slip = 1 - steadySpeed(plugged.scenario, 1)! / KRAUSE.hp3.synchronousSpeed;
    const { current, airGapPower } = steadyState(machine, supply, slip);
    const { running } = heatOf(plugged);
    expectWithin(running.winding, 3 * current ** 2 * machine.Rs, { relative: 1e-9 }, 'winding');
    expectWithin(running.cage, slip * airGapPower, { relative: 1e-9 }, 'cage');
  });

  it('of a full reversal goes on to the speed of the other direction', () => {
    const heat = heatOf(reversed);
    expect(heat.stopKind).toBe('reversal');
    const { reversalRotorHeat, plugRotorHeat } = reversed.metrics;
    // The metric ends at 95 %, the heat at 99 % of the steady speed: (0.05² of the kinetic energy, of four) and the load's.
    expectWithin(heat.stop.cage, reversalRotorHeat.value!, { relative: 0.01 }, 'whole');
    expect(heat.stop.cage).toBeGreaterThan(reversalRotorHeat.value!);
    expectWithin(heat.braking?.cage, plugRotorHeat.value!, { relative: 1e-6 }, 'to zero speed');
  });

  it('of coasting is none in winding and cage once the arcs are out', () => {
    const { stop, stopKind } = heatOf(coasted);
    expect(stopKind).toBe('coast');
    const { start } = heatOf(coasted);
    expect(stop.winding).toBeLessThan(0.02 * start.winding);
    expect(stop.cage).toBeLessThan(0.02 * start.cage);
    // 2 N·m stop the whole inertia from near 185 rad/s
    const inertia = KRAUSE.hp3.machine.inertia + 0.03;
    expectWithin(stop.duration, (inertia * 184) / 2, { relative: 0.02 }, 'duration');
  });

  it('puts bearings and iron into the frame, and the load’s friction nowhere', () => {
    const machine = {
      ...KRAUSE.hp3.machine,
      mechanicalLoss: { friction: 0.6, windage: 0 },
      core: { R: 800, L: 0.2 },
    };
    const run = simulate(scenarioOf({ ...KRAUSE.hp3, machine }, STARTED_AND_PLUGGED));
    const { start, running, stop } = heatOf(run);
    const { operations, ledger } = run;
    const turned = run.metrics.stopRevolutions.value! * 2 * Math.PI;
    expect(stop.frame).toBeGreaterThan(0.6 * turned);
    // Of the whole run: friction is shared 0.6 to 2 between bearings and load.
    const between =
      running.frame * (operations.reversal!.command - operations.start!.touch! - start.duration);
    const expected = ledger.ironLoss + (ledger.frictionLoss * 0.6) / 2.6;
    expectWithin(start.frame + between + stop.frame, expected, { relative: 0.02 }, 'frame');
  });

  it('of a double cage is one heat, or two where the share of the outer cage is stated', () => {
    const run = simulate(
      scenarioOf(DOUBLE_CAGE, {
        ...STARTED_AND_PLUGGED,
        load: { inertia: 0.2, torques: [{ kind: 'friction', torque: 20, breakaway: 30 }] },
      }),
    );
    const one = heatOf(judgedWith(run, {}));
    const two = heatOf(judgedWith(run, { outerCageShare: 0.4 }));
    const fitted = heatOf(judgedWith(run, { outerCageShare: 0.4 }), true);
    const cages = (pulse: HeatPulse) => [pulse.cage, pulse.outerCage];
    expectWithin(two.stop.cage + two.stop.outerCage, one.stop.cage, { relative: 1e-12 }, 'sum');
    expect(one.stop.outerCage).toBe(0);
    expect(cages(fitted.stop)).toEqual(cages(one.stop));
    // Near standstill the resistive outer cage carries most of it.
    expect(two.stop.outerCage).toBeGreaterThan(two.stop.cage);
    expect(two.running.cage).toBeGreaterThan(two.running.outerCage);
  });

  it('leaves resistors in the lines out', () => {
    const lineResistors = { resistance: 1.5, closingTime: 0.02, openingTime: 0.001, bypassAfter: null };
    const run = simulate(
      scenarioOf(KRAUSE.hp3, {
        ...STARTED_AND_PLUGGED,
        starter: { ...STARTED_AND_PLUGGED.starter, lineResistors },
      }),
    );
    const { stop } = heatOf(run);
    const { plugStatorHeat, plugLineResistorHeat } = run.metrics;
    expect(plugLineResistorHeat.value).toBeGreaterThan(plugStatorHeat.value!);
    // Up to 2 % after zero speed, until the switch has opened
    expectWithin(stop.winding, plugStatorHeat.value!, { relative: 0.03 }, 'winding');
  });

  it('of plugging that is taken back on time is that of a stop', () => {
    const stopTime = plugged.metrics.stopTimeFromTouch.value! + plugged.metrics.commandToTouch.value!;
    const timed = simulate(
      scenarioOf(KRAUSE.hp3, {
        ...REVERSED,
        actions: [...REVERSED.actions!, { at: 0.788 + stopTime, do: 'coast' }],
      }),
    );
    const heat = heatOf(timed);
    expect(heat.stopKind).toBe('braking');
    // The contactor parts 12 ms after the command, at zero speed; the switch lets it part a few milliseconds later.
    expectWithin(heat.stop.cage, heatOf(plugged).stop.cage, { relative: 0.1 }, 'cage');
  });

  it('of a mechanical brake is none in winding and cage, and the time is the brake’s', () => {
    const braked = simulate(
      scenarioOf(KRAUSE.hp3, {
        ...STARTED_AND_PLUGGED,
        starter: { ...ARCING_STARTER, brake: { torque: 20, delay: 0.05, sets: 'onCommand' } },
        actions: [
          { at: 0, do: 'startForward' },
          { at: 0.8, do: 'brake' },
        ],
      }),
    );
    const { stop, stopKind } = heatOf(braked);
    expect(stopKind).toBe('braking');
    expect(stop.winding).toBeLessThan(20);
    expect(stop.duration).toBeLessThan(3);
  });
});

describe('a run without heat to judge says what is missing', () => {
  it.each([
    [
      'no start',
      { ...STARTED_AND_PLUGGED, initial: 'runningForward', actions: [{ at: 0.02, do: 'plug' }] },
      /no start from rest/,
    ],
    ['no stop', { ...STARTED_AND_PLUGGED, actions: [{ at: 0, do: 'startForward' }] }, /no stop/],
    [
      'too short a start',
      {
        ...STARTED_AND_PLUGGED,
        actions: [
          { at: 0, do: 'startForward' },
          { at: 0.1, do: 'plug' },
        ],
      },
      /does not come up to speed by 0.1 s/,
    ],
  ] as const)('%s', (_name, variation, why) => {
    const run = simulate(scenarioOf(KRAUSE.hp3, variation as Variation));
    expect(heating(run)).toMatch(why);
    for (const found of heatCriteria(run, heating(run))) {
      expect(found.outcome).toBe('notJudged');
      expect(found.remark).toMatch(why);
    }
  });
});

describe('heating of a run', () => {
  it('holds I²t of start and stop over that of the locked rotor', () => {
    const { withstand } = heatingOf(judgedWith(plugged, CLASS_155));
    const { machine, supply } = KRAUSE.hp3;
    expectWithin(
      withstand.lockedRotorCurrent,
      steadyState(machine, supply, 1).current,
      { relative: 1e-12 },
      'locked-rotor current',
    );
    const of = (phase: 'A' | 'B' | 'C') =>
      plugged.metrics[`startI2t${phase}`].value! + plugged.metrics[`plugI2t${phase}`].value!;
    // The start goes on from 95 to 99 % of the speed.
    expectWithin(withstand.I2t, Math.max(of('A'), of('B'), of('C')), { relative: 0.06 }, 'I²t');
    const unit = withstand.lockedRotorCurrent ** 2;
    expectWithin(withstand.hot?.share, withstand.I2t / (unit * 10), { relative: 1e-12 }, 'hot');
    expectWithin(withstand.cold?.share, withstand.I2t / (unit * 20), { relative: 1e-12 }, 'cold');
  });

  it('names the duty type with the factor of its cycle', () => {
    const { dutyType, heat } = heatingOf(judgedWith(plugged, CLASS_155));
    const factor = (heat.start.duration + 20 + heat.stop.duration) / 180;
    expectWithin(dutyType.cyclicDurationFactor, factor, { relative: 1e-9 }, 'factor');
    // 0.119/0.089
    expect(dutyType.designation).toBe(`S5, ${Math.round(100 * factor)} %, FI 1.3`);
  });

  it('permits more starts than stops, and about as many reversals as stops with their start', () => {
    const { permissible } = heatingOf(judgedWith(plugged, CLASS_155, { runningTime: 1 }));
    const rate = (kind: 'startCoast' | 'startPlugStop') => {
      const found = permissible[kind];
      return typeof found === 'string' ? Number.NaN : found.perHour;
    };
    expect(rate('startCoast')).toBeGreaterThan(2 * rate('startPlugStop'));
    expect(rate('startPlugStop')).toBeGreaterThan(0);
  });

  it('permits no more starts than the load has time to coast to rest between', () => {
    // 2 N·m of friction alone brake rotor and load: t = J·ω/T
    const { load, machine } = plugged.scenario;
    const runDown = ((load.inertia + machine.inertia) * steadySpeed(plugged.scenario, 1)!) / 2;
    const heat = heatOf(plugged);
    expectWithin(heat.coastTime, runDown, { relative: 1e-9 }, 'run-down');
    const perHour = mostPerHour(heat, 'startCoast', { kind: 'time', time: 1 });
    expectWithin(perHour, 3600 / (heat.start.duration + 1 + runDown), { relative: 1e-9 }, 'per hour');
    const { permissible } = heatingOf(judgedWith(plugged, CLASS_155, { runningTime: 1 }));
    expect(permissible.startCoast).toMatchObject({ remark: '' });
  });

  it('counts no time to coast where no friction ends it, and says so', () => {
    const load = { inertia: 0.03, torques: [{ kind: 'viscous', coefficient: 0.02 }] } as const;
    const smooth = simulate(scenarioOf(KRAUSE.hp3, { ...STARTED_AND_PLUGGED, load }));
    const { heat, permissible } = heatingOf(judgedWith(smooth, CLASS_155, { runningTime: 1 }));
    expect(heat.coastTime).toBeUndefined();
    expect(permissible.startCoast).toMatchObject({
      remark: 'friction does not bring the load to rest, so the time to coast is not counted',
    });
    expect(permissible.startPlugStop).toMatchObject({ remark: '' });
  });

  it('of a run that coasts knows nothing of braking', () => {
    const { kind, permissible } = heatingOf(judgedWith(coasted, CLASS_155, { cycle: 'startCoast' }));
    expect(kind).toBe('startCoast');
    expect(permissible.startPlugStop).toBe('the run shows no braking');
    expect(permissible.fullReversal).toBe('the run shows no braking');
    expect(criterion(judgedWith(coasted, CLASS_155), 'windingTemperature').remark).toMatch(
      /shows no braking/,
    );
  });

  it('without a duty takes the cycle that the run shows', () => {
    expect(heatingOf(plugged).kind).toBe('startPlugStop');
    expect(heatingOf(reversed).kind).toBe('fullReversal');
    expect(heatingOf(coasted).kind).toBe('startCoast');
  });

  it('lets the smaller of model and maker’s starts count', () => {
    const few = heatingOf(judgedWith(plugged, { ...CLASS_155, noLoadStartsPerHour: 100 }));
    const many = heatingOf(judgedWith(plugged, { ...CLASS_155, noLoadStartsPerHour: 1e7 }));
    expect(few.fromNoLoadStarts).toMatchObject({ governs: true });
    expect(many.fromNoLoadStarts).toMatchObject({ governs: false });
    expect(heatingOf(judgedWith(plugged, CLASS_155)).fromNoLoadStarts).toBe(null);
  });
});

describe('the criteria of heat', () => {
  it('are all there, in order', () => {
    expect(heatCriteria(plugged, heating(plugged)).map(({ key }) => key)).toEqual([
      'windingTemperature',
      'cageTemperature',
      'operationsPerHour',
      'lockedRotorWithstand',
      'overloadRelay',
    ]);
  });

  it('of temperature and rate pass a few operations an hour and fail at the most there is time for', () => {
    const gentle = judgedWith(plugged, CLASS_155, { operationsPerHour: 2, runningTime: 2 });
    const harsh = judgedWith(plugged, CLASS_155, { operationsPerHour: 1000, runningTime: 0 });
    const outcomes = (run: RunResult) =>
      heatCriteria(run, heating(run))
        .slice(0, 3)
        .map(({ outcome, required }) => [outcome, required]);
    expect(outcomes(gentle)).toEqual(Array(3).fill(['pass', true]));
    expect(outcomes(harsh)).toEqual(Array(3).fill(['fail', true]));
  });

  it('fail just beyond the permissible operations per hour and are close just below', () => {
    const { permissible } = heatingOf(judgedWith(plugged, CLASS_155, { runningTime: 2 }));
    if (typeof permissible.startPlugStop === 'string') throw new Error(permissible.startPlugStop);
    const { perHour, binding } = permissible.startPlugStop;
    expect(binding).toBe('winding');
    const at = (share: number) => {
      const run = judgedWith(plugged, CLASS_155, { operationsPerHour: share * perHour, runningTime: 2 });
      const [winding, , rate] = heatCriteria(run, heating(run));
      return [winding?.outcome, rate?.outcome];
    };
    expect(at(0.999)).toEqual(['close', 'close']);
    expect(at(1.001)).toEqual(['fail', 'fail']);
  });

  it('say that the heat of inching is not in the rate, where the duty has inching', () => {
    const remark = (inchingShare: number) =>
      criterion(
        judgedWith(plugged, CLASS_155, { operationsPerHour: 2, runningTime: 2, inchingShare }),
        'operationsPerHour',
      ).remark;
    expect(remark(0.3)).toContain('the heat of inching is not in it');
    expect(remark(0)).not.toContain('inching');
  });

  it('do not judge the winding without an insulation class, nor the rate', () => {
    const run = judgedWith(plugged, { lockedRotorTimeHot: 10 });
    for (const key of ['windingTemperature', 'operationsPerHour'] as const)
      expect(criterion(run, key)).toMatchObject({
        outcome: 'notJudged',
        required: true,
        remark: 'not judged because the insulation class is missing',
      });
    expect(criterion(run, 'cageTemperature').outcome).toBe('pass');
  });

  it('do not judge without the number of operations per hour', () => {
    const run = judgedWith(plugged, CLASS_155, { operationsPerHour: null });
    for (const key of ['windingTemperature', 'cageTemperature', 'operationsPerHour'] as const)
      expect(criterion(run, key).remark).toBe(
        'not judged because the number of operations per hour is missing',
      );
  });

  it('do not judge temperatures where an hour has no room for the operations, and the rate fails', () => {
    const run = judgedWith(plugged, CLASS_155, { operationsPerHour: 300 });
    expect(criterion(run, 'windingTemperature').remark).toMatch(/no room for 300 operations/);
    expect(criterion(run, 'operationsPerHour').outcome).toBe('fail');
  });

  it('say how many values are assumed', () => {
    expect(criterion(judgedWith(plugged, CLASS_155), 'cageTemperature').remark).toMatch(
      /values .* are assumed/,
    );
  });

  it('hold one operation against the locked-rotor withstand on both sides', () => {
    const { withstand } = heatingOf(judgedWith(plugged, CLASS_155));
    const equal = withstand.I2t / withstand.lockedRotorCurrent ** 2;
    const outcome = (lockedRotorTimeHot: number) =>
      criterion(judgedWith(plugged, { insulationClass: '155', lockedRotorTimeHot }), 'lockedRotorWithstand')
        .outcome;
    expect(outcome(1.01 * equal)).toBe('close');
    expect(outcome(0.99 * equal)).toBe('fail');
    expect(outcome(2 * equal)).toBe('pass');
  });

  it('let an overload relay trip or not in the rhythm of the duty', () => {
    const outcome = (setting: number) =>
      criterion(
        judgedWith(
          plugged,
          CLASS_155,
          { operationsPerHour: 400, runningTime: 1 },
          {
            protection: { overload: { setting, tripClass: '10' }, curves: [] },
          },
        ),
        'overloadRelay',
      ).outcome;
    expect(outcome(4)).toBe('fail');
    expect(outcome(60)).toBe('pass');
  });

  it('take the relay of the control circuit before another, and miss one that is nowhere', () => {
    const overload = { setting: 33, tripClass: '20', start: 'cold', memory: 'kept' } as const;
    const { starter } = plugged.scenario;
    const found = heatingOf(
      judgedWith(plugged, CLASS_155, DUTY, {
        starter: { ...starter, control: { ...PLAIN_CONTROL, overload } },
        protection: { overload: { setting: 4, tripClass: '10' }, curves: [] },
      }),
    );
    expect(found.relay).toMatchObject({ setting: 33, tripClass: '20' });
    expect(criterion(judgedWith(plugged, CLASS_155), 'overloadRelay')).toMatchObject({
      outcome: 'notJudged',
      required: false,
      remark: 'not judged because an overload relay is missing',
    });
  });
});
