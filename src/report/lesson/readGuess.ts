import { displayUnit, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import type { FilmBase } from '../live/film.ts';
import { CHANGE_OVER_CHOICES, type ChangeOverChoice, isChangeOverChoice, type Question } from './question.ts';

/** A guess that could be read: SI, or a choice. Or what is wrong with it. */
export type Guess =
  | { readonly kind: 'value'; readonly value: number | ChangeOverChoice }
  | { readonly kind: 'unreadable'; readonly message: string };

/** In what a bare number is meant, and what multiples of rated refer to. */
export interface GuessContext {
  readonly units: UnitSystem;
  /** Of the run's film: crest of the rated current, A, and rated torque in displayed units. */
  readonly base: Pick<FilmBase, 'currentCrest' | 'torque'>;
}

/** Longest text that is looked at, characters. */
const LONGEST = 80;
/** Sign; digits with or without groups; decimals after point or comma; power of ten; the rest is the unit. */
const NUMBER =
  /^([+\-−–]?)\s*(\d{1,3}(?:[ \u00A0\u202F]\d{3})+|\d+)?(?:([.,])(\d+))?(?:[eE]([+-]?\d{1,3}))?\s*(.*)$/su;
const MULTIPLE =
  /^(?:[x×*]|times|pu|p\.u\.)\s*(?:of\s+)?(?:the\s+)?(?:rated|nominal)?(?:\s+(?:current|torque|crest|value))*$|^rated$/u;

/** Seconds in a minute. */
const MINUTE = 60;

/** Units that are understood, by SI unit: name in lower case without spaces, dots and hyphens → SI value of one. */
const UNITS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  A: {
    a: 1,
    amp: 1,
    amps: 1,
    ampere: 1,
    amperes: 1,
    acrest: 1,
    apeak: 1,
    ka: 1e3,
    kacrest: 1e3,
    kapeak: 1e3,
  },
  s: { s: 1, sec: 1, second: 1, seconds: 1, ms: 1e-3, min: MINUTE, minutes: MINUTE },
};
const NEWTON_METRES: Readonly<Record<string, number>> = { nm: 1, knm: 1e3 };
const POUND_FEET = ['lbfft', 'lbft', 'ftlbf', 'ftlb'];
/** Words that say nothing new after a ratio or a count. */
const RATIO_WORDS = /^(?:[x×]|times)?\s*(?:the\s+)?(?:kinetic energy)?$/u;
const COUNT_WORDS = /^(?:r|rev|revs|revolutions?|turns?)?$/u;

/** Reads what a person guesses: "300", "300 A", "−1.2 kN·m", "20 x rated", "0,4 s". A bare number is in the unit the page shows. */
export function readGuess(text: string, question: Question, context: GuessContext): Guess {
  if (question.kind === 'choice')
    return isChangeOverChoice(text)
      ? { kind: 'value', value: text }
      : { kind: 'unreadable', message: 'Choose one of the answers.' };
  const parts = NUMBER.exec(text.trim().slice(0, LONGEST));
  const [, sign = '', whole = '', point, decimals, power = '0', rest = ''] = parts ?? [];
  if (parts === null || (whole === '' && decimals === undefined)) return unreadable(question, context);
  if (point === ',' && decimals?.length === 3 && whole !== '0' && whole !== '')
    return {
      kind: 'unreadable',
      message: `“${whole},${decimals}” can be read in two ways: write ${whole}${decimals} or ${whole}.${decimals}.`,
    };
  const digits = `${whole.replaceAll(/[ \u00A0\u202F]/gu, '') || '0'}.${decimals ?? '0'}e${power}`;
  const number = Number(digits) * (sign === '' || sign === '+' ? 1 : -1);
  const factor = siFactor(rest.trim().toLowerCase(), question, context);
  if (factor === null || !Number.isFinite(number * factor)) return unreadable(question, context, rest.trim());
  if (number < 0 && !question.signed)
    return {
      kind: 'unreadable',
      message: `This cannot be negative: expected ${guessExample(question, context.units)}.`,
    };
  return { kind: 'value', value: number * factor };
}

/** What one of the stated unit is in SI; null: it is no unit of this quantity. */
function siFactor(unit: string, question: Question, { units, base }: GuessContext): number | null {
  const torquePerSi = displayUnit('N·m', { system: units }).perSi;
  if (question.multipleOf !== null && MULTIPLE.test(unit))
    return question.multipleOf === 'ratedCrest' ? base.currentCrest : base.torque / torquePerSi;
  const compact = unit.replaceAll(/[\s.·⋅*-]/gu, '');
  if (question.unit === 'N·m') {
    if (compact === '') return 1 / torquePerSi;
    if (POUND_FEET.includes(compact)) return 1 / displayUnit('N·m', { system: 'us' }).perSi;
    return NEWTON_METRES[compact] ?? null;
  }
  if (question.unit === '1')
    return (question.after === 'rev' ? COUNT_WORDS : RATIO_WORDS).test(unit) ? 1 : null;
  return compact === '' ? 1 : (UNITS[question.unit]?.[compact] ?? null);
}

function unreadable(question: Question, context: GuessContext, unit = ''): Guess {
  const expected = `expected ${guessExample(question, context.units)}`;
  return {
    kind: 'unreadable',
    message:
      unit === '' ? `No number found: ${expected}.` : `“${unit}” is no unit of this answer: ${expected}.`,
  };
}

/** How an answer may be written: "a number such as 300 A or 5 × rated"; where the sign counts, with one of each sign. */
export function guessExample(question: Question, units: UnitSystem): string {
  const multiple = question.multipleOf === null ? '' : ` or ${question.signed ? '−' : ''}5 × rated`;
  if (question.kind === 'choice') return 'one of the answers';
  if (question.unit === '1')
    return `a number such as 2.5${question.after === '' ? '' : ` ${question.after}`}`;
  const label = displayUnit(question.unit, { system: units }).label;
  const sample = question.signed ? '+300' : question.unit === 's' ? '0.5' : '300';
  return `a number such as ${sample} ${label}${multiple}`;
}

/** A value read from a guess, as it is shown beside the answer. */
export function guessText(value: number | ChangeOverChoice, question: Question, units: UnitSystem): string {
  if (typeof value === 'string') return CHANGE_OVER_CHOICES[value];
  const text = formatQuantity(value, question.unit, { system: units });
  return question.after === '' ? text : `${text} ${question.after}`;
}
