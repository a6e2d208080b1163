import { expect, it } from 'vitest';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { EXAMPLE_SCENARIOS, exampleText } from '../../support/examples.ts';

const names = EXAMPLE_SCENARIOS;

it('there is one that plugs well, one that should not be plugged and one reversal', () => {
  expect(names).toEqual(
    expect.arrayContaining([
      'may-this-belt-be-plugged.yaml',
      'should-this-fan-be-plugged.yaml',
      'what-does-a-full-reversal-cost.yaml',
    ]),
  );
});

it.each(names)('%s is a valid scenario that explains itself', (name) => {
  const source = exampleText(name);
  const scenario = parseScenario(source, { fileName: name });
  expect(scenario.title).not.toBe('');
  expect(scenario.description).not.toBe('');
  expect(source.split('\n').filter((line) => line.includes('#')).length).toBeGreaterThan(5);
});

it('the examples show a double cage, a delta winding, a source impedance, scatter and a zero-speed switch', () => {
  const all = names.map((name) => parseScenario(exampleText(name)));
  expect(all.some(({ machine }) => machine.cages.length === 2)).toBe(true);
  expect(all.some(({ machine }) => machine.connection === 'delta')).toBe(true);
  expect(all.some(({ supply }) => supply.sourceInductance > 0)).toBe(true);
  expect(all.some(({ starter }) => starter.closingScatter.some((time) => time > 0))).toBe(true);
  expect(all.some(({ starter }) => starter.zeroSpeedSwitch !== null)).toBe(true);
});

it('the load of the drive that should not be plugged has thirty to fifty times the inertia of the rotor', () => {
  const { machine, load } = parseScenario(exampleText('should-this-fan-be-plugged'));
  expect(load.inertia / machine.inertia).toBeGreaterThan(30);
  expect(load.inertia / machine.inertia).toBeLessThan(50);
});
