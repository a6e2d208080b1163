import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';

const names = readdirSync('examples').filter((name) => name.endsWith('.yaml'));

it('there is one that plugs well, one that should not be plugged and one reversal', () => {
  expect(names).toEqual(
    expect.arrayContaining(['plugs-comfortably.yaml', 'should-not-be-plugged.yaml', 'full-reversal.yaml']),
  );
});

it.each(names)('%s is a valid scenario that explains itself', (name) => {
  const source = readFileSync(`examples/${name}`, 'utf8');
  const scenario = parseScenario(source, { fileName: name });
  expect(scenario.title).not.toBe('');
  expect(scenario.description).not.toBe('');
  expect(source.split('\n').filter((line) => line.includes('#')).length).toBeGreaterThan(5);
});

it('the examples show a double cage, a delta winding, a source impedance, scatter and a zero-speed switch', () => {
  const all = names.map((name) => parseScenario(readFileSync(`examples/${name}`, 'utf8')));
  expect(all.some(({ machine }) => machine.cages.length === 2)).toBe(true);
  expect(all.some(({ machine }) => machine.connection === 'delta')).toBe(true);
  expect(all.some(({ supply }) => supply.sourceInductance > 0)).toBe(true);
  expect(all.some(({ starter }) => starter.closingScatter.some((time) => time > 0))).toBe(true);
  expect(all.some(({ starter }) => starter.zeroSpeedSwitch !== null)).toBe(true);
});

it('the load of the drive that should not be plugged has thirty to fifty times the inertia of the rotor', () => {
  const { machine, load } = parseScenario(readFileSync('examples/should-not-be-plugged.yaml', 'utf8'));
  expect(load.inertia / machine.inertia).toBeGreaterThan(30);
  expect(load.inertia / machine.inertia).toBeLessThan(50);
});
