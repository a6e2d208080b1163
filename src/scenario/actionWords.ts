import type { ActionKind, ButtonAction, ButtonName } from './scenario.ts';

/** Commands as a person writes them. */
export const COMMAND_WORDS = [
  'start forward',
  'start reverse',
  'plug',
  'coast',
  'stop',
  'apply brake',
  'inject dc',
] as const;

/** What a hand does to the control circuit, as a person writes it. */
export const BUTTON_WORDS = [
  'press forward',
  'press reverse',
  'press stop',
  'press reset',
  'hold forward',
  'hold reverse',
  'hold stop',
  'hold reset',
  'release forward',
  'release reverse',
  'release stop',
  'release reset',
  'press emergency stop',
  'release emergency stop',
  'trip overload',
  'reset overload',
] as const;

/** A command as written. */
export type CommandWord = (typeof COMMAND_WORDS)[number];

/** A button action as written. */
export type ButtonWord = (typeof BUTTON_WORDS)[number];

/** What a written command does. */
export const COMMAND_OF_WORD: Readonly<Record<CommandWord, ActionKind>> = {
  'start forward': 'startForward',
  'start reverse': 'startReverse',
  plug: 'plug',
  coast: 'coast',
  stop: 'coast',
  'apply brake': 'brake',
  'inject dc': 'injectDc',
};

/** How a command is written. */
export const WORD_OF_COMMAND: Readonly<Record<ActionKind, CommandWord>> = {
  startForward: 'start forward',
  startReverse: 'start reverse',
  plug: 'plug',
  coast: 'coast',
  brake: 'apply brake',
  injectDc: 'inject dc',
};

/** What a written button action does. */
export interface ButtonMeaning {
  readonly do: 'press' | 'release';
  readonly button: ButtonName;
  /** The hand lets go by itself after a while. */
  readonly letsGo: boolean;
}

/** What a written button action does. */
export function meaningOf(word: ButtonWord): ButtonMeaning {
  if (word === 'trip overload') return { do: 'press', button: 'overloadTest', letsGo: false };
  if (word === 'reset overload') return { do: 'press', button: 'overloadReset', letsGo: false };
  if (word === 'press emergency stop') return { do: 'press', button: 'emergencyStop', letsGo: false };
  if (word === 'release emergency stop') return { do: 'release', button: 'emergencyStop', letsGo: false };
  const [verb, button] = word.split(' ') as [
    'press' | 'hold' | 'release',
    'forward' | 'reverse' | 'stop' | 'reset',
  ];
  return { do: verb === 'release' ? 'release' : 'press', button, letsGo: verb === 'press' };
}

/** How a button action is written so that nothing is let go by itself. */
export function wordOfButton({ do: verb, button }: Pick<ButtonAction, 'do' | 'button'>): ButtonWord {
  if (button === 'overloadTest') return 'trip overload';
  if (button === 'overloadReset') return 'reset overload';
  if (button === 'emergencyStop') return `${verb} emergency stop`;
  return `${verb === 'press' ? 'hold' : 'release'} ${button}`;
}

/** True for a command, false for a button. */
export function isCommandWord(word: CommandWord | ButtonWord): word is CommandWord {
  return Object.hasOwn(COMMAND_OF_WORD, word);
}
