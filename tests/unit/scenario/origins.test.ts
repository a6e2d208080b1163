import { expect, it } from 'vitest';
import { parseScenarioWithOrigins } from '../../../src/scenario/parseScenarioWithOrigins.ts';
import { type Group, minimalScenario } from './minimalScenario.ts';

function originOf(path: string, changes: Group = {}): string | undefined {
  const { origins } = parseScenarioWithOrigins(minimalScenario(changes));
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

it('no value is listed twice', () => {
  const starter = { poles: 'ideal', zeroSpeedSwitch: { dropOutSpeed: '1 rpm', pickUpSpeed: '2 rpm' } };
  const { origins } = parseScenarioWithOrigins(
    minimalScenario({ starter, machine: { connection: 'delta' } }),
  );
  const paths = origins.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
});
