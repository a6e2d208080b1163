import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../src/scenario/dimension.ts';
import { parseQuantity, readQuantity } from '../../../src/scenario/parseQuantity.ts';
import type { Fault } from '../../../src/scenario/problem.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';

// Exact by definition. Pound and foot: international yard and pound agreement, 1959. Standard gravity: 3rd CGPM, 1901.
// Horsepower: 550 foot-pounds-force per second; metric: 75 kgf·m/s; electrical: 746 W (NIST SP 811, 2008, appendix B.8).
const pound = 0.45359237;
const foot = 0.3048;
const gravity = 9.80665;
const poundForce = pound * gravity;
const horsepower = 550 * foot * poundForce;

/** A handful of roundings on each side; a wrong digit in a definition would be a million times that. */
const tolerance = 8 * Number.EPSILON;

const legal: readonly (readonly [string, Dimension, number])[] = [
  ['1 lb ft^2', 'inertia', pound * foot ** 2],
  ['14 lb-ft²', 'inertia', 14 * pound * foot ** 2],
  ['14 lb·ft2', 'inertia', 14 * pound * foot ** 2],
  ['1 lb in^2', 'inertia', pound * (foot / 12) ** 2],
  ['1 lbf ft', 'torque', poundForce * foot],
  ['35 lbf·ft', 'torque', 35 * poundForce * foot],
  ['35 ft-lbf', 'torque', 35 * poundForce * foot],
  ['1 lbf in', 'torque', (poundForce * foot) / 12],
  ['1 kgf m', 'torque', gravity],
  ['50 hp', 'power', 50 * horsepower],
  ['50 HP', 'power', 50 * horsepower],
  ['1 PS', 'power', 75 * gravity],
  ['1 CV', 'power', 75 * gravity],
  ['2 hpE', 'power', 2 * 746],
  ['1750 rpm', 'speed', (1750 * 2 * Math.PI) / 60],
  ['1750 r/min', 'speed', (1750 * 2 * Math.PI) / 60],
  ['1750 min^-1', 'speed', (1750 * 2 * Math.PI) / 60],
  ['90 deg', 'angle', Math.PI / 2],
  ['90°', 'angle', Math.PI / 2],
  ['1 N m/rpm', 'viscousCoefficient', 60 / (2 * Math.PI)],
  ['0.1 N·m·s/rad', 'viscousCoefficient', 0.1],
  ['0.1 N m/(rad/s)', 'viscousCoefficient', 0.1],
  ['2 lbf ft s/rad', 'viscousCoefficient', 2 * poundForce * foot],
  ['1 lbf ft/rad', 'stiffness', poundForce * foot],
  ['1 lbf-in/rad', 'stiffness', (poundForce * foot) / 12],
  ['1 N·m/deg', 'stiffness', 180 / Math.PI],
  ['1 kft', 'length', 1000 * foot],
  ['0.05 ohm/kft', 'impedancePerLength', 0.05 / (1000 * foot)],
  // A circle of one thousandth of an inch has one circular mil.
  ['4 kcmil', 'area', 1000 * Math.PI * 0.0254e-3 ** 2],
  ['212 degF', 'temperature', 100],
  ['373.15 K', 'temperature', 100],
  ['0.3 g0', 'acceleration', 0.3 * gravity],
  ['1 g_0', 'acceleration', gravity],
  ['10 ft/s²', 'acceleration', 10 * foot],
  ['2 rev', 'angle', 4 * Math.PI],
  ['15 revolutions', 'angle', 30 * Math.PI],
];

it.each(legal)('%s has the value its legal definition gives', (text, dimension, expected) => {
  expect(Math.abs(parseQuantity(text, dimension) / expected - 1)).toBeLessThan(tolerance);
});

const decimal: readonly (readonly [string, Dimension, number])[] = [
  ['460 V', 'voltage', 460],
  ['2.3 kV', 'voltage', 2300],
  ['62 A', 'current', 62],
  ['50 Hz', 'frequency', 50],
  ['7.5 kW', 'power', 7500],
  ['5 MVA', 'apparentPower', 5e6],
  ['630 kVA', 'apparentPower', 630e3],
  ['0.302 ohm', 'resistance', 0.302],
  ['0.302 Ω', 'resistance', 0.302],
  ['35 mΩ', 'resistance', 0.035],
  ['35 mohm', 'resistance', 0.035],
  ['1.2 mH', 'inductance', 0.0012],
  ['33 µH', 'inductance', 33e-6],
  ['33 uH', 'inductance', 33e-6],
  ['0.6 kg m^2', 'inertia', 0.6],
  ['0.6 kg·m²', 'inertia', 0.6],
  ['0.6kgm2', 'inertia', 0.6],
  ['20 N m', 'torque', 20],
  ['20 N·m', 'torque', 20],
  ['20 Nm', 'torque', 20],
  ['-20 N*m', 'torque', -20],
  ['\u221220 N m', 'torque', -20],
  ['178.5 rad/s', 'speed', 178.5],
  ['35 ms', 'time', 0.035],
  ['3 ms', 'time', 0.003],
  ['1.5s', 'time', 1.5],
  ['2 min', 'time', 120],
  ['1.5 h', 'time', 5400],
  ['2 hours', 'time', 7200],
  ['80 K', 'temperatureDifference', 80],
  ['1900 J/K', 'heatCapacity', 1900],
  ['3.2 kJ/K', 'heatCapacity', 3200],
  ['2.5 m/s^2', 'acceleration', 2.5],
  ['160 mm', 'length', 0.16],
  ['0.95 Wb', 'flux', 0.95],
  ['950 mWb', 'flux', 0.95],
  ['80 m', 'length', 80],
  ['1.2 km', 'length', 1200],
  ['0.524 ohm/km', 'impedancePerLength', 0.000524],
  ['0.524 Ω/km', 'impedancePerLength', 0.000524],
  ['20 kN m/rad', 'stiffness', 20_000],
  ['25 degC', 'temperature', 25],
  ['25 °C', 'temperature', 25],
  ['-20 °C', 'temperature', -20],
];

