import { cutToWidth } from '../displayWidth.ts';
import { htmlHead } from '../htmlHead.ts';
import { paragraph, table } from '../markup.ts';
import { cleanText, escapeMarkup } from '../plainText.ts';
import { reportStyle } from '../reportStyle.ts';
import { type AnswerSheet, foreignAnswers, type SheetReading } from './answerSheet.ts';
import { blanks, lessonStyle } from './lessonStyle.ts';

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 60;

/** The answer sheet as one HTML file that needs nothing else and prints on A4 or Letter. */
export function renderAnswerSheetHtml(sheet: AnswerSheet): string {
  const program = `countertorque ${sheet.version}`;
  const footer = `${cutToWidth(cleanText(sheet.title), FOOTER_TITLE)} · answer sheet · ${program}`;
  return `${htmlHead({ title: `${sheet.title}: answer sheet`, program, style: reportStyle(footer) + lessonStyle() })}
<body>
<header>
<p class="kind">Answer sheet</p>
<h1>${escapeMarkup(sheet.title)}</h1>
${blanks([
  ['Name', sheet.student],
  ['Date', ''],
  ['Class', ''],
])}
</header>
<main>
${questions(sheet)}
${readings(sheet.readings)}
${fault(sheet)}
<h2>About this sheet</h2>
${paragraph(`Fingerprint of the scenario's text (SHA-256, base64): ${sheet.fingerprint}`, 'muted')}
${foreignAnswers(sheet)
  .map(({ fingerprint, names }) =>
    paragraph(`Revealed from another scenario, fingerprint ${fingerprint}: ${names.join(', ')}.`, 'note'),
  )
  .join('\n')}
${paragraph(sheet.cautions.join(' '), 'cautions')}
</main>
</body>
</html>
`;
}

function questions(sheet: AnswerSheet): string {
  if (sheet.questions.length === 0) return '';
  return `<h2>Predictions</h2>${table({
    caption: 'What was expected and what the run gives',
    head: ['Question', 'Prediction', 'The run', 'Comparison'].map((text) => ({ text })),
    rows: sheet.questions.map(({ name, prediction, actual, comparison }) => [
      { text: name },
      { text: prediction === '' ? 'none' : prediction, className: 'wide-word' as const },
      { text: actual === '' ? 'not revealed' : actual },
      { text: comparison },
    ]),
  })}`;
}

/** A column for every instant; every reading has the same rows. */
function readings(list: readonly SheetReading[]): string {
  if (list.length === 0) return '';
  const instants = [...new Set(list.map(({ instant }) => instant))];
  const labels = [...new Set(list.map(({ label }) => label))];
  return `<h2>Readings</h2>${table({
    caption: 'What instruments and eyes showed',
    head: ['Reading', ...instants].map((text) => ({ text })),
    rows: labels.map((label) => [
      { text: label },
      ...instants.map((instant) => ({
        text: list.find((reading) => reading.label === label && reading.instant === instant)?.text ?? '',
      })),
    ]),
  })}`;
}

function fault({ fault: found }: AnswerSheet): string {
  if (found === null) return '';
  return `<h2>What is wrong</h2>${table({
    caption: 'The answer and the truth',
    head: ['', 'In words'].map((text) => ({ text })),
    rows: [
      [{ text: 'Answer' }, { text: found.answer === '' ? 'none' : found.answer }],
      [{ text: 'Where' }, { text: found.where, className: 'wide-word' }],
      [{ text: 'Truth' }, { text: found.truth === '' ? 'not revealed' : found.truth }],
      [{ text: 'Comparison' }, { text: found.comparison }],
    ],
  })}`;
}
