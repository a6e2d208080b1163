/** How a stop ends, how long it takes, and its change-over: each criterion on both sides, waived, and without its data. */
import { describe, expect, it } from 'vitest';
import type { Criterion, CriterionKey } from '../../../../src/assess/criterion.ts';
import { runCriteria } from '../../../../src/assess/stop/runCriteria.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import type {
  CycleName,
  DutyData,
  LimitsData,
  LoadTorque,
  StarterData,
} from '../../../../src/scenario/scenario.ts';
import { PLUGGED, pluggedRun, withLimits, withMetrics } from '../../../support/judgedRun.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const of = (result: RunResult, key: CriterionKey): Criterion => {
  const found = runCriteria(result).find((criterion) => criterion.key === key);
  if (found === undefined) throw new Error(`no criterion ${key}`);
  return found;
};

const run = pluggedRun();
const SWITCH = PLUGGED.starter?.zeroSpeedSwitch ?? null;
const starter = (more: Partial<StarterData>): Partial<StarterData> => ({ ...PLUGGED.starter, ...more });
const loaded = (...torques: LoadTorque[]) => ({ load: { inertia: 0.03, torques } });
const friction: LoadTorque = { kind: 'friction', torque: 1, breakaway: 1.5 };
const reversed = pluggedRun({ actions: [{ at: 0.02, do: 'startReverse' }] });

describe('time, angle and creep of a stop', () => {
  /** From a grid of samples: the first one past zero speed, and the last one. Spacing 2 µs. */
  const { trajectory } = run;
  const count = Math.round(trajectory.tEnd / 2e-6);
  const grid = trajectory.sample(0, trajectory.tEnd, count + 1);
  const zero = grid.speed.findIndex((speed, i) => i > 0 && grid.t[i]! > 0.02 && speed <= 0);
  const values = {
    stopTime: grid.t[zero]! - 0.02,
    stopAngle: grid.position[zero]! - trajectory.at(0.02).position,
    reverseCreep: grid.position[zero]! - grid.position[count]!,
  };
  /** One sample in a stop of some 0.1 s; the creep is small. */
  const tolerance = { relative: 1e-4, absolute: 1e-6 };

  it('the run stops, and creeps a little', () => {
    expect(values.stopTime).toBeGreaterThan(0.05);
    expect(values.reverseCreep).toBeGreaterThan(1e-3);
  });

  it.each(['stopTime', 'stopAngle', 'reverseCreep'] as const)(
    '%s is judged on both sides of its limit',
    (key) => {
      const judge = (limit: LimitsData[typeof key]) => of(withLimits(run, { [key]: limit }), key);
      const value = values[key];
      expectWithin(judge(1.25 * value).value, value, tolerance, key);
      expect(judge(1.25 * value)).toMatchObject({ outcome: 'pass', limit: 1.25 * value });
      expect(judge(1.05 * value).outcome).toBe('close');
      expect(judge(0.95 * value).outcome).toBe('fail');
      expect(judge('none')).toMatchObject({
        outcome: 'pass',
        value: null,
        source: 'the scenario states that no limit applies',
      });
      expect(judge(null)).toMatchObject({
        outcome: 'notJudged',
        required: false,
        remark: `not judged because limits.${key} is missing`,
      });
      expect(of(run, key).outcome).toBe('notJudged');
    },
  );

  it('a reversal has a stop but no creep', () => {
    const judged = withLimits(reversed, { stopTime: 10, reverseCreep: 1e-9 });
    expect(of(judged, 'stopTime').outcome).toBe('pass');
    expect(of(judged, 'reverseCreep')).toMatchObject({ outcome: 'pass', value: null });
  });

  it('a stop that does not come to zero is not judged', () => {
    const cut = pluggedRun({ solver: { relativeTolerance: 1e-8, endTime: 0.06 } });
    expect(of(withLimits(cut, { stopTime: 1 }), 'stopTime')).toMatchObject({
      outcome: 'notJudged',
      remark: 'not judged because the machine does not come to zero speed in this run',
    });
  });
});

