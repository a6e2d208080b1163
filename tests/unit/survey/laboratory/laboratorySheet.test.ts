import { describe, expect, it } from 'vitest';
import { parseScenario, type Scenario, simulate } from '../../../../src/index.ts';
import { benchOf } from '../../../../src/survey/laboratory/bench.ts';
import type { Prediction } from '../../../../src/survey/laboratory/laboratory.ts';
import { laboratorySheet } from '../../../../src/survey/laboratory/laboratorySheet.ts';
import { runFigures } from '../../../../src/survey/laboratory/movingQuantities.ts';
import { pausesOf } from '../../../../src/survey/laboratory/pause.ts';
import type { QuantityKey } from '../../../../src/survey/laboratory/quantities.ts';
import { quantitiesOf } from '../../../../src/survey/laboratory/ranges.ts';
import { offBy, TOLERANCES } from '../../../../src/survey/laboratory/tolerances.ts';
import { exampleText } from '../../../support/examples.ts';

const TEXT = exampleText('what-should-the-laboratory-set-show.yaml');
const set = parseScenario(TEXT);
const sheet = laboratorySheet(set);
const all: readonly Prediction[] = [...sheet.steps.flatMap(({ readings }) => readings), ...sheet.evaluation];
const of = (key: QuantityKey): Prediction => {
  const found = all.find((one) => one.key === key);
  if (found === undefined) throw new Error(`no prediction of ${key}`);
  return found;
};

/** Complex numbers of this test alone. */
type Z = readonly [number, number];
const plus = ([a, b]: Z, [c, d]: Z): Z => [a + c, b + d];
const inverse = ([a, b]: Z): Z => [a / (a * a + b * b), -b / (a * a + b * b)];
const beside = (...parts: readonly Z[]): Z => inverse(parts.map(inverse).reduce(plus));

/** The file's numbers, written out again: ohms at 50 Hz. */
const Rs = 6.4;
const Xs = 6.6;
const Xm = 118;
const Rr = 6.4;
const Xr = 7.4;
const impedance = (slip: number): Z => {
  const core: Z = [set.machine.core!.R, 2 * Math.PI * 50 * set.machine.core!.L];
  return plus([Rs, Xs], beside([0, Xm], [Rr / slip, Xr], core));
};

describe('what is read without switching', () => {
  it('is the resistance of two phases in series', () => {
    expect(of('terminalResistance').predicted).toBeCloseTo(2 * Rs, 10);
  });

  it('is, running light, what the circuit draws at that speed, and its shaft power is friction and windage', () => {
    const speed = of('noLoadSpeed').predicted;
    const slip = 1 - speed / (50 * Math.PI);
    const [r, x] = impedance(slip);
    const current = 400 / Math.sqrt(3) / Math.hypot(r, x);
    // The supply's own impedance, 0.08 Ω in 123 Ω, is not in this.
    expect(of('noLoadCurrent').predicted / current).toBeCloseTo(1, 2);
    expect(of('noLoadPower').predicted / (3 * r * current ** 2)).toBeCloseTo(1, 2);
    const torque =
      0.28 + 0.12 * (speed / (50 * Math.PI)) ** 2 + 0.09 + (9 / (50 * Math.PI) ** 3) * speed ** 2;
    const loss = 62 + 3 * Rs * current ** 2 + (torque * speed) / (1 - slip);
    expect(of('noLoadPower').predicted / loss).toBeCloseTo(1, 1);
  });

  it('is, with the rotor locked, the short-circuit impedance at rated current', () => {
    const [r, x] = impedance(1);
    expect(of('lockedRotorVoltage').predicted).toBeCloseTo(Math.sqrt(3) * 2.7 * Math.hypot(r, x), 6);
    expect(of('lockedRotorPower').predicted).toBeCloseTo(3 * 2.7 ** 2 * r, 6);
    expect(of('shortCircuitResistance').predicted).toBeCloseTo(r, 6);
    expect(of('shortCircuitReactance').predicted).toBeCloseTo(x, 6);
  });

  it('is a run-down that follows from friction and inertia by small steps of time', () => {
    const inertia = 0.0042 + 0.059;
    const step = 1e-4;
    let speed = of('noLoadSpeed').predicted;
    const half = speed / 2;
    let time = 0;
    let halfTime = 0;
    while (speed > 0) {
      const air = (0.12 / (50 * Math.PI) ** 2 + 9 / (50 * Math.PI) ** 3) * speed ** 2;
      speed -= ((0.37 + air) / inertia) * step;
      time += step;
      if (speed > half) halfTime = time;
    }
    expect(of('runDownTime').predicted).toBeCloseTo(time, 2);
    expect(of('halfSpeedTime').predicted).toBeCloseTo(halfTime, 2);
  });
});

