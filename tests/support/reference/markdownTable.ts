import { wrapToWidth } from '../../../src/report/displayWidth.ts';

/** First line of a page that a test writes. */
export const GENERATED =
  '<!-- Made from the code by `npm run pages`; a test compares it. Do not edit by hand. -->';

/** A table of Markdown; what would end a cell is escaped. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(cellText).join(' | ')} |\n`;
  return `${line(head)}| ${head.map(() => '---').join(' | ')} |\n${rows.map(line).join('')}`;
}

function cellText(text: string): string {
  return text.replaceAll('\n', ' ').replaceAll('|', '\\|').trim();
}

/** A text as code; empty text stays empty. */
export function code(text: string): string {
  return text === '' ? '' : `\`${text}\``;
}

/** A text that begins with a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Text as a paragraph of short lines. */
export function paragraph(text: string): string {
  return `${wrapToWidth(text, 120).join('\n')}\n`;
}
