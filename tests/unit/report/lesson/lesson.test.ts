import { describe, expect, it } from 'vitest';
import type { UnitSystem } from '../../../../src/report/formatQuantity.ts';
import { hide } from '../../../../src/report/lesson/hiddenFault.ts';
import {
  isConcealing,
  isCovered,
  type Lesson,
  MOST_READINGS,
  newLesson,
  unbegun,
  withFaultAnswer,
  withFaultRevealed,
  withGuess,
  withoutReading,
  withReading,
  withRevealed,
  withStudent,
} from '../../../../src/report/lesson/lesson.ts';
import { readLesson } from '../../../../src/report/lesson/readLesson.ts';
import type { RevealedRun } from '../../../../src/report/lesson/seenAnswer.ts';

/** A run whose only numbers are a peak and a time. */
const runWith = (peak: number, time: number, text: string, units: UnitSystem = 'SI'): RevealedRun => ({
  title: 'Saw',
  text,
  units,
  numbers: [
    {
      title: '',
      rows: (
        [
          ['startPeakCurrent', peak, `${peak} A`],
          ['stopTimeFromParting', time, `${time} s`],
        ] as const
      ).map(([key, value, shown]) => ({
        key,
        label: '',
        text: shown,
        value,
        detail: `of ${text}`,
        definition: '',
      })),
    },
  ],
});
const RUN = runWith(200, 0.5, 'first');
const OTHER = runWith(100, 0.1, 'second', 'us');
const predict = newLesson('predict', ['peakCurrent', 'stopTime'], null);
const hunt = newLesson('hiddenFault', [], hide([{ kind: 'overloadNeverTrips' }]));
const guess = (value: number) => ({ text: String(value), value });
const reading = (t: number) => ({ t, rows: [] });

describe('a prediction', () => {
  it('can be changed and taken back until its answer is revealed, and not afterwards', () => {
    const first = withGuess(predict, 'peakCurrent', guess(1));
    const second = withGuess(first, 'peakCurrent', guess(2));
    expect(second.predictions).toEqual({ peakCurrent: guess(2) });
    expect(withGuess(second, 'peakCurrent', null).predictions).toEqual({});
    const seen = withRevealed(second, RUN, ['peakCurrent']);
    expect(withGuess(seen, 'peakCurrent', guess(3))).toBe(seen);
    expect(withGuess(seen, 'peakCurrent', null)).toBe(seen);
    expect(withGuess(seen, 'stopTime', guess(3)).predictions.stopTime).toEqual(guess(3));
  });

  it('is made for questions of the lesson alone', () => {
    expect(withGuess(predict, 'revolutions', guess(1))).toBe(predict);
    expect(withRevealed(predict, RUN, ['revolutions']).revealed).toEqual([]);
  });
});

describe('a revealed answer', () => {
  const guessed = withGuess(predict, 'peakCurrent', guess(180));
  const first = withRevealed(guessed, RUN, ['peakCurrent']);

  it('stays what it was, with its unit, its comparison and its scenario, whatever is revealed from another run', () => {
    expect(first.seen.peakCurrent).toMatchObject({
      prediction: '180 A crest',
      value: 200,
      text: '200 A crest',
      detail: 'of first',
      comparison: 'within 10 %',
    });
    const both = withRevealed(first, OTHER);
    expect(both.seen.peakCurrent).toBe(first.seen.peakCurrent);
    expect(both.seen.stopTime).toMatchObject({ value: 0.1, detail: 'of second', comparison: '' });
    expect(both.seen.stopTime?.of.fingerprint).not.toBe(both.seen.peakCurrent?.of.fingerprint);
    expect(withRevealed(both, RUN)).toBe(both);
  });

  it('is there for what was revealed and for nothing else', () => {
    expect(Object.keys(first.seen)).toEqual(['peakCurrent']);
    expect(Object.keys(withRevealed(guessed, RUN).seen)).toEqual(['peakCurrent', 'stopTime']);
  });

  it('of a run that has none says so', () => {
    const none = withRevealed(guessed, { ...RUN, numbers: [] }).seen.peakCurrent;
    expect(none).toMatchObject({ value: null, text: 'not in this run', comparison: '' });
  });
});

describe('the run is covered', () => {
  it('until every question is revealed, whatever the order', () => {
    expect(isCovered(null)).toBe(false);
    expect(isCovered(predict)).toBe(true);
    expect(isCovered(withRevealed(predict, RUN, ['stopTime']))).toBe(true);
    expect(isCovered(withRevealed(withRevealed(predict, RUN, ['stopTime']), RUN, ['peakCurrent']))).toBe(
      false,
    );
    expect(isCovered(withRevealed(predict, RUN))).toBe(false);
  });

  it('not in a lesson without questions, whose fault stays concealed until it is revealed', () => {
    expect(isCovered(hunt)).toBe(false);
    expect(isConcealing(hunt)).toBe(true);
    expect(isConcealing(withFaultRevealed(hunt))).toBe(false);
    expect(isConcealing(predict)).toBe(false);
    expect(withFaultRevealed(predict)).toBe(predict);
  });
});

describe('readings and the answer about the fault', () => {
  it('are gathered in order, the oldest goes first, and one can be struck', () => {
    let lesson = hunt;
    for (let t = 0; t < MOST_READINGS + 2; t += 1) lesson = withReading(lesson, reading(t));
    expect(lesson.readings).toHaveLength(MOST_READINGS);
    expect(lesson.readings[0]?.t).toBe(2);
    expect(withoutReading(lesson, 0).readings[0]?.t).toBe(3);
  });

  it('are locked once the truth is seen', () => {
    const answered = withFaultAnswer(withReading(hunt, reading(1)), { kind: 'none', where: '' });
    const seen = withFaultRevealed(answered);
    expect(withFaultAnswer(seen, { kind: 'lostPhase', where: 'B' })).toBe(seen);
    expect(withReading(seen, reading(2))).toBe(seen);
    expect(withoutReading(seen, 0)).toBe(seen);
  });
});

describe('a lesson as data', () => {
  const begun = withRevealed(withGuess(withStudent(predict, 'N. N.'), 'peakCurrent', guess(1)), RUN);

  it('survives JSON unchanged', () => {
    expect(JSON.parse(JSON.stringify(begun))).toEqual(begun);
  });

  it('goes into a link without anything of the student', () => {
    expect(unbegun(begun)).toEqual(predict);
    expect(readLesson(JSON.parse(JSON.stringify(unbegun(hunt))))).toEqual(hunt);
  });

  it.each<[string, unknown]>([
    ['nothing', null],
    ['an unknown mode', { ...predict, mode: 'exam' }],
    ['an unknown question', { ...predict, questions: ['toString'] }],
    ['questions that are no list', { ...predict, questions: 'peakCurrent' }],
    ['a hidden fault in a lesson of predictions', { ...predict, hidden: hunt.hidden }],
    ['a hunt without a fault', { ...hunt, hidden: null }],
    ['a damaged fault', { ...hunt, hidden: `${hunt.hidden}A` }],
  ])('with %s is none', (_, value) => {
    expect(readLesson(value)).toBeNull();
  });

  it('from a link never comes revealed, answered or with readings', () => {
    const forged: Lesson = { ...begun, readings: [reading(1)], faultRevealed: true };
    expect(readLesson(JSON.parse(JSON.stringify(forged)))).toEqual(predict);
  });
});
