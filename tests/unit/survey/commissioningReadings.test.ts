import { describe, expect, it } from 'vitest';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { steadySpeed } from '../../../src/shaft/steadySpeed.ts';
import { overloadConstants, tripTimeCold } from '../../../src/starter/overloadRelay.ts';
import { runnableBench } from '../../../src/survey/commissioning/commissioningSheet.ts';
import {
  anyWithin,
  type BenchRun,
  closed,
  energised,
  energisedFor,
  finalState,
  overlap,
  throughout,
} from '../../../src/survey/commissioning/run.ts';
import { timeToOut } from '../../../src/survey/commissioning/timings.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { benchScenario, type ControlOptions, trialBench } from './commissioningBenches.ts';

const PLUG_STOP: ControlOptions = { scheme: 'plugStop', memoryRelay: true };
const scenario = benchScenario(PLUG_STOP);
const bench = trialBench(scenario);
const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;

/** The run behind a row. */
function runOf(id: string): BenchRun {
  const test = bench.tests.find((one) => one.id === id)!;
  const run = runnableBench(scenario, scenario.starter.control!).run(test);
  if (typeof run === 'string') throw new Error(run);
  return run;
}

describe('the instruments', () => {
  it('show the steady state of the circuit before anything is done', () => {
    const speed = steadySpeed(scenario, 1)!;
    const slip = 1 - speed / synchronous;
    const { readings } = bench.row('stop.forward').shows!;
    const { current } = steadyState(scenario.machine, scenario.supply, slip);
    // Runs to 1e-4; the window is six periods of 60 Hz.
    expectWithin(readings.before?.transformer.value, current, { relative: 1e-3 }, 'running current, A');
    expectWithin(readings.tachometer[0]?.speed, speed, { relative: 1e-3 }, 'running speed, rad/s');
  });

  it('are read at half speed where the test is about half speed', () => {
    const { tachometer } = bench.row('emergencyStop.plugging').shows!.readings;
    const at = (words: string) => tachometer.find((one) => one.words === words)?.speed;
    expectWithin(at('at that instant'), at('before')! / 2, { relative: 0.01 }, 'speed at the emergency stop');
    const start = bench.row('emergencyStop.starting').shows!.readings.tachometer;
    const full = steadySpeed(scenario, 1)!;
    expectWithin(
      start.find(({ words }) => words === 'at that instant')?.speed,
      full / 2,
      { relative: 0.01 },
      'start',
    );
  });

  it('read more while plugging than while starting, and the direct component on a Hall clamp alone', () => {
    const operation = (id: string) => bench.row(id).shows!.readings.operation!;
    const start = operation('start.forward');
    const stop = operation('stop.forward');
    expect(stop.hall.value).toBeGreaterThan(start.hall.value);
    for (const { hall, transformer } of [start, stop]) expect(hall.value).toBeGreaterThan(transformer.value);
  });

  it('of a machine at rest show nothing', () => {
    const { readings } = bench.row('stop.atRest').shows!;
    expect(readings.before).toBe(null);
    expect(readings.operation?.hall.value).toBe(0);
    expect(readings.tachometer.map(({ speed }) => speed)).toEqual([0, 0]);
  });

  it('time a sound overload relay by √3/2 of the locked-rotor current, what two phases carry', () => {
    const lockedRotor = steadyState(scenario.machine, scenario.supply, 1).current;
    const setting = scenario.starter.control!.overload!.setting;
    const expected = tripTimeCold(((Math.sqrt(3) / 2) * lockedRotor) / setting, overloadConstants('10'));
    const { durations } = bench.row('fault.overloadNeverTrips').shows!;
    // What is left of the direct component 0.8 s after the closing.
    expectWithin(durations[0]?.value, expected, { relative: 0.01 }, 'trip time, s');
  });

  it('time contacts and standstill from the decisive instant', () => {
    const { test, shows } = bench.row('emergencyStop.forward');
    expect(test.markWords).toBe('emergency stop pressed');
    expect(shows?.durations[0]?.words).toBe('until both contactors are out');
    // Feed opened, coil dead, contacts part 9 ms later.
    expectWithin(shows?.durations[0]?.value, 0.009, { absolute: 1e-9 }, 'out');
    expect(shows?.durations[1]?.words).toBe('to standstill');
    expect(shows?.sequence.items[0]).toEqual({
      after: expect.closeTo(0.009, 9),
      words: 'forward contactor out',
      speed: null,
    });
  });
});

describe('what a run shows', () => {
  it('of contactors that are out already takes no time', () => {
    expect(timeToOut().of(runOf('stop.atRest'))).toBe(0);
  });

  it('of coils and armatures is read from its record: the armature follows its coil', () => {
    const run = runOf('stop.forward');
    const { mark } = run.test;
    const [coil] = energised(run, 'reverse');
    const [armature] = closed(run, 'reverse');
    expectWithin(armature!.from - coil!.from, 0.018, { absolute: 1e-9 }, 'closing time');
    expectWithin(armature!.to - coil!.to, 0.009, { absolute: 1e-9 }, 'opening time');
    expect(energised(run, 'forward')).toEqual([{ from: 0, to: mark }]);
    expect(energisedFor(run, 'forward', 'command')).toEqual([{ from: 0, to: mark }]);
    expect(energisedFor(run, 'reverse', 'brake')).toEqual([coil]);
    expect(energisedFor(run, 'reverse', 'command')).toEqual([]);
    expect(overlap(closed(run, 'forward'), closed(run, 'reverse'))).toBe(false);
  });

  it('at its end is rest, running, coasting or a short circuit', () => {
    expect(finalState(runOf('stop.forward'))).toEqual({ kind: 'rest' });
    expect(finalState(runOf('start.forward'))).toMatchObject({ kind: 'connected', contactor: 'forward' });
    expect(finalState(runOf('fault.interlockClosed.noMechanical'))).toMatchObject({ kind: 'shortCircuit' });
    const frictionless = { ...scenario, load: { ...scenario.load, torques: [] } };
    const free = trialBench(frictionless).row('fault.zeroSpeedSwitch.stuckOpen');
    expect(free.shows?.end.kind).toBe('coasts');
  });

  it('lies within a stretch of time only where they have more than an end in common', () => {
    const on = [{ from: 1, to: 2 }];
    expect([anyWithin(on, 0, 1), anyWithin(on, 2, 3), anyWithin(on, 1.5, 1.6), anyWithin(on, 0, 9)]).toEqual([
      false,
      false,
      true,
      true,
    ]);
    expect([throughout(on, 1, 2), throughout(on, 0.9, 2), throughout(on, 1, 2.1)]).toEqual([
      true,
      false,
      false,
    ]);
    expect(overlap(on, [{ from: 2, to: 3 }])).toBe(false);
    expect(overlap(on, [{ from: 1.9, to: Number.POSITIVE_INFINITY }])).toBe(true);
  });
});
