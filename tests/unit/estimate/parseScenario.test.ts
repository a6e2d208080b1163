import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { parseScenarioWithOrigins } from '../../../src/estimate/parseScenarioWithOrigins.ts';
import { exampleText } from '../../support/examples.ts';

const withMachine = (machine: string) => `schemaVersion: 1
title: a motor of which only the plate is known
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  connection: delta
${machine}
load: { inertia: 0.2 kg m^2, torque: none }
starter: { changeoverDelay: 50 ms, closingTime: 20 ms, openingTime: 20 ms, zeroSpeedSwitch: off }
actions:
  - { at: 0 s, do: start forward }
`;

describe('parseScenario', () => {
  it('reads a scenario with a circuit without estimating one', () => {
    const { scenario, estimation, nameplate } = parseScenarioWithOrigins(
      exampleText('may-this-belt-be-plugged.yaml'),
    );
    expect(estimation).toBe(null);
    expect(nameplate).toBe(null);
    expect(parseScenario(exampleText('may-this-belt-be-plugged.yaml'))).toEqual(scenario);
  });

  it('finds a double cage from a nameplate and says of each value where it comes from', () => {
    const { scenario, estimation, nameplate, origins } = parseScenarioWithOrigins(
      withMachine(
        '  nameplate: { power: 11 kW, speed: 1465 rpm, current: 21.5 A, lockedRotorCurrent: 6 times }',
      ),
    );
    expect(scenario.machine.cages).toHaveLength(2);
    expect(scenario.machine.polePairs).toBe(2);
    expect(nameplate?.current).toBe(21.5);
    expect(estimation?.from).toBe('nameplate');
    const origin = (path: string) => origins.find((one) => one.path === `machine.${path}`)?.origin;
    expect(origin('nameplate.current')).toBe('given');
    expect(origin('nameplate.lockedRotorTorque')).toBe('standard');
    expect(origin('nameplate.powerFactor')).toBe('derived');
    expect(origin('equivalentStar.cages.0.resistance')).toBe('estimated');
    expect(origin('inertia')).toBe('assumed');
  });

  it('finds one cage from test readings', () => {
    const { scenario, estimation } = parseScenarioWithOrigins(
      withMachine(`  poles: 4
  inertia: 0.1 kg m^2
  rated: { power: 15 kW, speed: 1455 rpm }
  tests:
    terminalResistance: 0.5 ohm
    noLoad: { voltage: 400 V, current: 12.6 A, power: 900 W }
    lockedRotor: { voltage: 80 V, current: 31 A, power: 1400 W }`),
    );
    expect(scenario.machine.cages).toHaveLength(1);
    expect(scenario.machine.rated.power).toBe(15e3);
    expect(estimation?.from).toBe('tests');
  });

  it('refuses a nameplate no circuit has, with the line of the item', () => {
    const text = withMachine(`  nameplate:
    power: 11 kW
    speed: 1465 rpm
    current: 21.5 A
    lockedRotorCurrent: 2 times
    lockedRotorTorque: 4 times`);
    expect(() => parseScenario(text, { fileName: 'plant.yaml' })).toThrow(
      /plant\.yaml:1[01]:\d+ machine\.nameplate\.lockedRotor(Current|Torque): cannot be had together/u,
    );
  });

  it('names the file it was given in its problems', () => {
    expect(() => parseScenario('{', { fileName: 'plant.yaml' })).toThrow(/plant\.yaml/u);
  });
});
