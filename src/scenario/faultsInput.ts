import { z } from 'zod';
import { bounds } from './bounds.ts';
import { closestWord } from './closestWord.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { group, quantity, word } from './field.ts';
import { timeOrWord } from './timeOrWord.ts';

const phase = (about: string) => word(['A', 'B', 'C'], { about });
const contactor = word(['forward', 'reverse'], { about: 'Which contactor' });
const kinds = [
  'lost phase',
  'welded pole',
  'dead pole',
  'welded contactor',
  'zero-speed switch',
  'auxiliary contact',
  'overload never trips',
  'supply lost',
  'mechanical interlock missing',
] as const;
const kind = <const K extends (typeof kinds)[number]>(name: K) =>
  z.literal(name).meta({ description: `The fault: ${name}.` });
const at = quantity(bounds.instant, { about: 'When', example: '1.2 s' });

const lostPhase = group('A supply phase is lost: its current ends at its next zero', {
  kind: kind('lost phase'),
  phase: phase('Which phase'),
  at,
});

const weldedPole = group('A pole does not part any more once it has touched', {
  kind: kind('welded pole'),
  contactor,
  pole: phase('Which pole, by its motor terminal'),
});

const deadPole = group('A pole never touches', {
  kind: kind('dead pole'),
  contactor,
  pole: phase('Which pole, by its motor terminal'),
});

const weldedContactor = group(
  'All three poles of a contactor, and with them its armature, stay in once it has closed',
  { kind: kind('welded contactor'), contactor },
);

const zeroSpeedSwitch = group('The zero-speed switch fails', {
  kind: kind('zero-speed switch'),
  mode: word(['stuck closed', 'stuck open', 'does not pick up'], {
    about:
      'stuck closed: its contacts stay actuated once they are; stuck open: its make contacts never close (a broken wire); does not pick up: nothing ever actuates (a slipping belt)',
  }),
});

const auxiliaryContact = group('An auxiliary contact of a contactor does not move; needs control', {
  kind: kind('auxiliary contact'),
  contactor,
  contact: word(['hold-in', 'interlock'], {
    about:
      "hold-in: the make contact that holds the contactor or its run relay in; interlock: the break contact in the other contactor's circuit",
  }),
  stuck: word(['open', 'closed'], { about: 'Where it is stuck' }),
});

const overloadNeverTrips = group('The overload relay heats but never trips; needs control with overload', {
  kind: kind('overload never trips'),
});

const supplyLost = group('All three supply phases are lost together', {
  kind: kind('supply lost'),
  at,
  until: timeOrWord('never', {
    about: 'When they are back: a time with its unit, or never.',
    example: '1.5 s',
    bounds: bounds.instant,
  }).optional(),
});

const interlockMissing = group(
  'Nothing mechanical keeps both contactors from being in, though it should; needs control',
  { kind: kind('mechanical interlock missing') },
);

const faults = [
  lostPhase,
  weldedPole,
  deadPole,
  weldedContactor,
  zeroSpeedSwitch,
  auxiliaryContact,
  overloadNeverTrips,
  supplyLost,
  interlockMissing,
] as const;

const fault = z.discriminatedUnion('kind', faults, {
  error: ({ input }) => {
    const expected = `one of ${kinds.map((name) => `\`${name}\``).join(', ')}`;
    if (typeof input !== 'object' || input === null || Array.isArray(input))
      return packTypeFault(input, 'a fault such as `{ kind: lost phase, phase: B, at: 1.2 s }`');
    const written: unknown = 'kind' in input ? input.kind : undefined;
    if (written === undefined || written === null) return packTypeFault(written, expected);
    const close = typeof written === 'string' ? closestWord(written, kinds) : undefined;
    const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
    return packFault('unknownWord', `${describeValue(written)} is not a kind of fault`, hint);
  },
});

/** Faults of the installation as a person writes them. */
export const faultsInput = z
  .array(fault, { error: ({ input }) => packTypeFault(input, 'a list of faults') })
  .max(20, { error: () => packFault('outOfRange', 'the list is too long', 'at most 20 faults') })
  .meta({
    description: 'What is wrong with the installation; nothing if left out.',
    examples: [[{ kind: 'lost phase', phase: 'B', at: '1.2 s' }]],
  });
