import type { CommissioningSheet } from '../survey/commissioning/commissioningSheet.ts';
import { cutToWidth } from './displayWidth.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { htmlHead } from './htmlHead.ts';
import { list, paragraph } from './markup.ts';
import { cleanText, escapeMarkup } from './plainText.ts';
import { GROUP_TITLES, SHEET_COLUMNS, type SheetLine, type SheetRowText, sheetRowText } from './sheetRow.ts';
import { sheetStyle } from './sheetStyle.ts';
import {
  plateLines,
  READING_DEFINITIONS,
  reservations,
  SHEET_CAUTIONS,
  summarySentences,
} from './sheetSummary.ts';

/** How the sheet is written. */
export interface SheetOptions {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
}

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 90;

/** The commissioning sheet as one HTML file that needs nothing else: to be printed on A4, across, and filled in by hand. */
export function renderSheetHtml(sheet: CommissioningSheet, options: SheetOptions): string {
  const { scenario, rows } = sheet;
  const title = escapeMarkup(scenario.title);
  const version = `countertorque ${options.version}`;
  const footer = `${cutToWidth(cleanText(scenario.title), FOOTER_TITLE)} · commissioning sheet · ${version}`;
  return `${htmlHead({ title: `${scenario.title}: commissioning sheet`, program: version, style: sheetStyle(footer) })}
<body>
<header>
<p class="kind">Commissioning sheet</p>
<h1>${title}</h1>
${plateLines(sheet, options.units)
  .map((line) => paragraph(line, 'plate'))
  .join('\n')}
<dl class="blanks">${BLANKS.map((blank) => `<div><dt>${blank}</dt><dd></dd></div>`).join('')}</dl>
</header>
<main>
<section class="cautions"><h2>Before anything is touched</h2>${list(SHEET_CAUTIONS)}</section>
${summarySentences(rows)
  .map((text, k) => paragraph(text, k === 0 ? 'finding' : 'finding more'))
  .join('\n')}
${tests(sheet, options.units)}
<section class="definitions"><h2>What the readings mean</h2>${list([...READING_DEFINITIONS, ...reservations(sheet, options.units)])}</section>
</main>
</body>
</html>
`;
}

/** To be filled in. */
const BLANKS: readonly string[] = ['Date', 'Tested by', 'Clamp meter, CT or Hall', 'Tachometer', 'Signature'];

function tests({ rows }: CommissioningSheet, units: UnitSystem): string {
  const head = SHEET_COLUMNS.map(
    ({ key, head: words }) => `<th scope="col" class="${key}">${headLines(words)}</th>`,
  );
  const groups = [...new Set(rows.map((row) => row.test.group))].map((group) => {
    const own = rows.filter((row) => row.test.group === group);
    const title = escapeMarkup(GROUP_TITLES[group]);
    return `<tbody>
<tr class="group"><th scope="rowgroup" colspan="${SHEET_COLUMNS.length}">${title}</th></tr>
${own.map((row) => tableRow(sheetRowText(row, units), rowClass(row))).join('\n')}
</tbody>`;
  });
  return `<div class="scroll" role="region" tabindex="0" aria-label="Tests"><table>
<thead><tr>${head.join('')}</tr></thead>
${groups.join('\n')}
</table></div>`;
}

/** Heads do not wrap by themselves: what is read on one line, its unit on the next. */
function headLines(words: string): string {
  return escapeMarkup(words).replace(', ', ', <br>');
}

/** Nobody measures what is done in thought. */
function rowClass({ verdict, test }: CommissioningSheet['rows'][number]): string {
  return test.group === 'faults' ? `${verdict.kind} thought` : verdict.kind;
}

function tableRow(text: SheetRowText, className: string): string {
  const cells = SHEET_COLUMNS.map(({ key }) =>
    key === 'test'
      ? `<th scope="row" class="test">${lines(text[key])}</th>`
      : `<td class="${key}">${lines(text[key])}</td>`,
  );
  return `<tr class="${className}">${cells.join('')}</tr>`;
}

function lines(cell: readonly SheetLine[]): string {
  return cell
    .map(({ text, kind }) => `<p${kind === undefined ? '' : ` class="${kind}"`}>${unbroken(text)}</p>`)
    .join('');
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return escapeMarkup(text).replace(/(\d) (ms|s|A|r\/min)(?![\w/])/gu, '$1\u00A0$2');
}
