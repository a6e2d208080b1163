/** What spreadsheets begin formulas or commands with, the full-width forms too. */
const FORMULA_START = /^[=+\-@|\uFF1D\uFF0B\uFF0D\uFF20\t\r]/u;

/**
 * A field of RFC 4180 text: quoted where commas, quotes or line breaks ask for it; never what a spreadsheet
 * takes for a formula.
 */
export function csvText(text: string): string {
  const plain = FORMULA_START.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** Shortest number that reads back as the same; empty where there is none. */
export function csvNumber(value: number | null): string {
  return value !== null && Number.isFinite(value) ? String(value === 0 ? 0 : value) : '';
}
