import { z } from 'zod';
import { bounds } from './bounds.ts';
import { SCHEME_WORDS } from './controlWords.ts';
import { defaultRelayTime } from './defaults.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { group, quantity, word } from './field.ts';
import { keyword } from './keyword.ts';
import { ratio } from './ratioField.ts';
import type { TripClass } from './starterData.ts';
import { yesNo } from './yesNo.ts';

const category = z
  .literal([0, 1], {
    error: ({ input }) => {
      const expected = '0 (both coils drop at once) or 1 (brakes, then both coils are dead)';
      if (typeof input !== 'number') return packTypeFault(input, expected);
      return packFault('unknownWord', `${input} is not a category that is covered`, expected);
    },
  })
  .meta({
    description:
      'Stop category of IEC 60204-1; 0: both coils drop at once; 1: the opposite contactor may brake until the zero-speed switch opens or the limit runs out.',
    examples: [0, 1],
  });

const emergencyStop = group('What the emergency stop does; category 0 if left out', {
  category,
  limit: quantity(bounds.brakingLimit, {
    about: 'Longest braking of category 1; then both coils are dead',
    example: '2 s',
  }).optional(),
}).superRefine((stop, context) => {
  const conflict = (message: string, expected: string) =>
    context.addIssue({
      code: 'custom',
      path: ['limit'],
      message: packFault('conflict', message, expected),
    });
  if (stop.category === 1 && stop.limit === undefined)
    conflict('is missing beside category 1, whose braking must end', 'a time such as `2 s`');
  if (stop.category === 0 && stop.limit !== undefined)
    conflict('has no meaning with category 0, which does not brake', 'category 1, or this key left out');
});

/** Coils of real contactors and their supplies lie well inside. */
const coilShare = { min: 0.1, max: 1 } as const;

const coilVoltage = z
  .union([
    keyword(['ignored'], '`ignored`, or the two voltages, such as `{ pickUp: 80 %, dropOut: 55 %}`'),
    group('Voltages of the coils, of rated control voltage', {
      pickUp: ratio('fraction', coilShare, { about: 'A coil picks up above this', example: '80 %' }),
      dropOut: ratio('fraction', coilShare, { about: 'A coil drops out below this', example: '55 %' }),
    }).superRefine((shares, context) => {
      if (shares.dropOut < shares.pickUp) return;
      const message = packFault(
        'conflict',
        'is not below the pick-up voltage',
        'a drop-out voltage below pickUp',
      );
      context.addIssue({ code: 'custom', path: ['dropOut'], message });
    }),
  ])
  .meta({
    description:
      'Shares of the rated control voltage at which coils pick up and drop out, fed from the simulated voltage at the starter; or `ignored`: they only need it to be there. IEC 60947-4-1 asks a.c. coils to operate at 85 % and to drop out between 20 % and 75 % (from memory).',
    examples: ['ignored', { pickUp: '80 %', dropOut: '55 %' }],
    default: 'ignored',
  });

const CLASSES = ['5', '10A', '10', '20', '30'] as const;

const noClass = ({ input }: { readonly input?: unknown }) => {
  const expected = `one of ${CLASSES.map((one) => `\`${one}\``).join(', ')}`;
  if (typeof input !== 'string' && typeof input !== 'number') return packTypeFault(input, expected);
  return packFault('unknownWord', `${describeValue(input)} is not a trip class`, expected);
};

/** Trip class of an overload relay as a person writes it; without quotes a file says a number for all classes but 10A. */
export const tripClass = z
  .union([z.enum(CLASSES, { error: noClass }), z.literal([5, 10, 20, 30], { error: noClass })])
  .meta({ description: 'Trip class of IEC 60947-4-1: 5, 10A, 10, 20 or 30.', examples: ['10A', 10] })
  .transform((written): TripClass => (typeof written === 'string' ? written : `${written}`));

const overload = z
  .union([
    keyword(['none'], '`none`, or setting and class, such as `{ setting: 14.6 A, class: 10 }`'),
    group('The thermal overload relay in the motor lines', {
      setting: quantity(bounds.ratedCurrent, {
        about: 'Current setting, r.m.s.; the rated current of the machine if left out',
        example: '14.6 A',
      }).optional(),
      class: tripClass,
      start: word(['cold', 'warm'], {
        about: 'State at t = 0: cold, or warm as after long running at the setting',
        default: 'cold',
      }).optional(),
      memory: word(['kept', 'lost'], {
        about: 'Whether its thermal memory outlasts a loss of the supply',
        default: 'kept',
      }).optional(),
    }),
  ])
  .meta({
    description:
      'The overload relay, whose trip drops both coils: setting and class; or none: its contact stands in the circuit, its heating is not simulated.',
    examples: [{ setting: '14.6 A', class: 10 }, 'none'],
    default: 'none',
  });

/** The control circuit as a person writes it. */
export const controlInput = group(
  'The control circuit that drives the coils; the actions are then buttons pressed and released, and the dead time is what comes out. Without it the actions move the coils themselves',
  {
    scheme: word(SCHEME_WORDS, {
      about:
        'What the circuit does. reversing through stop: the contacts of each contactor bar the other; reversing directly: each button drops the other contactor; plug to stop: one direction, a stop brakes with the opposite contactor until the zero-speed switch opens; plug to stop both directions: the same either way; anti-plugging: a direction is barred while the machine turns the other way; inching: runs while the button is held, then brakes',
    }),
    memoryRelay: yesNo({
      about: 'Braking needs a relay that remembers that a contactor has driven the machine',
      default: 'no',
    }).optional(),
    readyRelay: yesNo({
      about: 'Starting needs a relay that the reset button sets and that drops with the supply',
      default: 'no',
    }).optional(),
    emergencyStop: emergencyStop.optional(),
    changeoverTimer: quantity(bounds.changeover, {
      about: 'A contactor is energised only when the other one has been out for this long',
      example: '100 ms',
      default: '0 ms',
    }).optional(),
    mechanicalInterlock: yesNo({
      about: 'While one contactor is in the other cannot move',
      default: 'yes',
    }).optional(),
    relayTime: quantity(bounds.relayTime, {
      about: 'Auxiliary relays, coil energised or released to contacts moved',
      example: '10 ms',
      default: `${defaultRelayTime * 1e3} ms`,
    }).optional(),
    scanTime: quantity(bounds.scanTime, {
      about: 'A program reads its inputs and writes its outputs once in this time; 0: wired',
      example: '10 ms',
      default: '0 ms',
    }).optional(),
    coilVoltage: coilVoltage.optional(),
    overload: overload.optional(),
  },
);
