/**
 * Limits of temperature rise of IEC 60034-1 by resistance, air-cooled, at 40 °C: class 130 (B) 80 K, 155 (F) 105 K, 180 (H)
 * 125 K, as printed in a manufacturer's manual that cites the standard; the corrections for cooling air and altitude from memory.
 * The algebra of temperature from resistance, R2/R1 = (k + t2)/(k + t1) with k = 235 for copper (IEC 60034-1).
 */
import { describe, expect, it } from 'vitest';
import { COPPER } from '../../src/assess/heat/typicalThermal.ts';
import { limitOfRise } from '../../src/assess/heat/windingLimit.ts';
import { expectWithin } from '../support/tolerance.ts';

const EXACT = { absolute: 1e-9 };

describe('IEC 60034-1, limits of rise', () => {
  it.each([
    ['130', 80],
    ['155', 105],
    ['180', 125],
  ] as const)('class %s: %f K at 40 °C and sea level', (insulationClass, rise) => {
    expectWithin(limitOfRise(insulationClass, 40, 0) as number, rise, EXACT, 'limit');
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
    expectWithin(limitOfRise('155', ambient, altitude) as number, rise, EXACT, 'limit');
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
    expectWithin((k + t2) / (k + t1), ratio, { absolute: 5e-6 }, 'ratio as printed');
  });
});
