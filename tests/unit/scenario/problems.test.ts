import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/scenario/problem.ts';
import { codesOf, type Group, minimalScenario, parseScenario, problemsOf } from './minimalScenario.ts';

/** What is wrong, the change that makes it wrong, and the only problem that must come of it. */
type Case = readonly [string, Group, string];

const plug = [
  { at: '0 s', do: 'start forward' },
  { at: '1 s', do: 'plug' },
];
const goodSwitch = { dropOutSpeed: '50 rpm', pickUpSpeed: '100 rpm' };

const singleKeys: readonly Case[] = [
  ['an unknown section', { machin: {} }, 'unknownKey machin'],
  ['an unknown key', { supply: { angel: '3 deg' } }, 'unknownKey supply.angel'],
  ['a missing section', { load: undefined }, 'missingKey load'],
  ['a missing key', { machine: { inertia: undefined } }, 'missingKey machine.inertia'],
  ['an empty value', { machine: { inertia: null } }, 'missingKey machine.inertia'],
  ['a missing title', { title: undefined }, 'missingKey title'],
  ['a title without a character', { title: '' }, 'outOfRange title'],
  ['a number as title', { title: 50 }, 'wrongType title'],
  ['a section that is no group', { supply: 460 }, 'wrongType supply'],
  ['another version of the format', { schemaVersion: 2 }, 'schemaVersion schemaVersion'],
  ['a bare number for a voltage', { supply: { lineVoltage: 460 } }, 'missingUnit supply.lineVoltage'],
  ['a bare number for an angle', { supply: { angle: 0 } }, 'missingUnit supply.angle'],
  ['a bare number for a leakage', { machine: { statorLeakage: 0.3 } }, 'missingUnit machine.statorLeakage'],
  ['a bare number for the end', { solver: { endTime: 5 } }, 'missingUnit solver.endTime'],
  ['NaN for a voltage', { supply: { lineVoltage: Number.NaN } }, 'notANumber supply.lineVoltage'],
  ['infinity for a frequency', { supply: { frequency: Infinity } }, 'notANumber supply.frequency'],
  ['NaN for the poles', { machine: { poles: Number.NaN } }, 'notANumber machine.poles'],
  [
    'infinity for a tolerance',
    { solver: { relativeTolerance: Infinity } },
    'notANumber solver.relativeTolerance',
  ],
  ['a number of poles in quotes', { machine: { poles: '4' } }, 'wrongType machine.poles'],
  ['a unit of another quantity', { supply: { lineVoltage: '460 A' } }, 'wrongUnit supply.lineVoltage'],
  ['a leakage in volts', { machine: { statorLeakage: '3 V' } }, 'wrongUnit machine.statorLeakage'],
  ['an end time of zero', { solver: { endTime: '0 s' } }, 'outOfRange solver.endTime'],
  ['an end time in volts', { solver: { endTime: '3 V' } }, 'wrongUnit solver.endTime'],
  ['a voltage of 5 V', { supply: { lineVoltage: '5 V' } }, 'outOfRange supply.lineVoltage'],
  ['a voltage of 21 kV', { supply: { lineVoltage: '21 kV' } }, 'outOfRange supply.lineVoltage'],
  ['a frequency of 9 Hz', { supply: { frequency: '9 Hz' } }, 'outOfRange supply.frequency'],
  ['a frequency of 401 Hz', { supply: { frequency: '401 Hz' } }, 'outOfRange supply.frequency'],
  ['an odd number of poles', { machine: { poles: 5 } }, 'outOfRange machine.poles'],
  ['no poles', { machine: { poles: 0 } }, 'outOfRange machine.poles'],
  ['fifty poles', { machine: { poles: 50 } }, 'outOfRange machine.poles'],
  ['no stator resistance', { machine: { statorResistance: '0 ohm' } }, 'outOfRange machine.statorResistance'],
  ['negative leakage', { machine: { statorLeakage: '-0.3 ohm' } }, 'outOfRange machine.statorLeakage'],
  ['negative leakage in H', { machine: { statorLeakage: '-1 mH' } }, 'outOfRange machine.statorLeakage'],
  ['no magnetising branch', { machine: { magnetising: '0 ohm' } }, 'outOfRange machine.magnetising'],
  ['no cage', { machine: { cages: [] } }, 'outOfRange machine.cages'],
  ['a negative inertia', { load: { inertia: '-1 kg m^2' } }, 'outOfRange load.inertia'],
  ['a rated speed of zero', { machine: { rated: { speed: '0 rpm' } } }, 'outOfRange machine.rated.speed'],
  ['an unknown connection', { machine: { connection: 'triangle' } }, 'unknownWord machine.connection'],
  ['a tolerance of 1', { solver: { relativeTolerance: 1 } }, 'outOfRange solver.relativeTolerance'],
  ['a tolerance of 1e-13', { solver: { relativeTolerance: 1e-13 } }, 'outOfRange solver.relativeTolerance'],
  ['half a step', { solver: { maxSteps: 1000.5 } }, 'outOfRange solver.maxSteps'],
  ['a negative time', { actions: [{ at: '-1 s', do: 'start forward' }] }, 'outOfRange actions.0.at'],
  ['no action', { actions: [] }, 'outOfRange actions'],
  ['actions that are no list', { actions: 'start' }, 'wrongType actions'],
  ['a misspelt action', { actions: [{ at: '0 s', do: 'strat' }] }, 'unknownWord actions.0.do'],
  ['two scatter times', { starter: { closingScatter: ['0 s', '0 s'] } }, 'wrongType starter.closingScatter'],
  ['a load torque that is a word', { load: { torque: 'nothing' } }, 'wrongType load.torque'],
  ['an unknown kind of load', { load: { torque: { kind: 'spring' } } }, 'unknownWord load.torque.kind'],
  ['a load without a kind', { load: { torque: [{ torque: '1 N m' }] } }, 'missingKey load.torque.0.kind'],
  ['a load without its torque', { load: { torque: { kind: 'gravity' } } }, 'missingKey load.torque.torque'],
  ['a switch that is a word', { starter: { zeroSpeedSwitch: 'on' } }, 'wrongType starter.zeroSpeedSwitch'],
  [
    'three cages',
    { machine: { cages: Array(3).fill({ resistance: '1 ohm', leakage: '1 ohm' }) } },
    'outOfRange machine.cages',
  ],
  [
    'a second cage without resistance',
    {
      machine: {
        cages: [
          { resistance: '1 ohm', leakage: '1 ohm' },
          { resistance: '0 ohm', leakage: '1 ohm' },
        ],
      },
    },
    'outOfRange machine.cages.1.resistance',
  ],
  [
    'a switch without a pick-up speed',
    { starter: { zeroSpeedSwitch: { dropOutSpeed: '50 rpm' } } },
    'missingKey starter.zeroSpeedSwitch.pickUpSpeed',
  ],
];

