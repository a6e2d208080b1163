import { describe, expect, it } from 'vitest';
import { type Group, minimalScenario, parseScenario } from './minimalScenario.ts';

const OMEGA = 2 * Math.PI * 60;
/** Relative: a dozen roundings. */
const CLOSE = 1e-14;

const machineOf = (machine: Group, supply: Group = {}) =>
  parseScenario(minimalScenario({ machine, supply })).machine;

function near(found: number | undefined, expected: number, relative = CLOSE): void {
  expect(Math.abs((found ?? Number.NaN) / expected - 1)).toBeLessThan(relative);
}

it('a machine without elements has none, so that nothing is switched on by a default', () => {
  const machine = machineOf({});
  for (const key of ['mainSaturation', 'leakageSaturation', 'core', 'mechanicalLoss', 'rotorResistors'])
    expect(key in machine).toBe(false);
  const off = machineOf({ saturation: { main: 'off', leakage: 'off' } });
  expect('mainSaturation' in off || 'leakageSaturation' in off).toBe(false);
});

describe('main saturation', () => {
  it('no-load points become crest flux less the drop in the stator leakage', () => {
    const { mainSaturation, Lls } = machineOf({
      saturation: {
        main: [
          { voltage: '300 V', current: '9 A' },
          { voltage: '460 V', current: '20 A' },
        ],
      },
    });
    const flux = (voltage: number, current: number) =>
      (Math.SQRT2 * voltage) / (Math.sqrt(3) * OMEGA) - Lls * Math.SQRT2 * current;
    expect(mainSaturation).toHaveLength(2);
    near(mainSaturation?.[0]?.flux, flux(300, 9));
    near(mainSaturation?.[1]?.flux, flux(460, 20));
    near(mainSaturation?.[1]?.current, Math.SQRT2 * 20);
  });

  it('a typical curve has the stated magnetising inductance at rated voltage and no load, and more below', () => {
    const { mainSaturation, Lm, Lls } = machineOf({ saturation: { main: 'typical' } });
    const noLoadCurrent = (Math.SQRT2 * 460) / Math.sqrt(3) / (OMEGA * (Lls + Lm));
    const rated = mainSaturation?.find(({ current }) => Math.abs(current / noLoadCurrent - 1) < CLOSE);
    near(rated?.flux, Lm * noLoadCurrent);
    const inductances = (mainSaturation ?? []).map(({ flux, current }) => flux / current);
    expect(inductances).toEqual(inductances.toSorted((a, b) => b - a));
    expect(inductances[0]).toBeGreaterThan(1.1 * Lm);
    expect(inductances.at(-1)).toBeLessThan(0.6 * Lm);
  });

  it('reactances stated at another frequency give the typical curve of the same flux', () => {
    const typical = { saturation: { main: 'typical' } };
    const inductances = {
      statorLeakage: '0.8 mH',
      magnetising: '35 mH',
      cages: [{ resistance: '0.2 ohm', leakage: '0.8 mH' }],
    };
    const here = machineOf({ ...typical, ...inductances }).mainSaturation;
    const there = machineOf({
      ...typical,
      ...inductances,
      ratedFrequency: '50 Hz',
      rated: { speed: '1450 rpm' },
    }).mainSaturation;
    near(there?.[2]?.flux, here?.[2]?.flux ?? 0);
  });
});

describe('leakage saturation', () => {
  it('is read path by path', () => {
    const leakage = { stator: { current: '90 A', remaining: '60 %' }, cages: ['off'] };
    expect(machineOf({ saturation: { leakage } }).leakageSaturation).toEqual({
      stator: { current: 90, remaining: 0.6 },
      cages: [null],
    });
  });

  it('is typically counted from twice the crest of rated current', () => {
    const { leakageSaturation } = machineOf({
      saturation: { leakage: 'typical' },
      rated: { current: '46.8 A' },
    });
    near(leakageSaturation?.stator?.current, 2 * Math.SQRT2 * 46.8);
    expect(leakageSaturation?.cages[0]).toEqual(leakageSaturation?.stator);
    expect(leakageSaturation?.stator?.remaining).toBe(0.6);
  });
});