describe('coming to rest', () => {
  const judge = (result: RunResult) => of(result, 'comesToRest');

  it('a stop that ends held passes', () => {
    expect(judge(run)).toMatchObject({ outcome: 'pass', value: 0, limit: 0, required: true });
  });

  it('a load without dry friction only approaches rest, and says so', () => {
    const slow = judge(pluggedRun(loaded({ kind: 'viscous', coefficient: 0.02 })));
    expect(slow).toMatchObject({ outcome: 'pass', value: 0 });
    expect(slow.remark).toContain('only approaches rest');
  });

  it('a shaft that nothing slows is not judged', () => {
    expect(judge(pluggedRun(loaded()))).toMatchObject({
      outcome: 'notJudged',
      required: true,
      remark: 'not judged because dry friction or another torque that slows the coasting shaft is missing',
    });
  });

  it('a load that turns the shaft on fails', () => {
    const hoist = judge(pluggedRun(loaded({ kind: 'gravity', torque: 3 })));
    expect(hoist.outcome).toBe('fail');
    expect(hoist.value).toBeGreaterThan(1);
  });

  it('plugging that nothing ends fails at the speed it runs up to', () => {
    const runsOn = judge(pluggedRun({ starter: starter({ zeroSpeedSwitch: null }) }));
    expect(runsOn.outcome).toBe('fail');
    // 1 N·m of friction: within two per cent of synchronous speed.
    expectWithin(runsOn.value, KRAUSE.hp3.synchronousSpeed, { relative: 0.02 }, 'speed');
  });

  it('a switch that never opens fails', () => {
    const stuck = pluggedRun({
      starter: starter({ faults: [{ kind: 'zeroSpeedSwitch', mode: 'stuckClosed' }] }),
    });
    expect(judge(stuck).outcome).toBe('fail');
    expect(of(stuck, 'endedBySwitch')).toMatchObject({ outcome: 'fail', value: 1 });
  });

  it('a run that is cut off is not judged', () => {
    const cut = pluggedRun({ solver: { relativeTolerance: 1e-8, endTime: 0.06 } });
    expect(judge(cut)).toMatchObject({ outcome: 'notJudged' });
    expect(of(cut, 'endedBySwitch')).toMatchObject({ outcome: 'notJudged', required: true });
  });

  it('a machine that is started again before it has come to rest is not judged', () => {
    const again = pluggedRun({
      actions: [
        { at: 0.02, do: 'plug' },
        { at: 0.05, do: 'startForward' },
      ],
    });
    expect(judge(again)).toMatchObject({ outcome: 'notJudged' });
  });

  it('a full reversal has to run up the other way', () => {
    expect(judge(reversed)).toMatchObject({ outcome: 'pass', value: 0 });
    const cut = pluggedRun({
      actions: [{ at: 0.02, do: 'startReverse' }],
      solver: { relativeTolerance: 1e-8, endTime: 0.1 },
    });
    expect(judge(cut).outcome).toBe('notJudged');
  });

  it('a full reversal that stalls on a sticking load lacks 95 per cent of the speed', () => {
    // Held by 60 N·m; the locked rotor of this machine gives 53 N·m.
    const stalls = pluggedRun({
      actions: [{ at: 0.02, do: 'startReverse' }],
      load: { inertia: 0.03, torques: [{ kind: 'friction', torque: 5, breakaway: 60 }] },
      solver: { relativeTolerance: 1e-8, endTime: 0.9 },
    });
    // Without a stated end it stands like that until the longest run allowed is over; nothing changes in it.
    const { scenario } = stalls;
    const waited = {
      ...stalls,
      scenario: { ...scenario, solver: { ...scenario.solver, endTime: 'auto' as const } },
    };
    expect(judge(stalls).outcome).toBe('notJudged');
    expect(judge(waited).outcome).toBe('fail');
    expectWithin(judge(waited).value, 0.95 * KRAUSE.hp3.synchronousSpeed, { relative: 0.05 }, 'missing');
  });

  it('a load that runs away fails', () => {
    // 45 N·m forwards; against the field at slip 2 the machine has 34 N·m.
    const torques: LoadTorque[] = [{ kind: 'gravity', torque: -45 }];
    for (const what of ['startReverse', 'plug'] as const) {
      for (const endTime of ['auto', 60] as const) {
        const solver = { relativeTolerance: 1e-8, endTime };
        const away = pluggedRun({ ...loaded(...torques), actions: [{ at: 0.02, do: what }], solver });
        expect(away.status.code).toBe('overspeed');
        expect(judge(away).outcome).toBe('fail');
        // The run ends at three times synchronous speed.
        expectWithin(judge(away).value, 3 * KRAUSE.hp3.synchronousSpeed, { relative: 1e-6 }, 'speed');
      }
    }
  });
});

