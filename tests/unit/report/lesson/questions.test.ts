import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TORQUES } from '../../../../src/report/keyNumbers.ts';
import { answersOf } from '../../../../src/report/lesson/answers.ts';
import { judgeGuess } from '../../../../src/report/lesson/judgeGuess.ts';
import { QUESTION_KEYS, QUESTIONS, type QuestionKey } from '../../../../src/report/lesson/question.ts';
import { guessExample, guessText, readGuess } from '../../../../src/report/lesson/readGuess.ts';
import { viewWith } from './faultyViews.ts';

/** Pound-force foot, N·m, from the exact inch, pound and standard gravity. */
const LBF_FT = 0.3048 * 0.45359237 * 9.80665;
const SI = { units: 'SI', base: { currentCrest: 20, torque: 50 } } as const;
/** The same machine: 50 N·m in lbf·ft. */
const US = { units: 'us', base: { currentCrest: 20, torque: 50 / LBF_FT } } as const;

const read = (text: string, key: QuestionKey, context: typeof SI | typeof US = SI) => {
  const guess = readGuess(text, QUESTIONS[key], context);
  return guess.kind === 'value' ? guess.value : guess.message;
};

describe('a guess is read', () => {
  it.each([
    ['300', 300],
    ['300 A', 300],
    ['0.3 kA', 300],
    ['3e2A', 300],
    ['300 A crest', 300],
    ['1 200 A', 1200],
    ['15 x rated', 300],
    ['15× rated current', 300],
    ['15 × the rated crest', 300],
    ['15 times rated', 300],
    ['15 pu', 300],
    ['.5', 0.5],
    ['0,5', 0.5],
  ])('as a current: %s', (text, value) => {
    expect(read(text, 'peakCurrent')).toBeCloseTo(value as number, 9);
  });

  it.each([
    ['−120 N·m', -120, SI],
    ['-120 Nm', -120, SI],
    ['-0.12 kN m', -120, SI],
    ['-2.4 x rated', -120, SI],
    ['-2.4 x rated', -120, US],
    ['-100', -100 * LBF_FT, US],
    ['-100 lbf ft', -100 * LBF_FT, SI],
    ['-100 ft-lb', -100 * LBF_FT, SI],
    ['-120 N·m', -120, US],
  ] as const)('as a torque with its sign: %s is %d N·m', (text, value, context) => {
    expect(read(text, 'worstTorque', context)).toBeCloseTo(value, 9);
  });

  it('as a time, a multiple, a number of turns, a choice', () => {
    expect(read('400 ms', 'stopTime')).toBeCloseTo(0.4, 12);
    expect(read('0,4 s', 'stopTime')).toBeCloseTo(0.4, 12);
    expect(read('3 × kinetic energy', 'rotorHeat')).toBe(3);
    expect(read('3x', 'rotorHeat')).toBe(3);
    expect(read('8.5 rev', 'revolutions')).toBe(8.5);
    expect(read('larger', 'changeOver')).toBe('larger');
  });

  it.each([
    ['peakCurrent', 'plenty', 'No number found'],
    ['peakCurrent', '', 'No number found'],
    ['peakCurrent', '300 V', '“V” is no unit of this answer'],
    ['peakCurrent', '300 A r.m.s.', 'is no unit'],
    ['peakCurrent', '1,400', 'can be read in two ways'],
    ['stopTime', '2 x rated', 'is no unit'],
    ['worstTorque', '5 s', 'is no unit'],
    ['rotorHeat', '2 J', 'is no unit'],
    ['stopTime', '-3 s', 'cannot be negative: expected a number such as 0.5 s'],
    ['stopTime', '−3', 'cannot be negative'],
    ['peakCurrent', '-5 x rated', 'cannot be negative'],
    ['rotorHeat', '-2', 'cannot be negative'],
    ['revolutions', '-8 rev', 'cannot be negative'],
    ['peakCurrent', '1e999', 'is no unit|No number'],
    ['changeOver', 'toString', 'Choose one'],
  ] as const)('or refused with what would be right: %s %s', (key, text, words) => {
    expect(read(text, key)).toMatch(new RegExp(words, 'u'));
  });

  it('whatever is typed, without an exception and never as no number', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), fc.constantFrom(...QUESTION_KEYS), (text, key) => {
        const value = read(text, key);
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      }),
      { seed: 6 },
    );
  });

  it('back from the way it is shown', () => {
    for (const context of [SI, US])
      for (const key of ['peakCurrent', 'worstTorque', 'stopTime', 'rotorHeat', 'revolutions'] as const) {
        const value = QUESTIONS[key].signed ? -1.23 : 1.23;
        const shown = guessText(value, QUESTIONS[key], context.units);
        // Three digits are shown.
        expect(Math.abs(Number(read(shown, key, context)) / value - 1)).toBeLessThan(0.005);
      }
  });
});

describe('an example of an answer', () => {
  it('can be read, and is of one sign unless the sign counts: then of either', () => {
    for (const context of [SI, US])
      for (const key of ['peakCurrent', 'worstTorque', 'stopTime', 'rotorHeat', 'revolutions'] as const) {
        const example = guessExample(QUESTIONS[key], context.units);
        const values = example
          .replace('a number such as ', '')
          .split(' or ')
          .map((text) => Number(read(text, key, context)));
        expect(values.every(Number.isFinite), example).toBe(true);
        const signs = QUESTIONS[key].signed ? [1, -1] : [1];
        expect([...new Set(values.map(Math.sign))], example).toEqual(signs);
      }
  });
});

