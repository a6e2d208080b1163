import { escapeMarkup } from './plainText.ts';

/** A cell: text, which is escaped, with an optional class. */
export interface Cell {
  readonly text: string;
  readonly className?: 'number' | 'at' | 'wide-word';
}

/** What a table consists of. */
export interface TableOptions {
  readonly caption: string;
  readonly head: readonly Cell[];
  /** The first cell of a row is its header. */
  readonly rows: readonly (readonly Cell[])[];
}

/** An HTML table with header scopes, in a container that scrolls sideways where the page is too narrow. */
export function table(options: TableOptions): string {
  const head = options.head
    .map((cell) => `<th scope="col"${classOf(cell)}>${escapeMarkup(cell.text)}</th>`)
    .join('');
  const body = options.rows
    .map((row) => {
      const cells = row.map((cell, i) =>
        i === 0
          ? `<th scope="row"${classOf(cell)}>${escapeMarkup(cell.text)}</th>`
          : `<td${classOf(cell)}>${escapeMarkup(cell.text)}</td>`,
      );
      return `<tr>${cells.join('')}</tr>`;
    })
    .join('\n');
  const caption = escapeMarkup(options.caption);
  return `<div class="scroll" role="region" tabindex="0" aria-label="${caption}"><table><caption>${caption}</caption><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table></div>`;
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