const refusals: readonly Case[] = [
  ['a converter supply', { supply: { kind: 'converter' } }, 'notSupported supply.kind'],
  ['an electronic starter', { starter: { kind: 'electronic' } }, 'notSupported starter.kind'],
  [
    'power-factor capacitors',
    { machine: { powerFactorCapacitors: '10 kvar' } },
    'notSupported machine.powerFactorCapacitors',
  ],
];

const betweenKeys: readonly Case[] = [
  [
    'a short-circuit power beside a source resistance',
    { supply: { shortCircuitPower: '5 MVA', sourceResistance: '1 mohm' } },
    'conflict supply.sourceResistance',
  ],
  [
    'a source reactance beside a source inductance',
    { supply: { sourceReactance: '1 mohm', sourceInductance: '1 mH' } },
    'conflict supply.sourceInductance',
  ],
  ['an X/R without a short-circuit power', { supply: { xOverR: 5 } }, 'conflict supply.xOverR'],
  [
    'a nameplate that fixes no torque',
    { machine: { rated: { speed: undefined, current: '62 A' } } },
    'conflict machine.rated',
  ],
  [
    'a rated speed at synchronous speed',
    { machine: { rated: { speed: '1800 rpm' } } },
    'conflict machine.rated.speed',
  ],
  [
    'a rated speed above the synchronous speed of the rated frequency',
    { machine: { ratedFrequency: '50 Hz' } },
    'conflict machine.rated.speed',
  ],
  [
    'kilowatts where the torque says horsepower',
    { machine: { rated: { power: '50 kW', torque: '208 N m' } } },
    'conflict machine.rated.power',
  ],
  [
    'hp written as kW: more power than voltage and current can carry',
    { machine: { rated: { power: '50 kW', current: '62 A' } } },
    'conflict machine.rated.power',
  ],
  ['nothing that turns', { machine: { inertia: '0 kg m^2' } }, 'conflict machine.inertia'],
  [
    'a breakaway torque below the friction torque',
    { load: { torque: { kind: 'friction', torque: '3 N m', breakaway: '2 N m' } } },
    'conflict load.torque.breakaway',
  ],
  [
    'a fan with a coefficient and a point',
    { load: { torque: { kind: 'fan', torque: '3 N m', coefficient: '1 N m s^2/rad^2' } } },
    'conflict load.torque',
  ],
  [
    'a viscous load without a speed',
    { load: { torque: { kind: 'viscous', torque: '3 N m' } } },
    'conflict load.torque',
  ],
  [
    'a dead time beside a change-over delay',
    { starter: { deadTime: '20 ms', changeoverDelay: '10 ms' } },
    'conflict starter.deadTime',
  ],
  [
    'a dead time the contactors cannot reach',
    { starter: { deadTime: '5 ms', closingTime: '20 ms' } },
    'conflict starter.deadTime',
  ],
  [
    'a minimum arcing time with ideal poles',
    { starter: { poles: 'ideal', minimumArcingTime: '1 ms' } },
    'conflict starter.minimumArcingTime',
  ],
  [
    'a drop-out speed at the pick-up speed',
    { starter: { zeroSpeedSwitch: { dropOutSpeed: '50 rpm', pickUpSpeed: '50 rpm' } } },
    'conflict starter.zeroSpeedSwitch.dropOutSpeed',
  ],
  [
    'a pick-up speed at synchronous speed',
    { starter: { zeroSpeedSwitch: { dropOutSpeed: '50 rpm', pickUpSpeed: '1800 rpm' } } },
    'conflict starter.zeroSpeedSwitch.pickUpSpeed',
  ],
  [
    'plugging from rest',
    { starter: { zeroSpeedSwitch: 'off' }, actions: [{ at: '0 s', do: 'plug' }] },
    'conflict actions.0.do',
  ],
  [
    'plugging after coasting',
    {
      starter: { zeroSpeedSwitch: goodSwitch },
      initial: 'running forward',
      actions: [
        { at: '0 s', do: 'coast' },
        { at: '1 s', do: 'plug' },
      ],
    },
    'conflict actions.1.do',
  ],
  ['plugging without a word about the zero-speed switch', { actions: plug }, 'conflict actions.1.do'],
  [
    'two actions at one time',
    {
      actions: [
        { at: '0 s', do: 'start forward' },
        { at: '0 s', do: 'coast' },
      ],
    },
    'conflict actions.1.at',
  ],
  [
    'actions in descending order',
    {
      actions: [
        { at: '2 s', do: 'start forward' },
        { at: '1 s', do: 'coast' },
      ],
    },
    'conflict actions.1.at',
  ],
  [
    'an end at the last action',
    { actions: [{ at: '5 s', do: 'start forward' }], solver: { endTime: '5 s' } },
    'conflict solver.endTime',
  ],
];

