import { escapeMarkup } from './plainText.ts';

/** A cell: text, which is escaped, with an optional class. */
export interface Cell {
  readonly text: string;
  readonly className?:
    | 'number'
    | 'number stated'
    | 'number reproduced'
    | 'number error'
    | 'at'
    | 'phase'
    | 'wide-word'
    | 'words';
}

/** What a table consists of. */
export interface TableOptions {
  readonly caption: string;
  readonly head: readonly Cell[];
  /** A long table of short rows: on paper it runs in two columns. */
  readonly folded?: true;
  /** The first cell of a row is its header. */
  readonly rows: readonly (readonly Cell[])[];
}

/** A table whose rows stand in groups under headings of their own. On a narrow page every row is stacked. */
export interface GroupedTableOptions extends Omit<TableOptions, 'rows'> {
  readonly groups: readonly { readonly title: string; readonly rows: TableOptions['rows'] }[];
}

/** A table of more rows may be broken between pages. */
const LONG = 8;

/** An HTML table with header scopes, in a container that scrolls sideways where the page is too narrow. */
export function table(options: TableOptions): string {
  return tableFrame(
    options,
    `<tbody>\n${bodyRows(options.rows)}\n</tbody>`,
    options.folded === true ? 'scroll folded' : options.rows.length > LONG ? 'scroll' : 'scroll whole',
  );
}

/** An HTML table with a body per group, each headed by the group's title. */
export function groupedTable(options: GroupedTableOptions): string {
  const bodies = options.groups.map(
    ({ title, rows }) =>
      `<tbody>\n<tr class="group"><th scope="rowgroup" colspan="${options.head.length}">${escapeMarkup(title)}</th></tr>\n${bodyRows(rows)}\n</tbody>`,
  );
  return tableFrame(options, bodies.join('\n'), 'scroll stacked');
}

function bodyRows(rows: TableOptions['rows']): string {
  return rows
    .map((row) => {
      const cells = row.map((cell, i) =>
        i === 0
          ? `<th scope="row"${classOf(cell)}>${escapeMarkup(cell.text)}</th>`
          : `<td${classOf(cell)}>${escapeMarkup(cell.text)}</td>`,
      );
      return `<tr>${cells.join('')}</tr>`;
    })
    .join('\n');
}

function tableFrame(
  options: Pick<TableOptions, 'caption' | 'head'>,
  bodies: string,
  className: string,
): string {
  const head = options.head
    .map((cell) => `<th scope="col"${classOf(cell)}>${escapeMarkup(cell.text)}</th>`)
    .join('');
  const caption = escapeMarkup(options.caption);
  return `<div class="${className}" role="region" tabindex="0" aria-label="${caption}"><table><caption>${caption}</caption><thead><tr>${head}</tr></thead>\n${bodies}</table></div>`;
}

/** A paragraph; the text is escaped. */
export function paragraph(text: string, className?: string): string {
  return `<p${className === undefined ? '' : ` class="${className}"`}>${escapeMarkup(text)}</p>`;
}

/** A bulleted list; the texts are escaped. */
export function list(items: readonly string[]): string {
  return `<ul>${items.map((item) => `<li>${escapeMarkup(item)}</li>`).join('\n')}</ul>`;
}

function classOf(cell: Cell): string {
  return cell.className === undefined ? '' : ` class="${cell.className}"`;
}