describe('staying at rest', () => {
  const judge = (torques: LoadTorque[], more: Partial<StarterData> = {}) => {
    const scenario = {
      ...run.scenario,
      ...loaded(...torques),
      starter: { ...run.scenario.starter, ...more },
    };
    return of({ ...run, scenario }, 'staysAtRest');
  };
  const gravity: LoadTorque = { kind: 'gravity', torque: 2 };
  const holding = (breakaway: number): LoadTorque => ({ kind: 'friction', torque: 1, breakaway });

  it('compares what pulls with what holds', () => {
    expect(judge([gravity, holding(3)])).toMatchObject({
      outcome: 'pass',
      value: 2,
      limit: 3,
      required: true,
    });
    expect(judge([gravity, holding(3)]).remark).toContain('a holding brake is common practice');
    expect(judge([gravity, holding(2.1)]).outcome).toBe('close');
    expect(judge([gravity, holding(1.9)])).toMatchObject({ outcome: 'fail', value: 2, limit: 1.9 });
    expect(judge([gravity])).toMatchObject({ outcome: 'fail', limit: 0 });
    expect(judge([friction])).toMatchObject({ outcome: 'pass', value: 0, limit: 1.5, remark: '' });
    expect(judge([])).toMatchObject({ outcome: 'pass', value: 0, limit: 0 });
  });

  it('takes a table that is not mirrored by its torque at zero speed', () => {
    const table: LoadTorque = {
      kind: 'table',
      mirrored: false,
      points: [
        { speed: -100, torque: -6 },
        { speed: 100, torque: 0 },
      ],
    };
    expect(judge([table, holding(2.5)])).toMatchObject({ outcome: 'fail', value: 3, limit: 2.5 });
    expect(judge([table, holding(4)]).outcome).toBe('pass');
  });

  it('counts nothing as a hold where nothing holds, whatever the integration needs at rest', () => {
    const mirrored: LoadTorque = {
      kind: 'table',
      mirrored: true,
      points: [
        { speed: 0, torque: 0 },
        { speed: 100, torque: 5 },
      ],
    };
    expect(judge([mirrored, gravity]).limit).toBe(0);
  });

  it('counts a brake that sets after plugging, and no other', () => {
    const brake = (torque: number, sets: 'onCommand' | 'afterPlugging') => ({
      brake: { torque, delay: 0.1, sets },
    });
    expect(judge([gravity], brake(3, 'afterPlugging'))).toMatchObject({ outcome: 'pass', limit: 3 });
    expect(judge([gravity], brake(1.5, 'afterPlugging')).remark).toContain('the brake is too weak');
    const idle = judge([gravity], brake(3, 'onCommand'));
    expect(idle).toMatchObject({ outcome: 'fail', limit: 0 });
    expect(idle.remark).toContain('does not set by itself');
    expect(judge([gravity]).remark).toContain('a holding brake is missing');
  });

  it('does not arise in a full reversal', () => {
    const scenario = { ...reversed.scenario, ...loaded(gravity) };
    expect(of({ ...reversed, scenario }, 'staysAtRest')).toMatchObject({ outcome: 'pass', value: null });
  });
});

describe('the end of plugging', () => {
  const judge = (result: RunResult) => of(result, 'endedBySwitch');

  it('by the switch passes', () => {
    expect(judge(run)).toMatchObject({ outcome: 'pass', value: 0, limit: 0, required: true });
    expect(judge(run).source).toContain('IEC 60204-1');
  });

  it('without a switch fails', () => {
    const blind = judge(pluggedRun({ starter: starter({ zeroSpeedSwitch: null }) }));
    expect(blind).toMatchObject({ outcome: 'fail', value: 1 });
    expect(blind.remark).toContain('no zero-speed switch');
  });

  it('on time alone fails, and the same commanded for good is a reversal', () => {
    const timed = pluggedRun({
      actions: [
        { at: 0.02, do: 'startReverse' },
        { at: 0.12, do: 'coast' },
      ],
    });
    expect(judge(timed)).toMatchObject({ outcome: 'fail', value: 1 });
    expect(judge(timed).remark).toContain('on time alone');
    expect(judge(reversed)).toMatchObject({ outcome: 'pass', value: null, required: false });
  });

  it('by the time limit of an emergency stop fails', () => {
    const limited = { kind: 'limitEndsBraking', t: 0.1, speed: 50, ranUp: false } as const;
    expect(judge({ ...run, controlFindings: [limited] })).toMatchObject({ outcome: 'fail', value: 1 });
  });

  it('is not shown by a full reversal where the duty states plug stops', () => {
    const duty = (cycle: CycleName): DutyData => ({
      cycle,
      operationsPerHour: null,
      operationsPerDay: null,
      runningTime: null,
      cyclicDurationFactor: null,
      pluggingShare: 1,
      inchingShare: 0,
      contactsChanged: null,
      operationsSince: null,
    });
    const of = (cycle: CycleName) =>
      judge({ ...reversed, scenario: { ...reversed.scenario, duty: duty(cycle) } }).outcome;
    expect(of('startPlugStop')).toBe('notJudged');
    expect(of('fullReversal')).toBe('pass');
  });

  it('without a reversal is not judged', () => {
    const coasts = pluggedRun({ actions: [{ at: 0.02, do: 'coast' }] });
    for (const key of ['endedBySwitch', 'comesToRest', 'deadTimeMargin'] as const)
      expect(of(coasts, key)).toMatchObject({ outcome: 'notJudged', required: true });
  });
});

