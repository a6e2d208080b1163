import { expect, it } from 'vitest';
import { type Group, minimalScenario, parseScenario } from './minimalScenario.ts';

const OMEGA = 2 * Math.PI * 60;
/** Digits: a few roundings of values around one. */
const DIGITS = 14;

const supplyOf = (supply: Group) => parseScenario(minimalScenario({ supply })).supply;

it('a transformer of 6 % has an impedance of 0.06·V²/S, of which its copper loss over S² is the resistance', () => {
  const { sourceResistance, sourceInductance } = supplyOf({
    lineVoltage: '400 V',
    transformer: { rating: '630 kVA', impedance: '6 %', copperLoss: '6.5 kW' },
  });
  // By hand: 400²/630e3 = 0.253968 Ω; r = 6.5/630 = 1.031746 %.
  expect(sourceResistance).toBeCloseTo(0.010317460317460317 * (400 ** 2 / 630e3), DIGITS);
  expect(Math.hypot(sourceResistance, OMEGA * sourceInductance)).toBeCloseTo(
    0.06 * (400 ** 2 / 630e3),
    DIGITS,
  );
});

it('a transformer splits its impedance by X/R, and by 6 where nothing is said', () => {
  const given = supplyOf({ transformer: { rating: '630 kVA', impedance: '6 %', xOverR: 3 } });
  expect((OMEGA * given.sourceInductance) / given.sourceResistance).toBeCloseTo(3, DIGITS - 1);
  const assumed = supplyOf({ transformer: { rating: '630 kVA', impedance: '6 %' } });
  expect((OMEGA * assumed.sourceInductance) / assumed.sourceResistance).toBeCloseTo(6, DIGITS - 1);
});

it('the network above a transformer adds V²/S at X/R = 10 to its impedance', () => {
  const transformer = { rating: '630 kVA', impedance: '6 %', xOverR: 3 };
  const alone = supplyOf({ transformer });
  const both = supplyOf({ transformer: { ...transformer, networkShortCircuitPower: '20 MVA' } });
  const resistance = both.sourceResistance - alone.sourceResistance;
  const reactance = OMEGA * (both.sourceInductance - alone.sourceInductance);
  // 460²/20e6 = 10.58 mΩ.
  expect(Math.hypot(resistance, reactance)).toBeCloseTo(0.01058, DIGITS);
  expect(reactance / resistance).toBeCloseTo(10, 10);
});

it('a cable has its length times its values per length', () => {
  const cable = { length: '80 m', resistance: '0.524 ohm/km', reactance: '0.08 ohm/km' };
  const data = supplyOf({ cable }).cable;
  expect(data?.resistance).toBeCloseTo(0.04192, DIGITS);
  expect(data?.inductance).toBeCloseTo(0.0064 / OMEGA, DIGITS);
});

it('a cable may be stated as a whole, to the last bit', () => {
  const cable = { resistance: '0.04192 ohm', inductance: '0.02 mH' };
  expect(supplyOf({ cable }).cable).toEqual({ resistance: 0.04192, inductance: 0.00002 });
});

// IEC 60228, class 2, plain copper and aluminium, maximum resistance at 20 °C in Ω/km (from published tables of the standard).
it.each([
  ['16 mm^2', 'copper', 1.15],
  ['35 mm^2', 'copper', 0.524],
  ['95 mm^2', 'copper', 0.193],
  ['150 mm^2', 'copper', 0.124],
  ['35 mm^2', 'aluminium', 0.868],
  ['95 mm^2', 'aluminium', 0.32],
  ['150 mm^2', 'aluminium', 0.206],
])(
  'a conductor of %s %s has the resistance of IEC 60228 within its stranding, 5 %%',
  (crossSection, conductor, perKilometre) => {
    const cable = { length: '1 km', crossSection, conductor, temperature: '20 degC' };
    const found = supplyOf({ cable }).cable?.resistance ?? Number.NaN;
    expect(Math.abs(found / perKilometre - 1)).toBeLessThan(0.05);
  },
);

it('a warm cable has 0.4 % more resistance per kelvin, and an unstated reactance is 0.08 Ω/km at 50 Hz', () => {
  const at = (temperature: string) =>
    supplyOf({ cable: { length: '80 m', crossSection: '35 mm^2', temperature } }).cable;
  expect((at('70 degC')?.resistance ?? 0) / (at('20 degC')?.resistance ?? 0)).toBeCloseTo(1.2, DIGITS);
  expect(at('20 degC')?.inductance).toBeCloseTo(0.0064 / (2 * Math.PI * 50), DIGITS);
});

it('a scenario without a cable has none', () => {
  expect('cable' in supplyOf({})).toBe(false);
});
