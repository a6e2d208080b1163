import { csvText } from '../../recording/csvText.ts';
import { asciiText } from '../asciiText.ts';
import { cleanText } from '../plainText.ts';
import { type AnswerSheet, foreignAnswers } from './answerSheet.ts';

/** What stands in each column. */
const HEAD = ['part', 'item', 'student', 'run', 'comparison'] as const;

/**
 * The answer sheet as RFC 4180 text, a line for every question, reading and answer. Our own symbols are written in ASCII; a field that a
 * spreadsheet would take for a formula begins with an apostrophe.
 */
export function renderAnswerSheetCsv(sheet: AnswerSheet): string {
  const { fault } = sheet;
  const rows: (readonly string[])[] = [
    HEAD,
    ['sheet', 'scenario', '', sheet.title, ''],
    ['sheet', 'fingerprint of the scenario (SHA-256)', '', sheet.fingerprint, ''],
    ...foreignAnswers(sheet).map(({ fingerprint, names }) => [
      'sheet',
      `fingerprint of another scenario (SHA-256), revealed from it: ${names.join(', ')}`,
      '',
      fingerprint,
      '',
    ]),
    ['sheet', 'program', '', `countertorque ${sheet.version}`, ''],
    ['sheet', 'name', sheet.student, '', ''],
    ['sheet', 'date', '', '', ''],
    ...sheet.questions.map(({ sentence, prediction, actual, comparison }) => [
      'question',
      sentence,
      prediction,
      actual,
      comparison,
    ]),
    ...sheet.readings.map(({ instant, label, text }) => ['reading', `${instant}: ${label}`, '', text, '']),
    ...(fault === null
      ? []
      : [
          ['fault', 'what is wrong', fault.answer, fault.truth, fault.comparison],
          ['fault', 'where', fault.where, '', ''],
        ]),
  ];
  return rows
    .map((row) => `${row.map((field) => csvText(asciiText(cleanText(field)))).join(',')}\r\n`)
    .join('');
}
