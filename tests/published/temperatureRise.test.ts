/**
 * Limits of temperature rise of IEC 60034-1 by resistance, air-cooled, at 40 °C: class 130 (B) 80 K, 155 (F) 105 K, 180 (H)
 * 125 K, as printed in a manufacturer's manual that cites the standard; the corrections for cooling air and altitude from memory.
 * The algebra of temperature from resistance, R2/R1 = (k + t2)/(k + t1) with k = 235 for copper (IEC 60034-1).
 */
import { describe, expect, it } from 'vitest';
import { COPPER } from '../../src/assess/heat/typicalThermal.ts';
import { limitOfRise } from '../../src/assess/heat/windingLimit.ts';
import { publishedSource } from '../support/published.ts';

const { compare, listedInGuide } = publishedSource(
  'temperatureRise',
  'IEC 60034-1, limits of temperature rise by resistance of air-cooled machines, in a manufacturer’s ' +
    'manual that cites the standard; the corrections for cooling air and altitude from memory.',
  'looked up',
);

const EXACT = { absolute: 1e-9 };

describe('IEC 60034-1, limits of rise', () => {
  it.each([
    ['130', 80],
    ['155', 105],
    ['180', 125],
  ] as const)('class %s: %f K at 40 °C and sea level', (insulationClass, rise) => {
    const what = `limit of rise, class ${insulationClass}, cooling air of 40 °C, sea level`;
    compare(limitOfRise(insulationClass, 40, 0) as number, rise, EXACT, what, 'K');
  });

  // cooling air °C, altitude m, limit of class 155 K
  it.each([
    [30, 0, 115],
    [0, 0, 145],
    [-20, 0, 145],
    [50, 0, 95],
    [60, 0, 85],
    [40, 1000, 105],
    [40, 2000, 94.5],
    [40, 4000, 73.5],
    [50, 1500, 90.25],
  ])('class 155 in air of %f °C at %f m: %f K', (ambient, altitude, rise) => {
    const air = String(ambient).replace('-', '−');
    const what = `limit of rise, class 155, cooling air of ${air} °C, ${altitude} m above the sea`;
    compare(limitOfRise('155', ambient, altitude) as number, rise, EXACT, what, 'K', 'from memory');
  });

  it('leaves hotter air and higher places to agreement', () => {
    expect(limitOfRise('155', 60.5, 0)).toMatch(/by agreement when the cooling air is hotter than 60 °C/);
    expect(limitOfRise('155', 40, 4001)).toMatch(/by agreement above 4000 m/);
  });
});

describe('temperature of copper from its resistance', () => {
  // t1, t2 °C, R2/R1
  it.each([
    [20, 100, 1.31373],
    [40, 145, 1.38182],
  ])('from %f to %f °C the resistance grows to %f times', (t1, t2, ratio) => {
    const k = COPPER.zeroResistance;
    const what = `resistance of copper at ${t2} °C over that at ${t1} °C`;
    compare((k + t2) / (k + t1), ratio, { absolute: 5e-6 }, what, '', 'from memory, recomputed');
  });
});

listedInGuide();
