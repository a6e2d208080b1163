import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { scenarioJsonSchema } from '../../../src/scenario/scenarioJsonSchema.ts';
import { EXAMPLE_SCENARIOS, exampleText } from '../../support/examples.ts';
import { WITH_EVERY_KEY } from './everyKey.ts';
import { codesOf, type Group, minimalScenario } from './minimalScenario.ts';

const schema = scenarioJsonSchema();
const validate = new Ajv2020({
  strict: true,
  strictTypes: false,
  // The three ways to give a machine name keys that are defined beside them, not inside.
  strictRequired: false,
  allowUnionTypes: true,
  discriminator: false,
}).compile(schema);

it('names its draft', () => {
  expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
});

it.each(EXAMPLE_SCENARIOS)('accepts the example %s', (name) => {
  expect(validate(parse(exampleText(name)))).toBe(true);
});

it('accepts the smallest scenario', () => {
  expect(validate(minimalScenario())).toBe(true);
});

it.each(WITH_EVERY_KEY)('accepts %s', (_, scenario) => {
  expect(validate(scenario)).toBe(true);
});

const structurallyWrong: readonly (readonly [string, Group])[] = [
  ['an unknown section', { machin: {} }],
  ['an unknown key', { supply: { angel: '3 deg' } }],
  ['a missing key', { machine: { inertia: undefined } }],
  ['a bare number', { supply: { lineVoltage: 460 } }],
  ['a number without a unit in quotes', { supply: { lineVoltage: '460' } }],
  ['a unit without a number', { supply: { lineVoltage: 'V' } }],
  ['a decimal comma', { load: { inertia: '0,6 kg m^2' } }],
  ['an odd number of poles', { machine: { poles: 5 } }],
  ['an unknown word', { machine: { connection: 'triangle' } }],
  ['an unknown action', { actions: [{ at: '0 s', do: 'reverse' }] }],
  ['no action', { actions: [] }],
  ['three cages', { machine: { cages: Array(3).fill({ resistance: '1 ohm', leakage: '1 ohm' }) } }],
  ['a fan without a kind', { load: { torque: { torque: '3 N m', atSpeed: '100 rpm' } } }],
  ['a load torque that is a word', { load: { torque: 'nothing' } }],
  ['two scatter times', { starter: { closingScatter: ['0 ms', '0 ms'] } }],
  ['an end time that is a word', { solver: { endTime: 'never' } }],
  ['a tolerance of 1', { solver: { relativeTolerance: 1 } }],
  ['another version', { schemaVersion: 2 }],
  ['a converter', { supply: { kind: 'converter' } }],
  ['capacitors', { machine: { powerFactorCapacitors: '10 kvar' } }],
  ['an empty title', { title: '' }],
  ['a transformer without impedance', { supply: { transformer: { rating: '630 kVA' } } }],
  ['an impedance as a word', { supply: { transformer: { rating: '630 kVA', impedance: 'six' } } }],
  ['a cable without a unit', { supply: { cable: { length: 80 } } }],
  ['a nameplate without power', { machine: { nameplate: { current: '14.8 A' } } }],
  ['code letter O', { machine: { nameplate: { power: '5 hp', codeLetter: 'O' } } }],
  ['two currents of three', { machine: { tests: { noLoad: { current: ['8 A', '8 A'] } } } }],
  ['a saturation word', { machine: { saturation: { main: 'strong' } } }],
  ['one point of a curve', { machine: { saturation: { main: [{ voltage: '400 V', current: '5 A' }] } } }],
  ['an iron loss without a unit', { machine: { ironLoss: 120 } }],
  ['temperatures without the one they hold at', { machine: { temperature: { winding: '110 degC' } } }],
  ['a step without duration', { machine: { rotorResistors: { starting: [{ resistance: '1 ohm' }] } } }],
  ['a coupling without damping', { load: { coupling: { stiffness: '20 kN m/rad' } } }],
  ['a gear without efficiency', { load: { gear: { ratio: 10 } } }],
  ['a table of one point', { load: { torque: { kind: 'table', points: [] } } }],
  ['a bypass that is a word', { starter: { lineResistors: { resistance: '1 ohm', bypassAfter: 'soon' } } }],
  ['plugging in delta', { starter: { plugConnection: 'delta' } }],
  ['an unknown fault', { starter: { faults: [{ kind: 'fire' }] } }],
  ['a switch that fails somehow', { starter: { faults: [{ kind: 'zero-speed switch', mode: 'broken' }] } }],
  ['an unknown scheme', { starter: { control: { scheme: 'plugging' } } }],
  ['a control circuit without a scheme', { starter: { control: {} } }],
  ['perhaps a relay', { starter: { control: { scheme: 'inching', memoryRelay: 'perhaps' } } }],
  ['category 2', { starter: { control: { scheme: 'inching', emergencyStop: { category: 2 } } } }],
  ['class 15', { starter: { control: { scheme: 'inching', overload: { setting: '9 A', class: 15 } } } }],
  ['coils of one voltage', { starter: { control: { scheme: 'inching', coilVoltage: { pickUp: 0.8 } } } }],
  ['an unknown button', { actions: [{ at: '0 s', do: 'press start' }] }],
  ['an unknown thermal class', { thermal: { insulationClass: '105' } }],
  ['a rise without a unit', { thermal: { ratedRise: 80 } }],
  ['an unknown cycle', { duty: { cycle: 'plugging' } }],
  ['a day in another order', { duty: { contactsChanged: '14.03.2026' } }],
  ['contactors without a rated current', { contactors: { lifeAc3: 1e6 } }],
  ['a life of text', { contactors: { ratedCurrentAc3: '80 A', lifeAc3: '1 million' } }],
  ['a limit without a unit', { limits: { stopTime: 1.2 } }],
  ['a limit that is another word', { limits: { contactLife: 'unlimited' } }],
  ['a curve of one point', { protection: { curves: [{ name: 'a', kind: 'fuse', points: [] }] } }],
  ['a brake without a delay', { alternatives: { mechanicalBrake: { torque: '9 N m' } } }],
  ['a press without a unit', { actions: [{ at: '0 s', do: 'press forward', for: 1 }] }],
];

