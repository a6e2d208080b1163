import { createHash } from 'node:crypto';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answerSheet } from '../../../../src/report/lesson/answerSheet.ts';
import { answersOf } from '../../../../src/report/lesson/answers.ts';
import { comparisonRows } from '../../../../src/report/lesson/comparisonRows.ts';
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

const sheetOf = (lesson: Lesson, text = 'title: x\n') =>
  answerSheet({ title: view.scenario.title, text, lesson, answers, units: 'SI', version: '0.0.0' });

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
    const [current, torque] = sheetOf(withRevealed(guessed, ['worstTorque'])).questions;
    expect(current?.actual).toBe('');
    expect(torque?.actual).toContain(answers.get('worstTorque')?.text);
    expect(torque?.comparison).toMatch(/times too high$/u);
    const rows = comparisonRows(withRevealed(guessed), answers, 'SI');
    expect(rows.map(({ key }) => key)).toEqual(['peakCurrent', 'worstTorque']);
    expect(rows[1]?.comparison).toBe(torque?.comparison);
  });

  it('a hunt states the truth', () => {
    const { fault } = sheetOf(withFaultRevealed(hunt));
    expect(fault?.truth).toContain('supply phase B is lost');
    expect(fault?.comparison).toMatch(/^Not so: /u);
  });
});

it('the fingerprint is the SHA-256 of the text', () => {
  expect(sheetOf(guessed, 'äöü').fingerprint).toBe(createHash('sha256').update('äöü').digest('base64'));
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
