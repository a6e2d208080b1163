/**
 * Source: NEMA MG 1, 10.37.2, locked-rotor kVA per horsepower by code letter, as printed on a public knowledge-base page;
 * agrees with memory. The lower bound belongs to a letter, the upper does not.
 */
import { describe, expect, it } from 'vitest';
import { codeLetterCurrent } from '../../src/estimate/codeLetters.ts';
import { codeLetterOf, codeLetterRange } from '../../src/scenario/codeLetter.ts';
import { publishedSource } from '../support/published.ts';

const { compare, listedInGuide } = publishedSource(
  'codeLetters',
  'NEMA MG 1, 10.37.2, locked-rotor kVA per horsepower by code letter, as printed on a public knowledge-base page; the program holds ' +
    'this table itself, so that its rows show a faithful copy.',
  'looked up',
);

const PRINTED = [
  ['A', 0, 3.15],
  ['B', 3.15, 3.55],
  ['C', 3.55, 4.0],
  ['D', 4.0, 4.5],
  ['E', 4.5, 5.0],
  ['F', 5.0, 5.6],
  ['G', 5.6, 6.3],
  ['H', 6.3, 7.1],
  ['J', 7.1, 8.0],
  ['K', 8.0, 9.0],
  ['L', 9.0, 10.0],
  ['M', 10.0, 11.2],
  ['N', 11.2, 12.5],
  ['P', 12.5, 14.0],
  ['R', 14.0, 16.0],
  ['S', 16.0, 18.0],
  ['T', 18.0, 20.0],
  ['U', 20.0, 22.4],
  ['V', 22.4, Number.POSITIVE_INFINITY],
] as const;

describe('code letters', () => {
  it.each(PRINTED)('%s stands for %f up to %f kVA/hp', (letter, from, below) => {
    const range = codeLetterRange(letter);
    expect(range).toEqual({ from, below });
    // Where one letter ends, the next begins: one row for both.
    if (Number.isFinite(below)) compare(range?.below, below, {}, `code letter ${letter} ends at`, 'kVA/hp');
    expect(codeLetterOf(from)).toBe(letter);
    if (Number.isFinite(below)) expect(codeLetterOf(below * (1 - 1e-12))).toBe(letter);
  });

  it('have no I, O and Q', () => {
    for (const letter of ['I', 'O', 'Q', 'W', '']) expect(codeLetterRange(letter)).toBe(null);
  });

  it('give 7.0 kVA/hp the letter H: a page that prints H as 7.1 to 7.99 misprints it', () => {
    expect(codeLetterOf(7)).toBe('H');
    expect(codeLetterOf(7.5)).toBe('J');
  });

  it('turn into amperes: 10 hp at 460 V with letter H lie between 79 and 89 A', () => {
    const { middle, range } = codeLetterCurrent('H', 7457, 460);
    // 6.3 and 7.1 kVA/hp × 10 hp / (√3 · 460 V), by hand: 79.07 A and 89.11 A.
    const motor = 'locked-rotor current of letter H, 10 hp at 460 V, by hand';
    compare(middle * range[0], 79.07, { relative: 1e-4 }, `lowest ${motor}`, 'A', 'exact');
    compare(middle * range[1], 89.11, { relative: 1e-4 }, `highest ${motor}`, 'A', 'exact');
  });

  it('that are open on one side take their known end', () => {
    const perHp = 1000 / (Math.sqrt(3) * 460);
    // A hp of 745.7 W; the code letter counts 745.699872.
    const { middle: v } = codeLetterCurrent('V', 745.7, 460);
    const { middle: a } = codeLetterCurrent('A', 745.7, 460);
    const motor = 'locked-rotor current of letter';
    compare(v, 22.4 * perHp, { relative: 1e-6 }, `lowest ${motor} V, 1 hp at 460 V`, 'A', 'exact');
    compare(a, 3.15 * perHp, { relative: 1e-6 }, `highest ${motor} A, 1 hp at 460 V`, 'A', 'exact');
  });
});

listedInGuide();