describe('what the schema rejects the parser rejects too', () => {
  it.each(structurallyWrong)('%s', (_, changes) => {
    const scenario = minimalScenario(changes);
    expect(validate(scenario)).toBe(false);
    expect(codesOf(scenario).length).toBeGreaterThan(0);
  });
});

describe('an editor finds help for every key', () => {
  const keys = propertiesOf(schema, '');

  it('some two hundred keys are described', () => {
    expect(keys.length).toBeGreaterThan(190);
  });

  it.each(keys)('%s has a description', (_, property) => {
    expect(property).toHaveProperty('description', expect.stringMatching(/\.$/));
  });

  it.each(keys.filter(([, property]) => 'pattern' in property))(
    '%s has an example its own form accepts',
    (_, property) => {
      const shown = property.examples;
      if (!Array.isArray(shown)) throw new Error('no examples');
      for (const example of shown) expect(String(example)).toMatch(new RegExp(String(property.pattern), 'u'));
    },
  );
});

/** Every property anywhere in the schema, with its path; the word that tells kinds of load apart needs no text. */
function propertiesOf(node: unknown, path: string): [string, Group][] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]): [string, Group][] => {
    if (key !== 'properties') return propertiesOf(value, path);
    return Object.entries(value as Group).flatMap(([name, property]): [string, Group][] => {
      const here = `${path}.${name}`.replace(/^\./, '');
      const own: [string, Group][] =
        name === 'kind' && path.includes('torque') ? [] : [[here, property as Group]];
      return [...own, ...propertiesOf(property, here)];
    });
  });
}
