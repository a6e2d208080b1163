import { z } from 'zod';
import { BUTTON_WORDS, COMMAND_WORDS } from './actionWords.ts';
import { bounds } from './bounds.ts';
import { defaultMaxSteps, defaultPress, defaultRelativeTolerance } from './defaults.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, pureNumber, quantity, word } from './field.ts';
import { INITIAL_WORDS } from './initialStates.ts';
import { mostActions } from './limits.ts';
import { timeOrWord } from './timeOrWord.ts';

/** The initial state as a person writes it. */
export const initialInput = word(INITIAL_WORDS, {
  about: 'State at t = 0: at rest without flux, or running in the steady state that circuit and load give',
  default: 'rest',
});

const action = group('One command, or one button where there is a control circuit', {
  at: quantity(bounds.instant, { about: 'When', example: '1.5 s' }),
  do: word([...COMMAND_WORDS, ...BUTTON_WORDS], {
    about:
      'Without control under starter a command: start forward, start reverse: energise that contactor; plug: energise the opposite one until the zero-speed switch opens; coast (or stop): drop both. With it a button: press (let go a moment later), hold (until released), release; an emergency stop stays until released; trip overload: its test button',
  }),
  for: quantity(bounds.press, {
    about: 'How long a pressed button is held down, with press only',
    example: '0.5 s',
    default: `${defaultPress} s`,
  }).optional(),
});

/** The actions as a person writes them. */
export const actionsInput = z
  .array(action, {
    error: ({ input }) => packTypeFault(input, 'a list such as `[{ at: 0 s, do: start forward }]`'),
  })
  .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'at least one action') })
  .max(mostActions, {
    error: () => packFault('outOfRange', 'the list is too long', `at most ${mostActions} actions`),
  })
  .meta({
    description: 'What is done and when, in ascending order of time.',
    examples: [
      [
        { at: '0 s', do: 'start forward' },
        { at: '1.5 s', do: 'plug' },
      ],
    ],
  });

/** The solver settings as a person writes them. */
export const solverInput = group('How the run is integrated', {
  relativeTolerance: pureNumber(
    { min: 1e-12, max: 1e-3 },
    {
      about: 'Relative tolerance of the integration',
      example: `${defaultRelativeTolerance}`,
      default: `${defaultRelativeTolerance}`,
    },
  ).optional(),
  endTime: timeOrWord('auto', {
    about: 'auto: until the last action has done its work; or a time with its unit, above 0 to one hour.',
    example: '5 s',
    bounds: bounds.endTime,
  }).optional(),
  maxSteps: pureNumber(
    { min: 100, max: 1e8, integer: true },
    {
      about: 'Most integration steps in one run before it ends with the status stepLimit',
      example: `${defaultMaxSteps}`,
      default: `${defaultMaxSteps}`,
    },
  ).optional(),
  frame: word(['auto', 'stationary'], {
    about: 'auto: the reference frame that suits the conducting poles; stationary: for cross-checks',
    default: 'auto',
  }).optional(),
});