describe('a guess is judged in words', () => {
  const plain = { signed: false };
  it.each([
    [100, 100, 'exact'],
    [110, 100, 'within 10 %'],
    [90, 100, 'within 10 %'],
    [112, 100, '12 % too high'],
    [70, 100, '30 % too low'],
    [240, 100, '2.4 times too high'],
    [25, 100, '4 times too low'],
    [50_000, 100, '500 times too high'],
    [0, 100, 'it is not zero'],
    [5, 0, 'the answer is zero'],
    [-100, 100, 'wrong sign'],
  ])('%d for %d: %s', (guess, actual, words) => {
    expect(judgeGuess(guess, actual, plain)).toBe(words);
  });

  it('with its size too where the sign is part of the question', () => {
    expect(judgeGuess(480, -496, { signed: true })).toBe('wrong sign, its size within 10 %');
    expect(judgeGuess(-480, -496, { signed: true })).toBe('within 10 %');
    expect(judgeGuess(300, -496, { signed: true })).toBe('wrong sign, its size 40 % too small');
  });

  it('by its size alone where the sign is right: −300 is not lower than −496', () => {
    // 1 − 300/500 = 40 %; 750/500 − 1 = 50 %.
    for (const sign of [-1, 1]) {
      expect(judgeGuess(300 * sign, 500 * sign, { signed: true })).toBe('40 % too small in size');
      expect(judgeGuess(750 * sign, 500 * sign, { signed: true })).toBe('50 % too large in size');
      expect(judgeGuess(200 * sign, 500 * sign, { signed: true })).toBe('2.5 times too small in size');
    }
  });

  it('a choice is right or not', () => {
    expect(judgeGuess('larger', 'larger', plain)).toBe('right');
    expect(judgeGuess('alike', 'larger', plain)).toBe('not this one');
  });

  it('alike at any scale', () => {
    const positive = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fc.integer({ min: -8, max: 8 }), (guess, actual, power) => {
        // Powers of two scale without rounding.
        expect(judgeGuess(guess * 2 ** power, actual * 2 ** power, plain)).toBe(
          judgeGuess(guess, actual, plain),
        );
      }),
      { seed: 6 },
    );
  });
});

describe('the answers of a run', () => {
  const view = viewWith([]);
  const answers = answersOf(view);
  const value = (key: string) =>
    view.numbers.flatMap(({ rows }) => rows).find((row) => row.key === key)?.value ?? null;

  it('are its metrics, to the last bit', () => {
    expect([...answers.keys()]).toEqual(QUESTION_KEYS);
    expect(answers.get('stopTime')?.value).toBe(value('stopTimeFromParting'));
    expect(answers.get('revolutions')?.value).toBe(value('stopRevolutions'));
    expect(answers.get('rotorHeat')?.value).toBe(value('plugRotorHeatMultiple'));
    const torques = [
      'plugMinimumTorque',
      'plugMaximumTorque',
      'startMaximumTorque',
      'startMinimumTorque',
    ].map((key) => value(key) ?? 0);
    expect(Math.abs(Number(answers.get('worstTorque')?.value))).toBe(Math.max(...torques.map(Math.abs)));
    expect(answers.get('peakCurrent')?.value).toBe(
      Math.max(value('plugPeakCurrent') ?? 0, value('startPeakCurrent') ?? 0),
    );
  });

  it('come from the torques that the key numbers come from', () => {
    expect(QUESTIONS.worstTorque.answeredBy).toEqual(TORQUES);
  });

  it('state the sign of the torque, and the units the question asks for', () => {
    expect(answers.get('worstTorque')?.text).toMatch(/^−\d+ N·m$/u);
    expect(answers.get('peakCurrent')?.text).toMatch(/ A crest$/u);
    expect(answers.get('rotorHeat')?.text).toMatch(/ × kinetic energy$/u);
    expect(answers.get('revolutions')?.text).toMatch(/\d rev$/u);
  });

  it('are left out with the metric: a run without plugging is asked for current and torque alone', () => {
    const started = answersOf(viewWith([{ kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' }]));
    expect([...started.keys()]).toEqual(['peakCurrent', 'worstTorque']);
  });

  it.each([
    [0.01, 150, 100, 'larger'],
    [0.01, 105, 100, 'alike'],
    [0.01, 80, 100, 'smaller'],
    [-0.001, 150, 100, 'goesOn'],
  ] as const)('tell what the current does: gap %d s, peaks %d A and %d A: %s', (gap, plug, start, choice) => {
    const row = (key: 'extinctionToTouch' | 'plugPeakCurrent' | 'startPeakCurrent', number: number) => ({
      key,
      label: '',
      text: '',
      value: number,
      detail: '',
      definition: '',
    });
    const numbers = [
      {
        title: '',
        rows: [row('extinctionToTouch', gap), row('plugPeakCurrent', plug), row('startPeakCurrent', start)],
      },
    ];
    expect(answersOf({ numbers, units: 'SI' }).get('changeOver')?.value).toBe(choice);
  });
});
