import { escapeMarkup } from '../plainText.ts';
import { type OutcomeForm, outcomeMark } from './outcomeMark.ts';

/** A cell of a labelled table; all texts are escaped. */
export interface LabelledCell {
  readonly text: string;
  /** Smaller, on a line of its own. */
  readonly note?: string;
  readonly mark?: OutcomeForm;
  readonly number?: true;
  /** Columns it takes; 1 by default. */
  readonly span?: number;
}

/** A column of a labelled table. */
export interface LabelledColumn {
  readonly text: string;
  readonly number?: true;
  /** Share of the width, per cent; absent: as the content asks. */
  readonly width?: number;
}

/** What a labelled table consists of. */
export interface LabelledTableOptions {
  readonly caption: string;
  readonly head: readonly LabelledColumn[];
  /** The first cell of a row is its header. */
  readonly rows: readonly (readonly LabelledCell[])[];
  /** Class of the frame. */
  readonly className?: string;
}

/** A cell of more columns has no name on a narrow page. */
const MOST_NAMED = 2;
/** A table of more rows may be broken between pages. */
const LONG = 10;

/**
 * A table whose cells know the name of their column: on a narrow page every row is stacked, each value behind its name, and
 * nothing scrolls sideways.
 */
export function labelledTable({ caption, head, rows, className }: LabelledTableOptions): string {
  const title = escapeMarkup(caption);
  const columns = head
    .map(({ text, number, width }) => {
      const style = width === undefined ? '' : ` style="width:${width}%"`;
      return `<th scope="col"${number === true ? ' class="number"' : ''}${style}>${escapeMarkup(text)}</th>`;
    })
    .join('');
  const frame = ['labelled', ...(rows.length > LONG ? [] : ['whole']), ...(className ? [className] : [])];
  return `<div class="${frame.join(' ')}"><table><caption>${title}</caption><thead><tr>${columns}</tr></thead>
<tbody>
${rows.map((row) => rowMarkup(row, head)).join('\n')}
</tbody></table></div>`;
}

function rowMarkup(row: readonly LabelledCell[], head: readonly LabelledColumn[]): string {
  let column = 0;
  const cells = row.map((cell) => {
    const label = head[column]?.text ?? '';
    const first = column === 0;
    column += cell.span ?? 1;
    return cellMarkup(cell, label, first);
  });
  return `<tr>${cells.join('')}</tr>`;
}

function cellMarkup(cell: LabelledCell, label: string, first: boolean): string {
  const { text, note, mark, number, span } = cell;
  const classes = number === true ? ' class="number"' : '';
  const columns = span === undefined ? '' : ` colspan="${span}"`;
  // What takes the place of several values does not stand behind the name of the first.
  const named = (span ?? 1) <= MOST_NAMED;
  const content = [
    mark !== undefined
      ? markedMarkup(mark, text)
      : `<span>${number === true ? piecesMarkup(text) : quantitiesMarkup(text)}</span>`,
    note === undefined || note === '' ? '' : `<small>${quantitiesMarkup(note)}</small>`,
  ].join('');
  return first
    ? `<th scope="row"${columns}>${content}</th>`
    : `<td${classes}${columns}${named ? ` data-label="${escapeMarkup(label)}"` : ''}>${content}</td>`;
}

/** A value keeps its unit beside it; a range may be broken before its bracket and in its middle. */
function piecesMarkup(text: string): string {
  return text
    .split(/ (?=\()|(?<=…) /u)
    .map((piece) => `<span class="keep">${escapeMarkup(piece)}</span>`)
    .join(' ');
}

/** A number and the unit after it. */
const QUANTITY =
  /(?<![\p{L}\d.])[−+]?\d[\d.\u202F]* (?:%|\/h|°C|K|kJ|kW|hp|Btu|N·m|lbf·ft|r\/min|rev|A|V|s|ms|Ω|kg·m²|lb·ft²|× rated)(?![\p{L}\d·²/])/gu;

/** Text in which no line ends between a number and its unit. */
function quantitiesMarkup(text: string): string {
  return escapeMarkup(text).replaceAll(QUANTITY, (quantity) => `<span class="keep">${quantity}</span>`);
}

/** The mark of an outcome does not part from the first of its words. */
function markedMarkup(mark: OutcomeForm, text: string): string {
  const [first = '', ...others] = text.split(' ');
  const rest = others.length === 0 ? '' : ` ${escapeMarkup(others.join(' '))}`;
  return `<span><span class="keep">${outcomeMark(mark)}${escapeMarkup(first)}</span>${rest}</span>`;
}