describe('refused, with that one problem and no other', () => {
  it.each([...singleKeys, ...refusals, ...betweenKeys])('%s', (_, changes, expected) => {
    expect(codesOf(minimalScenario(changes))).toEqual([expected]);
  });
});

it('plugging while running and with a word about the switch is accepted from either start', () => {
  for (const zeroSpeedSwitch of ['off', goodSwitch]) {
    const starter = { zeroSpeedSwitch };
    expect(() => codesOf(minimalScenario({ starter, actions: plug }))).toThrow('accepted');
    const running = { starter, initial: 'running forward', actions: [{ at: '0 s', do: 'plug' }] };
    expect(() => codesOf(minimalScenario(running))).toThrow('accepted');
  }
});

it('the reason stands in a refusal', () => {
  const [problem] = problemsOf(minimalScenario({ machine: { powerFactorCapacitors: '10 kvar' } }));
  expect(problem?.message).toContain('self-excitation');
});

it('the smallest dead time stands in the message', () => {
  const starter = { deadTime: '5 ms', closingTime: '22 ms', openingTime: '9 ms' };
  expect(problemsOf(minimalScenario({ starter }))[0]?.expected).toContain('at least 13 ms');
});

it('an unknown key is answered with the key that was meant', () => {
  expect(problemsOf(minimalScenario({ supply: { angel: '3 deg' } }))[0]?.expected).toContain('`angle`');
  expect(problemsOf(minimalScenario({ machine: { resistance: '3 ohm' } }))[0]?.expected).toContain(
    '`statorResistance`',
  );
});