describe('heat in the rotor', () => {
  it('is 1, 3 and 4 stored energies within a tenth, and a reversal is a stop and a start', () => {
    const [start, plug, reversal] = (
      ['startHeatMultiple', 'plugHeatMultiple', 'reversalHeatMultiple'] as const
    ).map((key) => of(key).predicted);
    expect(Math.abs(start! - 1)).toBeLessThan(0.1);
    expect(Math.abs(plug! / 3 - 1)).toBeLessThan(0.1);
    expect(Math.abs(reversal! / 4 - 1)).toBeLessThan(0.1);
    expect(Math.abs(reversal! / (start! + plug!) - 1)).toBeLessThan(0.05);
  });

  it('is counted in the kinetic energy at the running speed', () => {
    expect(sheet.storedEnergy).toBeCloseTo((0.0632 * of('noLoadSpeed').predicted ** 2) / 2, 6);
  });
});

describe('ranges', () => {
  it('hold the scatter, which holds what is expected, and none is below zero', () => {
    for (const { key, low, high, predicted, scatter } of all) {
      const order = [0, low, scatter.low, predicted, scatter.high, high];
      expect(
        order.every((value, k) => k === 0 || value >= order[k - 1]! - 1e-12 * Math.abs(value)),
        `${key}: ${order.join(' ≤ ')}`,
      ).toBe(true);
      expect(high, key).toBeGreaterThan(low);
    }
  });

  it('of the crest of a plug stop are mostly the closing instant, those of its time are not', () => {
    expect(of('plugPeakCurrent').parts[0]!.words).toBe('closing instant');
    expect(of('stopTimeFromTouch').parts[0]!.words).not.toBe('closing instant');
    const { scatter, predicted, repeats } = of('plugPeakCurrent');
    expect((scatter.high - scatter.low) / predicted).toBeGreaterThan(0.2);
    expect(repeats).toBe(10);
  });

  it('hold every reading of sets drawn at random within their tolerances, closed at random instants', () => {
    let state = 20_261;
    // A linear congruence: numbers that are the same everywhere.
    const draw = () => {
      state = (state * 16_807) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const bench = benchOf(simulate(set));
    for (let k = 0; k < 6; k++) {
      // Corners come up too: a part of every other set is at an end of its tolerance.
      const part = () => (k % 2 === 0 ? 2 * draw() - 1 : Math.sign(draw() - 0.5));
      const drawn = TOLERANCES.reduce((one, tolerance) => offBy(one, tolerance, part()), bench.scenario);
      const angles = { start: Math.PI * draw(), plug: Math.PI * draw(), reversal: Math.PI * draw() };
      const shown = quantitiesOf(drawn, bench, runFigures(drawn, bench, angles));
      for (const { key, low, high } of all) {
        const value = shown[key];
        expect(value! >= low && value! <= high, `${key}: ${low} ≤ ${value} ≤ ${high}, set ${k}`).toBe(true);
      }
    }
  });
});

describe('the pause', () => {
  it('fills the time that half of the permissible trials leave', () => {
    const { plugStop } = sheet.pauses;
    if (typeof plugStop === 'string') throw new Error(plugStop);
    const { startTime, stopTimeFromTouch } = {
      startTime: of('startTime'),
      stopTimeFromTouch: of('stopTimeFromTouch'),
    };
    const busy = 5 + startTime.predicted + stopTimeFromTouch.predicted;
    expect(plugStop.perHour).toBeCloseTo(plugStop.permissible / 2, 9);
    // Operating times of the contactors are in it as well.
    expect(Math.abs(3600 / plugStop.perHour - plugStop.time - busy)).toBeLessThan(0.2);
  });

  it('is longer after a full reversal', () => {
    const { plugStop, reversal } = sheet.pauses;
    if (typeof plugStop === 'string' || typeof reversal === 'string') throw new Error('no pause');
    expect(reversal.time).toBeGreaterThan(plugStop.time);
  });

  it('says what is missing', () => {
    const { thermal: _, ...cold } = set;
    const { duty: __, ...idle } = set;
    expect(pausesOf(simulate(cold), false).plugStop).toMatch(/section thermal is missing/u);
    expect(pausesOf(simulate(idle), false).plugStop).toMatch(/running time .* is missing/u);
  });

  it('is set by the contactors where they are the slowest', () => {
    const slow = parseScenario(TEXT.replace('operationsPerHourAc4: 300', 'operationsPerHourAc4: 30'));
    const { plugStop } = pausesOf(simulate(slow), false);
    expect(plugStop).toMatchObject({ perHour: 15, bound: "the contactors' rate of operations" });
  });
});

it('the later the switch opens, the farther the flywheel turns back', () => {
  const { lateSwitch } = sheet;
  expect(lateSwitch.map(({ later }) => later)).toEqual([0, 0.02, 0.05, 0.1]);
  for (const [k, { speed, angle }] of lateSwitch.entries()) {
    if (k === 0) continue;
    expect(speed).toBeGreaterThan(lateSwitch[k - 1]!.speed);
    expect(angle).toBeGreaterThan(lateSwitch[k - 1]!.angle);
  }
});

it('the set of the example passes none of its limits, and its time is that of its trials', () => {
  expect(sheet.steps.flatMap(({ limits }) => limits)).toEqual([]);
  const { leastTime, inertia } = sheet;
  if (typeof leastTime === 'string') throw new Error(leastTime);
  expect(leastTime.parts.map(({ step, trials }) => [step, trials])).toEqual([
    ['runDown', 3],
    ['start', 1],
    ['plugStop', 10],
    ['creep', 4],
    ['reversal', 1],
  ]);
  expect(inertia).toBeCloseTo(0.0632, 12);
});

it('the recorder reaches well above the highest crest of the ranges, in usual steps that do not tell it', () => {
  const recorder = sheet.instruments.find(({ words }) => words.startsWith('recorder'));
  // 1.6 × 41.9 A
  expect(1.6 * of('plugPeakCurrent').high).toBeGreaterThan(50);
  expect(recorder!.reaches[0]!.value).toBe(100);
});

describe('what a scenario cannot show', () => {
  const keys = (scenario: Scenario) => laboratorySheet(scenario).steps.map(({ key }) => key);
  const commands = set.actions;

  it('is left out with the reason where nothing plugs and the circuit has no iron loss', () => {
    const { core: _, ...machine } = set.machine;
    const load = { ...set.load, inertia: 0.004 };
    const plain = { ...set, machine, load, actions: commands.slice(0, 1) };
    const { steps, leftOut } = laboratorySheet(plain);
    expect(steps.map(({ key }) => key)).toEqual([
      'resistance',
      'direction',
      'noLoad',
      'lockedRotor',
      'runDown',
      'start',
    ]);
    expect(steps[2]!.readings.map(({ key }) => key)).toEqual(['noLoadCurrent', 'noLoadSpeed']);
    expect(leftOut.join(' ')).toMatch(/plugs and reverses nothing.*no iron loss/u);
  });

  it('is the plug stop without a zero-speed switch; the reversal stays', () => {
    const { core: _, mechanicalLoss: __, ...machine } = set.machine;
    const starter = { ...set.starter, zeroSpeedSwitch: null };
    // A light disc: the runs are short.
    const load = { ...set.load, inertia: 0.004 };
    expect(keys({ ...set, machine, starter, load })).toEqual([
      'resistance',
      'direction',
      'noLoad',
      'lockedRotor',
      'runDown',
      'start',
      'reversal',
    ]);
  });

  it('is refused where nothing is started', () => {
    expect(() => laboratorySheet({ ...set, actions: [] })).toThrow(/nothing for a laboratory to measure/u);
  });
});
