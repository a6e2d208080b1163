/** Symbols that the terminal summary writes, and what stands for them in plain ASCII. */
const ASCII: Readonly<Record<string, string>> = {
  '×': 'x',
  '·': '*',
  '−': '-',
  '–': '-',
  '—': '-',
  '°': ' deg',
  '²': '2',
  '\u202F': ' ',
  '…': '...',
  Ω: 'ohm',
  '√': 'sqrt ',
  µ: 'u',
  δ: 'delta',
  φ: 'phi',
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Writes the summary's own symbols in ASCII: "2.1 × 10⁻⁸" as "2.1 x 10^-8". Other characters, as in a title, stay. */
export function asciiText(text: string): string {
  return text
    .replace(/[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+(?=\s|$)/gu, (power) =>
      power.length === 1 && power === '²'
        ? '2'
        : `^${[...power].map((digit) => (digit === '⁻' ? '-' : SUPERSCRIPTS.indexOf(digit))).join('')}`,
    )
    .replace(/[×·−–—°²\u202F…Ω√µδφ]/gu, (symbol) => ASCII[symbol] ?? symbol);
}
