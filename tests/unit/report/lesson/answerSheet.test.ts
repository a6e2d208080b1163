import { createHash } from 'node:crypto';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answerSheet, foreignAnswers } from '../../../../src/report/lesson/answerSheet.ts';
import { answersOf } from '../../../../src/report/lesson/answers.ts';
import { hide } from '../../../../src/report/lesson/hiddenFault.ts';
import {
  type Lesson,
  newLesson,
  withFaultAnswer,
  withFaultRevealed,
  withGuess,
  withReading,
  withRevealed,
  withStudent,
} from '../../../../src/report/lesson/lesson.ts';
import { takeReading } from '../../../../src/report/lesson/readings.ts';
import { renderAnswerSheetCsv } from '../../../../src/report/lesson/renderAnswerSheetCsv.ts';
import { renderAnswerSheetHtml } from '../../../../src/report/lesson/renderAnswerSheetHtml.ts';
import { viewWith } from './faultyViews.ts';

const view = viewWith([]);
const answers = answersOf(view);
const HOSTILE = '=HYPERLINK("x")<img src=x onerror=alert(1)>';

const TEXT = 'title: x\n';
const run = { numbers: view.numbers, units: view.units, title: view.scenario.title, text: TEXT };
const digest = (text: string) => createHash('sha256').update(text).digest('base64');

const sheetOf = (lesson: Lesson, text = TEXT) =>
  answerSheet({ title: view.scenario.title, text, lesson, units: 'SI', version: '0.0.0' });

const guessed = withGuess(
  withGuess(newLesson('predict', ['peakCurrent', 'worstTorque'], null), 'peakCurrent', {
    text: '11 x rated',
    value: 228,
  }),
  'worstTorque',
  { text: '-1.2 kN·m', value: -1200 },
);
const hunt = withFaultAnswer(
  withReading(
    newLesson('hiddenFault', [], hide([{ kind: 'lostPhase', phase: 'B', from: 1.2 }])),
    takeReading(view.film, 1),
  ),
  { kind: 'deadPole', where: 'forward, pole B' },
);

describe('before anything is revealed', () => {
  it('the sheet has the predictions and none of the answers', () => {
    const { questions } = sheetOf(guessed);
    expect(questions.map(({ prediction }) => prediction)).toEqual([
      '11 x rated (228 A crest)',
      '-1.2 kN·m (−1200 N·m)',
    ]);
    expect(questions.map(({ actual, comparison }) => actual + comparison)).toEqual(['', '']);
    for (const file of [renderAnswerSheetHtml(sheetOf(guessed)), renderAnswerSheetCsv(sheetOf(guessed))])
      for (const answer of answers.values())
        if (answer.text !== '228 A crest') expect(file).not.toContain(answer.text);
  });

  it('the sheet of a hunt does not name the fault', () => {
    expect(sheetOf(hunt).fault).toEqual({
      answer: 'A pole of a contactor is dead: it never touches',
      where: 'forward, pole B',
      truth: '',
      comparison: '',
    });
    expect(renderAnswerSheetHtml(sheetOf(hunt))).not.toContain('phase B is lost');
  });
});

describe('once revealed', () => {
  it('one question after the other is answered and compared', () => {
    const [current, torque] = sheetOf(withRevealed(guessed, run, ['worstTorque'])).questions;
    expect(current?.actual).toBe('');
    expect(torque?.actual).toContain(answers.get('worstTorque')?.text);
    expect(torque?.comparison).toMatch(/^wrong|times too large in size$/u);
  });

  it('an answer keeps its words, its unit and the fingerprint of its text, whatever runs afterwards', () => {
    const seen = withRevealed(guessed, run);
    const later = answerSheet({
      title: 'Another saw',
      text: 'title: y\n',
      lesson: seen,
      units: 'us',
      version: '0.0.0',
    });
    expect(later).toEqual(sheetOf(seen));
    expect(later.fingerprint).toBe(digest(TEXT));
    expect(foreignAnswers(later)).toEqual([]);
  });

  it('answers of another text than the sheet’s own are named with its fingerprint, in print and as CSV', () => {
    const first = withRevealed(guessed, run, ['peakCurrent']);
    const mixed = sheetOf(withRevealed(first, { ...run, text: 'title: y\n' }), 'title: y\n');
    expect(mixed.fingerprint).toBe(digest(TEXT));
    expect(foreignAnswers(mixed)).toEqual([{ fingerprint: digest('title: y\n'), names: ['Worst torque'] }]);
    for (const file of [renderAnswerSheetHtml(mixed), renderAnswerSheetCsv(mixed)])
      expect(file).toContain(digest('title: y\n'));
  });

  it('a hunt states the truth', () => {
    const { fault } = sheetOf(withFaultRevealed(hunt));
    expect(fault?.truth).toContain('supply phase B is lost');
    expect(fault?.comparison).toMatch(/^Not so: /u);
  });
});

it('before anything is revealed the fingerprint is the SHA-256 of the text that is shown', () => {
  expect(sheetOf(guessed, 'äöü').fingerprint).toBe(digest('äöü'));
});

describe('as CSV', () => {
  const hostile = { ...withStudent(guessed, HOSTILE), predictions: { ...guessed.predictions } };
  const csv = renderAnswerSheetCsv(sheetOf(hostile));
  const { data, errors } = Papa.parse<string[]>(csv, { skipEmptyLines: true });

  it('it has the same five columns in every line, ended as RFC 4180 asks', () => {
    expect(errors).toEqual([]);
    expect(new Set(data.map((row) => row.length))).toEqual(new Set([5]));
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
  });

  it('no field of it is a formula', () => {
    for (const field of data.flat()) expect(field).not.toMatch(/^[=+\-@|\t\r]/u);
    expect(data.flat()).toContain(`'${HOSTILE}`);
  });

  it('every reading has a line', () => {
    const lines = Papa.parse<string[]>(renderAnswerSheetCsv(sheetOf(hunt))).data.filter(
      ([part]) => part === 'reading',
    );
    expect(lines).toHaveLength(takeReading(view.film, 1).rows.length);
  });
});

it('as HTML it runs nothing, loads nothing and shows a name as text', () => {
  const html = renderAnswerSheetHtml(sheetOf(withStudent(guessed, HOSTILE)));
  expect(html).toContain("default-src 'none'");
  expect(html).not.toMatch(/<img|<script/u);
  expect(html).toContain('&lt;img');
});