describe('losses', () => {
  it('an iron loss is what its branch takes at the air-gap voltage of no load', () => {
    const { core, Lm, Lls } = machineOf({ ironLoss: '350 W' });
    const voltage = ((460 / Math.sqrt(3)) * Lm) / (Lls + Lm);
    const { R, L } = core ?? { R: 0, L: 0 };
    near((3 * voltage ** 2 * R) / (R ** 2 + (OMEGA * L) ** 2), 350);
    near((OMEGA * L) / R, 0.25);
  });

  it('the branch for the iron may be stated, in the star or as it lies in a delta', () => {
    const ironLoss = { resistance: '900 ohm', inductance: '0.2 H' };
    expect(machineOf({ ironLoss }).core).toEqual({ R: 900, L: 0.2 });
    const delta = machineOf({ ironLoss, connection: 'delta' }).core;
    expect(delta?.R).toBe(300);
    near(delta?.L, 0.2 / 3);
  });

  it('friction and windage share one loss evenly and add up to it at synchronous speed', () => {
    const { friction, windage } = machineOf({ mechanicalLoss: '200 W' }).mechanicalLoss ?? {
      friction: 0,
      windage: 0,
    };
    const synchronous = OMEGA / 2;
    near(friction * synchronous, 100);
    near(windage * synchronous ** 3, 100);
  });

  it('windage is read as a power at synchronous speed or as a coefficient', () => {
    const loss = (windage: string) =>
      machineOf({ mechanicalLoss: { friction: '0.5 N m', windage } }).mechanicalLoss;
    near((loss('120 W')?.windage ?? 0) * (OMEGA / 2) ** 3, 120);
    expect(loss('0.0002 N m s^2/rad^2')).toEqual({ friction: 0.5, windage: 0.0002 });
  });
});

// IEC 60034-1: k = 235 for copper, 225 for aluminium; ratios by hand, five decimals.
it.each([
  ['20 degC', '100 degC', 'copper', 1.31373],
  ['20 degC', '100 degC', 'aluminium', 1.32653],
  ['40 degC', '145 degC', 'copper', 1.38182],
  ['68 degF', '212 degF', 'copper', 1.31373],
  ['293.15 K', '373.15 K', 'copper', 1.31373],
])('from %s to %s the resistance of %s grows by %f', (resistancesAt, winding, conductor, ratio) => {
  const temperature = { resistancesAt, winding, statorConductor: conductor, rotorConductor: conductor };
  const cold = machineOf({});
  const hot = machineOf({ temperature });
  expect(hot.Rs / cold.Rs).toBeCloseTo(ratio, 5);
  expect((hot.cages[0]?.Rr ?? 0) / (cold.cages[0]?.Rr ?? 1)).toBeCloseTo(ratio, 5);
  expect(hot.Lls).toBe(cold.Lls);
});

it('the rotor has a temperature of its own, and is of aluminium where nothing is said', () => {
  const temperature = { resistancesAt: '20 degC', winding: '20 degC', rotor: '100 degC' };
  const { Rs, cages } = machineOf({ temperature });
  expect(Rs).toBe(0.087);
  expect((cages[0]?.Rr ?? 0) / 0.228).toBeCloseTo(1.32653, 5);
});

it('resistors at the rings are referred by the square of the voltage ratio, in star and in delta alike', () => {
  const rotorResistors = {
    turnsRatio: 1.5,
    starting: [{ resistance: '0.8 ohm', duration: '1 s' }],
    plugging: '2 ohm',
  };
  const expected = { starting: [{ resistance: 1.8, duration: 1 }], plugging: 4.5 };
  expect(machineOf({ rotorResistors }).rotorResistors).toEqual(expected);
  expect(machineOf({ rotorResistors, connection: 'delta' }).rotorResistors).toEqual(expected);
});

it('resistors without a ratio are referred already', () => {
  const rotorResistors = { plugging: '2 ohm' };
  expect(machineOf({ rotorResistors }).rotorResistors).toEqual({ starting: [], plugging: 2 });
});
