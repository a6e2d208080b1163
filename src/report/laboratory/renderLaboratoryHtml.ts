import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';
import { cutToWidth } from '../displayWidth.ts';
import { htmlHead } from '../htmlHead.ts';
import { blanks, lessonStyle } from '../lesson/lessonStyle.ts';
import { list, paragraph } from '../markup.ts';
import { cleanText, escapeMarkup } from '../plainText.ts';
import { reportStyle } from '../reportStyle.ts';
import { evaluationSection } from './evaluationSection.ts';
import { instructorSection } from './instructorSection.ts';
import { figuresSection } from './laboratoryFigures.ts';
import type { LaboratoryPageOptions } from './laboratoryOptions.ts';
import { laboratoryStyle } from './laboratoryStyle.ts';
import { instrumentLines, laboratoryCautions, pauseSentences, setRows } from './laboratoryText.ts';
import { stepSection } from './stepSection.ts';
import { timeSentences } from './timeText.ts';

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 60;

/**
 * The laboratory procedure as one HTML file that needs nothing else, to be printed on A4 or Letter and filled in by hand: cautions, set and
 * instruments; the steps with their readings; what the recorder should show; the evaluation; and, but for blank sheets, a part for the
 * instructor.
 */
export function renderLaboratoryHtml(sheet: LaboratorySheet, options: LaboratoryPageOptions): string {
  const { scenario } = sheet;
  const { units, blank } = options;
  const program = `countertorque ${options.version}`;
  const kind = blank ? 'laboratory procedure, predictions left out' : 'laboratory procedure';
  const footer = `${cutToWidth(cleanText(scenario.title), FOOTER_TITLE)} · ${kind} · ${program}`;
  const style = reportStyle(footer) + lessonStyle() + laboratoryStyle();
  return `${htmlHead({ title: `${scenario.title}: ${kind}`, program, style })}
<body>
<main>
<p class="kind">${kind[0]?.toUpperCase()}${kind.slice(1)}</p>
<h1>${escapeMarkup(scenario.title)}</h1>
${blanks(HEADER.map((name) => [name, ''] as const))}
${scenario.description === '' ? '' : paragraph(scenario.description, 'muted')}
<div class="danger"><h2>Before anything is touched</h2>${list(laboratoryCautions(sheet))}</div>
<h2>Pause between trials, and time</h2>
${[...pauseSentences(sheet, units), ...timeSentences(sheet, options)]
  .map((text) => paragraph(text, 'finding'))
  .join('\n')}
<h2>Instruments, and what each must reach</h2>
${list(instrumentLines(sheet, units))}
<section class="together"><h2>The set</h2>
${list(setRows(scenario, units)).replace('<ul>', '<ul class="set">')}
</section>
${sheet.leftOut.length === 0 ? '' : `<h2>Left out, and why</h2>\n${list(sheet.leftOut)}`}
${sheet.steps.map((step, k) => stepSection(step, k + 1, sheet, options)).join('\n')}
${figuresSection(options)}
${evaluationSection(sheet, options)}
${blank ? '' : instructorSection(sheet, options)}
</main>
</body>
</html>
`;
}

/** To be filled in by hand. */
const HEADER: readonly string[] = ['Group', 'Date', 'Instructor', 'Room temperature', 'Supply voltage'];
