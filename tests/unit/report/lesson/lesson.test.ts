import { describe, expect, it } from 'vitest';
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
    const seen = withRevealed(second, ['peakCurrent']);
    expect(withGuess(seen, 'peakCurrent', guess(3))).toBe(seen);
    expect(withGuess(seen, 'peakCurrent', null)).toBe(seen);
    expect(withGuess(seen, 'stopTime', guess(3)).predictions.stopTime).toEqual(guess(3));
  });

  it('is made for questions of the lesson alone', () => {
    expect(withGuess(predict, 'revolutions', guess(1))).toBe(predict);
    expect(withRevealed(predict, ['revolutions']).revealed).toEqual([]);
  });
});

describe('the run is covered', () => {
  it('until every question is revealed, whatever the order', () => {
    expect(isCovered(null)).toBe(false);
    expect(isCovered(predict)).toBe(true);
    expect(isCovered(withRevealed(predict, ['stopTime']))).toBe(true);
    expect(isCovered(withRevealed(withRevealed(predict, ['stopTime']), ['peakCurrent']))).toBe(false);
    expect(isCovered(withRevealed(predict))).toBe(false);
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
  const begun = withRevealed(withGuess(withStudent(predict, 'N. N.'), 'peakCurrent', guess(1)));

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
