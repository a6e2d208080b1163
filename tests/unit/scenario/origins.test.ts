import { expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/readScenario.ts';
import { nameplateScenario, PLATE, WITH_EVERY_KEY } from './everyKey.ts';
import { type Group, minimalScenario } from './minimalScenario.ts';
import { stubEstimator } from './stubEstimator.ts';

function originOf(path: string, changes: Group = {}): string | undefined {
  return originIn(minimalScenario(changes), path);
}

function originIn(scenario: Group, path: string): string {
  const { origins } = readScenario(scenario, {}, stubEstimator());
  const found = origins.filter((origin) => origin.path === path);
  return found.map(({ value, origin }) => `${value} (${origin})`).join(', ');
}

it('a given value keeps the wording of the file', () => {
  expect(originOf('machine.inertia', { machine: { inertia: '39.4 lb-ft²' } })).toBe('39.4 lb-ft² (given)');
  expect(originOf('actions.0.do')).toBe('start forward (given)');
});

it('what is not stated is listed as a default', () => {
  expect(originOf('starter.closingTime')).toBe('20 ms (default)');
  expect(originOf('starter.changeoverDelay')).toBe('10 ms (default)');
  expect(originOf('machine.connection')).toBe('star (default)');
  expect(originOf('solver.relativeTolerance')).toBe('1e-8 (default)');
  expect(originOf('starter.zeroSpeedSwitch')).toBe('off (default)');
});

it('an X/R nobody stated is an assumption, and what follows from it is derived', () => {
  const supply = { shortCircuitPower: '5 MVA' };
  expect(originOf('supply.xOverR', { supply })).toBe('6 (assumed)');
  // V²/S = 42.32 mΩ, over √37 = 6.957 mΩ, by hand.
  expect(originOf('supply.sourceResistance', { supply })).toBe('0.006957 ohm (derived)');
});

it('a stated dead time gives a derived delay', () => {
  const starter = { deadTime: '30 ms', closingTime: '25 ms', openingTime: '12 ms' };
  expect(originOf('starter.changeoverDelay', { starter })).toBe('17 ms (derived)');
  expect(originOf('starter.deadTime', { starter })).toBe('30 ms (given)');
});

it('the equivalent star of a delta winding is listed beside the winding', () => {
  const machine = { connection: 'delta', statorResistance: '0.3 ohm' };
  expect(originOf('machine.statorResistance', { machine })).toBe('0.3 ohm (given)');
  expect(originOf('machine.equivalentStar.statorResistance', { machine })).toBe('0.1 ohm (derived)');
});

it('an element that is not stated is listed as off', () => {
  expect(originOf('machine.saturation.main')).toBe('off (default)');
  expect(originOf('machine.saturation.leakage')).toBe('off (default)');
  expect(originOf('machine.ironLoss')).toBe('0 W (default)');
  expect(originOf('machine.mechanicalLoss')).toBe('0 W (default)');
});

it('what common practice fills in is an assumption', () => {
  const supply = {
    transformer: { rating: '630 kVA', impedance: '6 %', networkShortCircuitPower: '250 MVA' },
    cable: { length: '80 m', crossSection: '35 mm^2' },
  };
  expect(originOf('supply.transformer.xOverR', { supply })).toBe('6 (assumed)');
  expect(originOf('supply.transformer.networkXOverR', { supply })).toBe('10 (assumed)');
  expect(originOf('supply.cable.conductor', { supply })).toBe('copper (assumed)');
  expect(originOf('supply.cable.temperature', { supply })).toBe('20 degC (assumed)');
  expect(originOf('supply.cable.reactance', { supply })).toBe('0.08 ohm/km at 50 Hz (assumed)');
  const machine = {
    saturation: { main: 'typical', leakage: 'typical' },
    rated: { current: '46.8 A' },
    mechanicalLoss: '200 W',
    temperature: { resistancesAt: '20 degC', winding: '110 degC' },
  };
  // 2 · √2 · 46.8 A.
  expect(originOf('machine.saturation.knee', { machine })).toBe('132.4 A (assumed)');
  expect(originOf('machine.mechanicalLoss.frictionShare', { machine })).toBe('50 % (assumed)');
  expect(originOf('machine.temperature.rotor', { machine })).toBe('110 degC (assumed)');
  expect(originOf('machine.temperature.rotorConductor', { machine })).toBe('aluminium (assumed)');
  // 0.087 Ω · 345/255, copper from 20 to 110 °C.
  expect(originOf('machine.temperature.statorResistance', { machine })).toBe('0.1177 ohm (derived)');
  const load = { gear: { ratio: 10, efficiency: '94 %' } };
  expect(originOf('load.gear.backwardEfficiency', { load })).toBe('0.94 (assumed)');
});

it('a nameplate borrows from the supply, and what is found for it is listed with its source', () => {
  const scenario = nameplateScenario({ power: '10 hp', speed: '1740 rpm' });
  expect(originIn(scenario, 'machine.nameplate.lineVoltage')).toBe('460 V (default)');
  expect(originIn(scenario, 'machine.poles')).toBe('4 (derived)');
  expect(originIn(scenario, 'machine.statorResistance')).toBe('1 ohm (estimated)');
});

it('a section lists what was given first, then what was filled in, and the sections stand in their order', () => {
  const { origins } = readScenario(nameplateScenario(PLATE), {}, stubEstimator());
  const sections = origins.map(({ path }) => path.split('.')[0]);
  expect([...new Set(sections)]).toEqual([
    'title',
    'supply',
    'machine',
    'load',
    'starter',
    'initial',
    'actions',
    'solver',
  ]);
  const machine = origins.filter(({ path }) => path.startsWith('machine.')).map(({ origin }) => origin);
  expect(machine.lastIndexOf('given')).toBeLessThan(machine.indexOf('assumed'));
});

it.each(WITH_EVERY_KEY)('no value of %s is listed twice', (_, scenario) => {
  const { origins } = readScenario(scenario, {}, stubEstimator());
  const paths = origins.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
});

it('no value is listed twice', () => {
  const starter = { poles: 'ideal', zeroSpeedSwitch: { dropOutSpeed: '1 rpm', pickUpSpeed: '2 rpm' } };
  const { origins } = readScenario(
    minimalScenario({ starter, machine: { connection: 'delta' } }),
    {},
    stubEstimator(),
  );
  const paths = origins.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
});
