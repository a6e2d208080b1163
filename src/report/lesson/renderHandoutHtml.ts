import { CAUTIONS } from '../cautions.ts';
import { cutToWidth } from '../displayWidth.ts';
import type { FigureSpec } from '../figureSpec.ts';
import { htmlHead } from '../htmlHead.ts';
import { keyNumberList } from '../keyNumberList.ts';
import type { KeyNumber } from '../keyNumbers.ts';
import type { RunView } from '../live/runView.ts';
import { groupedTable, list, paragraph, table } from '../markup.ts';
import { cleanText, escapeMarkup } from '../plainText.ts';
import { renderSvg } from '../renderSvg.ts';
import { reportStyle } from '../reportStyle.ts';
import { answersOf } from './answers.ts';
import { concealed } from './concealed.ts';
import { FAULT_CHOICES, faultsInWords } from './faultChoices.ts';
import { givenRows } from './givenRows.ts';
import { emptyAxes, enlargedFigure, printedFigure } from './handoutFigures.ts';
import { unhide } from './hiddenFault.ts';
import type { Lesson } from './lesson.ts';
import { blanks, lessonStyle } from './lessonStyle.ts';
import { CHANGE_OVER_CHOICES, QUESTIONS, type QuestionKey } from './question.ts';
import { guessExample } from './readGuess.ts';

/** What a handout is made of. */
export interface HandoutSource {
  /** Not concealed: the second sheet tells what is wrong. */
  readonly view: RunView;
  readonly lesson: Pick<Lesson, 'mode' | 'questions' | 'hidden'>;
  /** Of the program. */
  readonly version: string;
}

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 60;
/** Height of the figures' panels, share: one page holds the run, another the enlarged stretch and the plane. */
const TIME_SCALE = 0.9;
const ENLARGED_SCALE = 0.72;
const PLANE_SCALE = 0.72;
/** Axes to sketch on: a page for the run, half a page for each of the others. */
const SKETCH_TIME_SCALE = 1.5;
const SKETCH_SCALE = 1.05;
/** Lines to write on, less than a page of Letter. */
const NOTE_LINES = 30;

/**
 * A handout as one HTML file that needs nothing else: on the first sheet the question, the data and empty axes to sketch on; on the second,
 * which begins on a leaf of its own also where both sides are printed, the answers with the same figures.
 */
export function renderHandoutHtml(source: HandoutSource): string {
  const { view, version } = source;
  const program = `countertorque ${version}`;
  const { title } = view.scenario;
  const footer = `${cutToWidth(cleanText(title), FOOTER_TITLE)} · handout · ${program}`;
  return `${htmlHead({ title: `${title}: handout`, program, style: reportStyle(footer) + lessonStyle() })}
<body>
<main>
${questionSheet(source)}
${answersSheet(source)}
</main>
</body>
</html>
`;
}

function questionSheet({ view, lesson }: HandoutSource): string {
  const shown = lesson.mode === 'hiddenFault' ? concealed(view) : view;
  const { title, description } = shown.scenario;
  const enlarged = enlargedFigure(shown);
  return `<section class="questions">
<p class="kind">Handout, first sheet: questions</p>
<h1>${escapeMarkup(title)}</h1>
${blanks([
  ['Name', ''],
  ['Date', ''],
])}
${description === '' ? '' : paragraph(description, 'muted')}
${paragraph(mainQuestion(lesson), 'finding')}
<h2>Given</h2>
${list(givenRows(shown, lesson.mode === 'hiddenFault').map(({ label, value }) => `${label}: ${value}`)).replace('<ul>', '<ul class="given">')}
<h2>Questions</h2>
<ol class="asked">${asked({ view: shown, lesson })}</ol>
<div class="axes">
${figure(emptyAxes(printedFigure(shown.time), 'Sketch what you expect over the whole run'), SKETCH_TIME_SCALE, 'page')}
</div>
<div class="axes">
${enlarged === null ? '' : figure(emptyAxes(enlarged, 'Sketch the first milliseconds after the contactor closes'), SKETCH_SCALE, 'half')}
${figure(emptyAxes(shown.plane, 'Sketch the path of the machine in the torque–speed plane'), SKETCH_SCALE, 'half')}
</div>
${notes()}
</section>`;
}

/**
 * A page to reckon on before the answers. Not every browser begins a section on a right-hand page; printed on both sides, this page is
 * then either the back of the last axes or the front of the answers, so that no leaf holds questions and answers.
 */
function notes(): string {
  return `<div class="notes">
<h2>Reckoning and notes</h2>
${'<span class="line"></span>'.repeat(NOTE_LINES)}
</div>`;
}