it.each(decimal)('%s is read to the last bit', (text, dimension, expected) => {
  expect(parseQuantity(text, dimension)).toBe(expected);
});

it('a plain SI unit returns every digit of the number as written', () => {
  for (const value of [0.1, 1 / 3, 1.7976931348623157e308, 5e-324, 0.12345678901234566]) {
    expect(parseQuantity(`${value} H`, 'inductance')).toBe(value);
    expect(parseQuantity(`${value} kg m^2`, 'inertia')).toBe(value);
    expect(parseQuantity(`${value} rad/s`, 'speed')).toBe(value);
  }
});

it('minus zero is zero', () => {
  expect(Object.is(parseQuantity('-0 V', 'voltage'), 0)).toBe(true);
});

function faultOf(text: string, dimension: Dimension): Fault {
  const read = readQuantity(text, dimension);
  if (typeof read === 'number') throw new Error(`${text} was accepted as ${read}`);
  return read;
}

describe('what is refused', () => {
  it('a number without a unit, and the message writes it with one', () => {
    const fault = faultOf('460', 'voltage');
    expect(fault.code).toBe('missingUnit');
    expect(fault.expected).toContain('`460 V`');
  });

  it('pounds where pounds-force are meant, and the message says so', () => {
    const fault = faultOf('35 lb ft', 'torque');
    expect(fault.code).toBe('wrongUnit');
    expect(fault.message).toContain('lb is a mass');
    expect(fault.expected).toBe('`35 lbf ft`');
  });

  it('a temperature where a rise is meant, and the message writes it as a difference', () => {
    const celsius = faultOf('80 °C', 'temperatureDifference');
    expect(celsius.code).toBe('wrongUnit');
    expect(celsius.message).toContain('this is a difference');
    expect(celsius.expected).toBe('`80 K`');
    // 9 °F are 5 K.
    expect(faultOf('144 degF', 'temperatureDifference').expected).toBe('`80 K`');
  });

  it('grams where standard gravity is meant, and the message says so', () => {
    const fault = faultOf('0.3 g', 'acceleration');
    expect(fault.code).toBe('wrongUnit');
    expect(fault.message).toContain('g is a gram');
    expect(fault.expected).toBe('`0.3 g0`');
  });

  it('real power where apparent power is meant, and the other way round', () => {
    expect(faultOf('5 MW', 'apparentPower').code).toBe('wrongUnit');
    expect(faultOf('50 kVA', 'power').code).toBe('wrongUnit');
  });

  it('a misspelt unit, and the message offers the near one', () => {
    expect(faultOf('7.5 KW', 'power').expected).toBe('`7.5 kW`');
  });

  it.each([
    ['fifteen kW', 'power', 'notANumber'],
    ['', 'power', 'notANumber'],
    ['kW', 'power', 'notANumber'],
    ['.nan V', 'voltage', 'notANumber'],
    ['Infinity V', 'voltage', 'notANumber'],
    ['1e999 V', 'voltage', 'notANumber'],
    ['0,6 kg m^2', 'inertia', 'notANumber'],
    ['1 750 rpm', 'speed', 'notANumber'],
    ['5 5 V', 'voltage', 'notANumber'],
    ['60 Hz', 'speed', 'wrongUnit'],
    ['60 rpm', 'frequency', 'wrongUnit'],
    ['20 degC', 'angle', 'wrongUnit'],
    ['20 deg', 'temperature', 'wrongUnit'],
    ['20 V', 'temperature', 'wrongUnit'],
    ['20 degX', 'temperature', 'wrongUnit'],
    ['20', 'temperature', 'missingUnit'],
    ['0.5 ohm', 'impedancePerLength', 'wrongUnit'],
    ['35 mm', 'area', 'wrongUnit'],
    ['6 %', 'resistance', 'wrongUnit'],
    ['5 constructor', 'voltage', 'wrongUnit'],
    ['5 __proto__', 'voltage', 'wrongUnit'],
    ['5 V/', 'voltage', 'wrongUnit'],
    ['5 (V)', 'voltage', 'wrongUnit'],
    ['5 %', 'voltage', 'wrongUnit'],
  ] as const)('%j as a %s', (text, dimension, code) => {
    expect(faultOf(text, dimension).code).toBe(code);
  });

  it('a text of a million characters, without looking at all of it', () => {
    expect(faultOf(`1 ${'V'.repeat(1e6)}`, 'voltage').message.length).toBeLessThan(200);
  });
});

it('parseQuantity throws a ScenarioError with the same fault', () => {
  expect(() => parseQuantity('460', 'voltage')).toThrow(ScenarioError);
  expect(() => parseQuantity('460', 'voltage')).toThrow(/has no unit; expected a voltage: write `460 V`/);
});
