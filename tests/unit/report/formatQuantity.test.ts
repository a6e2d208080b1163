import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatInstant, formatNumber, formatQuantity } from '../../../src/report/formatQuantity.ts';

const si = { system: 'SI' } as const;
const us = { system: 'us' } as const;

describe('numbers', () => {
  it.each([
    [0, '0'],
    [1402.3, '1402'],
    [118.4, '118'],
    [18.06, '18.1'],
    [0.42, '0.420'],
    [-0.00123, '−0.00123'],
    [99.96, '100'],
    [0.99999, '1.00'],
    [3.2e-9, '3.20 × 10⁻⁹'],
    [123456, '123\u202F456'],
    [Number.NaN, 'not a number'],
    [Number.NEGATIVE_INFINITY, 'not a number'],
  ])('%s is written %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  it('a written number is within half a unit of its third digit, or of its last whole digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (value) => {
        const read = Number(formatNumber(value).replaceAll('\u202F', ''));
        const unit = value >= 100 ? 1 : 10 ** (Math.floor(Math.log10(value)) - 2);
        // 1 % of slack: a value that rounds up to the next power of ten is written with that power's unit.
        expect(Math.abs(read - value)).toBeLessThanOrEqual(0.505 * unit);
      }),
    );
  });

  it('an instant shows tenths of milliseconds', () => {
    expect(formatInstant(1.50234)).toBe('1.5023 s');
  });
});

describe('units', () => {
  it('what is rounding of the arithmetic is shown as zero, and nothing that an instrument could show', () => {
    const si = { system: 'SI' } as const;
    expect(formatQuantity(5.33e-15, 'A', si)).toBe('0 A');
    expect(formatQuantity(-1.2e-15, 'rad/s', si)).toBe('0 r/min');
    expect(formatQuantity(1e-15, 'N·m', si)).toBe('0 N·m');
    expect(formatQuantity(4.97e-28, 'A²·s', si)).toBe('0 A²·s');
    expect(formatQuantity(1e-6, 'A', si)).toMatch(/^1\.00 × 10/u);
    expect(formatQuantity(6e-9, '1', si)).toMatch(/^6\.00 × 10/u);
  });

  it('speeds are in r/min in both systems: 1800 r/min is 60π rad/s', () => {
    expect(formatQuantity(60 * Math.PI, 'rad/s', si)).toBe('1800 r/min');
    expect(formatQuantity(60 * Math.PI, 'rad/s', us)).toBe('1800 r/min');
  });

  // Factors of the international yard and pound agreement of 1959, g = 9.80665 m/s², and the IT Btu.
  it.each([
    [100, 'N·m', '73.8 lbf·ft'],
    [1, 'kg·m²', '23.7 lb·ft²'],
    [37284.99, 'W', '50.0 hp'],
    [1055055.85, 'J', '1000 Btu'],
    [460, 'V', '460 V'],
    [62.8, 'A', '62.8 A'],
    [21.5, 'Hz', '21.5 Hz'],
    [1000, 'N·m/rad', '738 lbf·ft/rad'],
    // NEMA MG 1 states temperatures and rises in degrees Celsius (from memory).
    [100, '°C', '100 °C'],
    [80, 'K', '80.0 K'],
    [1055.06, 'J/K', '1.00 Btu/K'],
    [9.80665, 'm/s²', '32.2 ft/s²'],
    [0.3048, 'm', '1.00 ft'],
  ])('%s %s is %s in US units', (value, unit, text) => {
    expect(formatQuantity(value, unit, us)).toBe(text);
  });

  it('heat is in kJ whatever its size, so that a table does not mix units', () => {
    expect(formatQuantity(118400, 'J', si)).toBe('118 kJ');
    expect(formatQuantity(12, 'J', si)).toBe('0.0120 kJ');
  });

  it('temperatures are in °C and rises in K in SI, heat capacity is in kJ/K', () => {
    expect(formatQuantity(145, '°C', si)).toBe('145 °C');
    expect(formatQuantity(80, 'K', si)).toBe('80.0 K');
    expect(formatQuantity(1468, 'J/K', si)).toBe('1.47 kJ/K');
  });

  it('a ratio has no unit, an angle is in degrees, a missing value is a dash', () => {
    expect(formatQuantity(2.74, '1', si)).toBe('2.74');
    expect(formatQuantity(Math.PI / 2, 'rad', si)).toBe('90.0°');
    expect(formatQuantity(null, 'A', si)).toBe('—');
  });

  it.each([
    [6.3e-7, '0.630 µs'],
    [9.99e-6, '9.99 µs'],
    [-2e-6, '−2.00 µs'],
    [1e-5, '0.0100 ms'],
    [0, '0 ms'],
  ])('an interval of %s s is written %s', (value, text) => {
    expect(formatQuantity(value, 's', { ...si, milli: true })).toBe(text);
  });

  it('intervals of contacts are in milliseconds where asked for', () => {
    expect(formatQuantity(0.0389, 's', { ...si, milli: true })).toBe('38.9 ms');
  });
});
