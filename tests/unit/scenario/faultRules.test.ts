import { describe } from 'vitest';
import { controlledScenario, SWITCH } from './controlledScenario.ts';
import { type Group, minimalScenario } from './minimalScenario.ts';
import { accepts, type Refusal, refuses } from './refusals.ts';

const withSwitch = { zeroSpeedSwitch: SWITCH };
const faults = (...list: Group[]) => ({ faults: list });
const plugging = { scheme: 'plug to stop' };
const inching = { scheme: 'inching' };

const switchFault = { kind: 'zero-speed switch', mode: 'stuck open' };
const holdIn = { kind: 'auxiliary contact', contactor: 'reverse', contact: 'hold-in', stuck: 'open' };
const welded = { kind: 'welded contactor', contactor: 'forward' };
const lost = { kind: 'supply lost', at: '1 s', until: '2 s' };
const interlock = { kind: 'mechanical interlock missing' };
const neverTrips = { kind: 'overload never trips' };

const ofFaults: readonly Refusal[] = [
  ...[holdIn, interlock, neverTrips].map(
    (fault): Refusal => [
      `${fault.kind} without a control circuit`,
      minimalScenario({ starter: faults(fault) }),
      'conflict starter.faults.0',
      'has no meaning without a control circuit',
      '`control` under starter',
    ],
  ),
  [
    'an overload relay that never trips and is not there',
    controlledScenario({}, faults(neverTrips)),
    'conflict starter.faults.0',
    'an overload relay that is not there',
    '`overload` under control',
  ],
  [
    'a fault of a switch that is not there',
    minimalScenario({ starter: faults(switchFault) }),
    'conflict starter.faults.0',
    'a switch that is not there',
    '`zeroSpeedSwitch` under starter',
  ],
  [
    'a fault of a switch that is off',
    controlledScenario({}, { zeroSpeedSwitch: 'off', ...faults(switchFault) }),
    'conflict starter.faults.0',
    'a switch that is not there',
    '`zeroSpeedSwitch` under starter',
  ],
  [
    'a mechanical interlock that is missing and was never there',
    controlledScenario({ mechanicalInterlock: 'no' }, faults(interlock)),
    'conflict starter.faults.0',
    'where there is none',
    '`mechanicalInterlock: yes`',
  ],
  [
    'a hold-in contact of inching',
    controlledScenario(inching, { ...withSwitch, ...faults(holdIn) }),
    'conflict starter.faults.0',
    'inching does without',
    '`contact: interlock`',
  ],
  [
    'a hold-in contact of the reverse contactor in plug to stop',
    controlledScenario(plugging, { ...withSwitch, ...faults(holdIn) }),
    'conflict starter.faults.0',
    'the reverse contactor only brakes',
    '`contactor: forward`',
  ],
  ...['welded pole', 'dead pole'].flatMap((kind): Refusal[] => {
    const pole = { kind, contactor: 'forward', pole: 'B' };
    const expected = 'one fault in one place';
    return [
      [
        `a welded contactor beside a ${kind} of its own`,
        minimalScenario({ starter: faults(pole, welded) }),
        'conflict starter.faults.1',
        `stands beside the ${kind} of the same contactor`,
        expected,
      ],
      [
        `a ${kind} beside its welded contactor`,
        minimalScenario({ starter: faults(welded, pole) }),
        'conflict starter.faults.1',
        'stands beside the welded contactor of the same contactor',
        expected,
      ],
    ];
  }),
  [
    'a contactor welded twice',
    minimalScenario({ starter: faults(welded, welded) }),
    'conflict starter.faults.1',
    'repeats the fault of the forward contactor',
    'one fault in one place',
  ],
  [
    'a switch that is stuck open and closed',
    minimalScenario({
      starter: { ...withSwitch, ...faults(switchFault, { ...switchFault, mode: 'stuck closed' }) },
    }),
    'conflict starter.faults.1',
    'repeats the fault of the zero-speed switch',
    'one fault in one place',
  ],
  [
    'a contact that is stuck open and closed',
    controlledScenario({}, faults(holdIn, { ...holdIn, stuck: 'closed' })),
    'conflict starter.faults.1',
    'repeats the fault of the hold-in contact of the reverse contactor',
    'one fault in one place',
  ],
  [
    'a supply that is lost twice',
    minimalScenario({ starter: faults(lost, { ...lost, at: '3 s', until: 'never' }) }),
    'conflict starter.faults.1',
    'repeats the fault of the supply',
    'one fault in one place',
  ],
  [
    'a supply that is back as it is lost',
    minimalScenario({ starter: faults({ ...lost, until: '1 s' }) }),
    'conflict starter.faults.0.until',
    'is not after the supply is lost',
    'a time after 1 s',
  ],
];

describe('refused', () => refuses(ofFaults));

describe('accepted', () =>
  accepts([
    [
      'a hold-in contact of the forward contactor in plug to stop',
      controlledScenario(plugging, { ...withSwitch, ...faults({ ...holdIn, contactor: 'forward' }) }),
    ],
    [
      'an interlock contact of inching',
      controlledScenario(inching, { ...withSwitch, ...faults({ ...holdIn, contact: 'interlock' }) }),
    ],
    [
      'both contacts of a contactor at fault',
      controlledScenario({}, faults(holdIn, { ...holdIn, contact: 'interlock' })),
    ],
    [
      'a welded contactor beside a dead pole of the other one',
      minimalScenario({ starter: faults(welded, { kind: 'dead pole', contactor: 'reverse', pole: 'B' }) }),
    ],
    [
      'a lost phase beside a lost supply',
      minimalScenario({ starter: faults({ kind: 'lost phase', phase: 'A', at: '1 s' }, lost) }),
    ],
  ]));