describe('the dead time', () => {
  const judge = (result: RunResult) => of(result, 'deadTimeMargin');
  const margin = run.metrics.arcMargin;
  const arc = run.metrics[`runPole${margin.phase ?? 'A'}ClearingTime`].value ?? Number.NaN;
  /** What the arc of this run lacks to half a period of 60 Hz. */
  const spare = 1 / 120 - arc;

  it('must leave room for the longest arc', () => {
    expect(arc).toBeLessThan(1 / 120);
    expect(judge(run)).toMatchObject({ outcome: 'pass', limitIs: 'least', required: true });
    expectWithin(judge(run).limit, spare, { absolute: 1e-12 }, 'limit');
    expectWithin(judge(run).value, margin.value ?? Number.NaN, { relative: 1e-15 }, 'value');
    const short = withMetrics(run, {});
    const at = (value: number) => {
      const metric = { ...margin, value, time: (margin.time ?? 0) - (margin.value ?? 0) + value };
      return judge({ ...short, metrics: { ...short.metrics, arcMargin: metric } }).outcome;
    };
    expect(at(spare + 1e-3)).toBe('pass');
    expect(at(1.05 * spare)).toBe('close');
    expect(at(spare - 1e-5)).toBe('fail');
  });

  it('fails where the run ended in the short circuit, however it came about', () => {
    // Contacts that need 30 ms to part, with the incoming ones touching 5 ms after the coils change: onto closed contacts.
    const both = pluggedRun({
      starter: starter({ openingTime: 0.03, closingTime: 0.005, changeoverDelay: 0 }),
    });
    expect(both.status.code).toBe('lineToLineShortCircuit');
    const { outcome, value, limit } = judge(both);
    expect(outcome).toBe('fail');
    expect(value).toBeLessThan(limit!);
    // Parting 1 ms before the other contacts touch leaves no arc the time to end.
    const arcing = pluggedRun({
      starter: starter({ openingTime: 0.005, closingTime: 0.006, changeoverDelay: 0 }),
    });
    expect(arcing.status.code).toBe('lineToLineShortCircuit');
    expect(judge(arcing)).toMatchObject({
      outcome: 'fail',
      remark: expect.stringContaining('short circuit'),
    });
  });

  it('is held against a larger limit of the user, never a smaller one', () => {
    const value = margin.value ?? Number.NaN;
    const limited = (limit: number | 'none') => judge(withLimits(run, { deadTimeMargin: limit }));
    expect(limited(0.8 * value)).toMatchObject({ outcome: 'pass', limit: 0.8 * value });
    expect(limited(1.1 * value).outcome).toBe('fail');
    expectWithin(limited(1e-6).limit, spare, { absolute: 1e-12 }, 'smaller limit');
    expectWithin(limited('none').limit, spare, { absolute: 1e-12 }, 'none');
  });

  it('without arcs has only to be there', () => {
    const ideal = pluggedRun({ starter: starter({ poles: 'ideal', changeoverDelay: 0.002 }) });
    // Ideal poles interrupt as they part: 2 ms + 22 ms − 12 ms.
    expectWithin(judge(ideal).value, 0.012, { absolute: 1e-9 }, 'margin');
    expect(judge(ideal)).toMatchObject({ outcome: 'pass', limit: 0 });
  });

  it('that is too short for the arcs fails', () => {
    const short = judge(pluggedRun({ starter: starter({ changeoverDelay: 0, closingTime: 0.0125 }) }));
    expect(short.outcome).toBe('fail');
    expect(short.value).toBeLessThan(0);
    expect(short.remark).toContain('short circuit');
  });
});

it('every criterion of the run is there once', () => {
  expect(runCriteria(run).map(({ key }) => key)).toEqual([
    'comesToRest',
    'staysAtRest',
    'endedBySwitch',
    'stopTime',
    'stopAngle',
    'reverseCreep',
    'deadTimeMargin',
  ]);
  expect(SWITCH).not.toBeNull();
});