function mainQuestion({ mode }: HandoutSource['lesson']): string {
  return mode === 'hiddenFault'
    ? 'Something may be wrong with this starter. Take readings, and name what it is and where.'
    : 'What will this machine do? Answer before you see the run, and sketch the curves you expect on the axes.';
}

function asked({ view, lesson }: Pick<HandoutSource, 'view' | 'lesson'>): string {
  const answers = answersOf(view);
  const items = lesson.questions
    .filter((key) => answers.has(key))
    .map((key) => `<li>${escapeMarkup(QUESTIONS[key].sentence)}${space(key, view)}</li>`);
  const fault = `<li>What is wrong, if anything?<ul class="choices">${Object.values(FAULT_CHOICES)
    .map((words) => `<li>${escapeMarkup(words)}</li>`)
    .join(
      '',
    )}</ul>Where, and which readings show it?<span class="line"></span><span class="line"></span></li>`;
  return [...items, ...(lesson.mode === 'hiddenFault' ? [fault] : [])].join('\n');
}

function space(key: QuestionKey, { units }: RunView): string {
  if (QUESTIONS[key].kind === 'choice')
    return `<ul class="choices">${Object.values(CHANGE_OVER_CHOICES)
      .map((words) => `<li>${escapeMarkup(words)}</li>`)
      .join('')}</ul>`;
  return ` <span class="muted">(${escapeMarkup(guessExample(QUESTIONS[key], units))})</span><span class="line"></span>`;
}

function answersSheet({ view, lesson }: HandoutSource): string {
  const faults = lesson.hidden === null ? null : unhide(lesson.hidden);
  const enlarged = enlargedFigure(view);
  return `<section class="answers">
<p class="kind">Handout, second sheet: answers</p>
<h1>${escapeMarkup(view.scenario.title)}</h1>
${view.alarms.map((text) => paragraph(text, view.usable ? 'note' : 'alarm')).join('\n')}
${paragraph(view.finding, 'finding')}
${lesson.mode === 'hiddenFault' && faults !== null ? paragraph(`What is wrong: ${faultsInWords(faults)}.`, 'note') : ''}
${keyNumberList(asAsked(view))}
${paragraph(CAUTIONS.join(' '), 'cautions')}
${answersTable(view, lesson.questions)}
${figure({ ...view.plane, note: '' }, PLANE_SCALE, 'flat')}
<div class="axes">
${figure(printedFigure(view.time), TIME_SCALE, 'tall')}
</div>
${enlarged === null ? '' : figure(enlarged, ENLARGED_SCALE, 'half')}
${numbersTable(view)}
</section>`;
}

/** The numbers that matter most, rotor heat as the multiple that is asked for. */
function asAsked(view: RunView): readonly KeyNumber[] {
  const heat = answersOf(view).get('rotorHeat');
  return view.keyNumbers.map((number) => {
    if (heat === undefined || !/RotorHeat$|HeatRatio$/u.test(number.key ?? '')) return number;
    // A range would be that of the other multiple.
    const { range: _, ...rest } = number;
    return { ...rest, value: heat.text, detail: `${number.value}; ${number.detail}` };
  });
}

function answersTable(view: RunView, questions: readonly QuestionKey[]): string {
  const answers = answersOf(view);
  const own = questions.map((key) => answers.get(key)).filter((answer) => answer !== undefined);
  if (own.length === 0) return '';
  return table({
    caption: 'Answers to the questions',
    head: ['Question', 'Answer', 'Circumstances', 'What was measured'].map((text) => ({ text })),
    rows: own.map(({ question, text, detail, definition }) => [
      { text: question.name },
      { text },
      { text: detail },
      { text: definition },
    ]),
  });
}

function numbersTable({ numbers }: RunView): string {
  const groups = numbers
    .map(({ title, rows }) => ({ title, rows: rows.filter(({ value }) => value !== null) }))
    .filter(({ rows }) => rows.length > 0)
    .map(({ title, rows }) => ({
      title,
      rows: rows.map(({ label, text, detail, definition }) => [
        { text: label },
        { text, className: 'number' as const },
        { text: detail, className: 'words' as const },
        { text: definition },
      ]),
    }));
  return groupedTable({
    caption: 'All numbers of the run with their definitions',
    head: [
      { text: 'Number' },
      { text: 'Value', className: 'number' },
      { text: 'Circumstances' },
      { text: 'Definition' },
    ],
    groups,
  });
}

function figure(spec: FigureSpec, heightScale: number, className: string): string {
  return `<figure class="${className}">${renderSvg(spec, { theme: 'css', heightScale })}</figure>`;
}