it('a missing key is answered with what belongs there', () => {
  const [problem] = problemsOf(minimalScenario({ supply: { frequency: undefined } }));
  expect(problem?.expected).toBe('a frequency with its unit, such as `50 Hz`');
});

const broken = [
  'title: Broken',
  'supply: { lineVoltage: 460, frequency: 60 Hz, angel: 3 deg }',
  'machine:',
  '  poles: 4',
  '  statorResistance: 0.087 ohm',
  '  statorLeakage: 0.302 ohm',
  '  magnetising: 13.08 ohm',
  '  cages: [{ resistance: 0.228 ohm, leakage: 0.302 ohm }]',
  '  rated: { speed: 1705 rpm }',
  '  poles: 5',
  'load: { inertia: 3 kg, torque: none }',
  'actions:',
  '  - { at: 1 s, do: start forward }',
  '  - { at: 0 s, do: coast }',
];

it('all problems of a file come at once, in the order of the text, with line and column', () => {
  const problems = problemsOf(broken.join('\n'), 'broken.yaml');
  expect(problems.map(({ line, column, code, path }) => `${line}:${column} ${code} ${path}`)).toEqual([
    '2:24 missingUnit supply.lineVoltage',
    '2:47 unknownKey supply.angel',
    '3:1 missingKey machine.inertia',
    '10:3 duplicateKey ',
    '10:10 outOfRange machine.poles',
    '11:18 wrongUnit load.inertia',
    '14:11 conflict actions.1.at',
  ]);
});

it('Windows line ends and a byte order mark do not shift the places', () => {
  const places = (source: string) => problemsOf(source).map(({ line, column }) => [line, column]);
  expect(places(`\uFEFF${broken.join('\r\n')}`)).toEqual(places(broken.join('\n')));
});

it('JSON has lines and columns too', () => {
  const json = JSON.stringify(minimalScenario({ supply: { lineVoltage: 460 } }), null, 2);
  const line = json.split('\n').findIndex((text) => text.includes('lineVoltage'));
  const [problem] = problemsOf(json);
  expect(problem?.line).toBe(line + 1);
  expect(problem?.column).toBe(json.split('\n')[line]!.indexOf('460') + 1);
});

it('a problem reads file:line:column path: message; expected what would be right', () => {
  const problems = problemsOf(broken.join('\n'), 'broken.yaml');
  expect(formatProblem(problems[0]!)).toBe(
    'broken.yaml:2:24 supply.lineVoltage: 460 has no unit; expected a voltage: write `460 V`',
  );
  expect(problems[0]?.found).toBe('460');
  const [fromObject] = problemsOf(minimalScenario({ supply: { lineVoltage: 460 } }));
  expect(formatProblem(fromObject!)).toBe(
    'test.yaml supply.lineVoltage: 460 has no unit; expected a voltage: write `460 V`',
  );
});

it('a value that is wrong is not reported a second time by a rule that needs it', () => {
  const starter = { zeroSpeedSwitch: 'on', deadTime: '5 ms', closingTime: '20 V' };
  expect(codesOf(minimalScenario({ starter, actions: plug }))).toEqual([
    'wrongUnit starter.closingTime',
    'wrongType starter.zeroSpeedSwitch',
  ]);
});

it('a decimal comma inside braces is recognised by the key it leaves behind', () => {
  const text = 'title: comma\nsupply: { lineVoltage: 460,5 V, frequency: 60 Hz }\n';
  expect(() => parseScenario(text)).toThrow(
    /supply\.5 V: is no key: inside \{ \} a comma begins a new entry/u,
  );
});
