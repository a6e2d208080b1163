import fc from 'fast-check';
import { expect, it } from 'vitest';
import { assertScenario } from '../../src/scenario/assertScenario.ts';
import { renderScenario } from '../../src/scenario/renderScenario.ts';
import type { Scenario, StarterFault } from '../../src/scenario/scenario.ts';
import { ScenarioError } from '../../src/scenario/scenarioError.ts';
import { scenarioToYaml } from '../../src/scenario/scenarioToYaml.ts';
import { anyScenario } from '../support/anyScenario.ts';
import { reversalWithElements } from '../support/arbitraryScenario.ts';
import { WITH_EVERY_KEY } from '../unit/scenario/everyKey.ts';
import { parseScenario } from '../unit/scenario/minimalScenario.ts';

it('every scenario comes back from JSON text the same to the last bit', () => {
  fc.assert(
    fc.property(anyScenario, (original) => {
      expect(parseScenario(JSON.stringify(renderScenario(original)))).toEqual(original);
    }),
    { numRuns: 200, seed: 1 },
  );
});

it('every scenario comes back from the parsed JSON object the same to the last bit', () => {
  fc.assert(
    fc.property(anyScenario, (original) => {
      expect(parseScenario(JSON.parse(JSON.stringify(renderScenario(original))))).toEqual(original);
    }),
    { numRuns: 200, seed: 2 },
  );
});

it('every scenario comes back from YAML text the same to the last bit', () => {
  fc.assert(
    fc.property(anyScenario, (original) => {
      expect(parseScenario(scenarioToYaml(original))).toEqual(original);
    }),
    { numRuns: 200, seed: 3 },
  );
});

it('plausible drives with any of the elements are accepted and come back the same to the last bit', () => {
  fc.assert(
    fc.property(reversalWithElements, (original) => {
      assertScenario(original);
      expect(parseScenario(JSON.stringify(renderScenario(original)))).toEqual(original);
    }),
    { numRuns: 100, seed: 5 },
  );
});

const FAULTS: readonly StarterFault['kind'][] = [
  'lostPhase',
  'weldedPole',
  'deadPole',
  'weldedContactor',
  'zeroSpeedSwitch',
  'auxiliaryContact',
  'overloadNeverTrips',
  'supplyLost',
  'mechanicalInterlockMissing',
];

it('every scenario that a file can state is one that a program may state', () => {
  fc.assert(
    fc.property(anyScenario, (original) => {
      expect(() => assertScenario(original)).not.toThrow();
    }),
    { numRuns: 200, seed: 7 },
  );
});

it('the scenarios above hold every element, in several hundred of them a good number of times', () => {
  const all = fc.sample(anyScenario, { numRuns: 300, seed: 6 });
  const count = (has: (one: Scenario) => unknown) => all.filter((one) => has(one) !== undefined).length;
  const elements: readonly ((one: Scenario) => unknown)[] = [
    ({ supply }) => supply.cable,
    ({ machine }) => machine.mainSaturation,
    ({ machine }) => machine.leakageSaturation,
    ({ machine }) => machine.core,
    ({ machine }) => machine.mechanicalLoss,
    ({ machine }) => machine.rotorResistors,
    ({ load }) => load.gear,
    ({ load }) => load.coupling,
    ({ load }) => load.torques.find(({ kind }) => kind === 'constantPower'),
    ({ load }) => load.torques.find(({ kind }) => kind === 'table'),
    ({ starter }) => starter.lineResistors,
    ({ starter }) => starter.plugConnection,
    ({ starter }) => starter.windingOrder,
    ...FAULTS.map(
      (wanted) =>
        ({ starter }: Scenario) =>
          starter.faults?.find(({ kind }) => kind === wanted),
    ),
    ({ starter }) => starter.zeroSpeedSwitch?.reverse,
    ({ starter }) => starter.zeroSpeedSwitch?.lockout,
    ({ starter }) => starter.control?.coilVoltage ?? undefined,
    ({ starter }) => starter.control?.overload ?? undefined,
    ({ actions }) => actions.find((action, j) => j > 0 && action.at === actions[j - 1]!.at),
  ];
  for (const element of elements) expect(count(element)).toBeGreaterThan(30);
});

it.each(WITH_EVERY_KEY)('what is read from %s comes back the same to the last bit', (_, group) => {
  const original = parseScenario(group);
  expect(parseScenario(JSON.stringify(renderScenario(original)))).toEqual(original);
});

it('no text, however odd, does anything but parse or be refused with a list of problems', () => {
  const pieces = fc.constantFrom(
    'title: ',
    'supply:\n  ',
    '- ',
    '[',
    ']',
    '{',
    '}',
    '"',
    ':',
    '\n',
    '&a ',
    '*a',
    '!t ',
    '? ',
  );
  const text = fc.array(fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 8 })), { maxLength: 40 });
  fc.assert(
    fc.property(text, (parts) => {
      try {
        parseScenario(parts.join(''));
      } catch (error) {
        expect(error).toBeInstanceOf(ScenarioError);
        if (error instanceof ScenarioError)
          expect(error.message.split('\n')).toHaveLength(error.problems.length);
      }
    }),
    { numRuns: 1000, seed: 4 },
  );
});
