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
    mark === undefined ? '' : outcomeMark(mark),
    // A value keeps its unit beside it; a range may be broken before its bracket.
    `<span${number === true && !text.includes('(') ? ' class="keep"' : ''}>${escapeMarkup(text)}</span>`,
    note === undefined || note === '' ? '' : `<small>${escapeMarkup(note)}</small>`,
  ].join('');
  return first
    ? `<th scope="row"${columns}>${content}</th>`
    : `<td${classes}${columns}${named ? ` data-label="${escapeMarkup(label)}"` : ''}>${content}</td>`;
}
