import { expect, it } from 'vitest';
import { expectSection } from './generatedPages.ts';
import { errorInTolerances, expectWithin, type Tolerance } from './tolerance.ts';

/** The page with the table of every comparison with something outside the project. */
const PAGE = 'examples/guides/how-it-was-verified.md';

/** How sure it is that the source says so. */
export type Certainty =
  /** Read in the source or in a transcription of it. */
  | 'looked up'
  | 'from memory'
  /** From memory, and confirmed by an independent computation from the same source's data. */
  | 'from memory, recomputed'
  /** Follows from a formula or law; computed, not published. */
  | 'exact'
  /** A second computation that shares no code with the project. */
  | 'computed independently'
  | 'common practice, no source';

interface Row {
  readonly quantity: string;
  readonly unit: string;
  readonly published: number;
  readonly ours: number;
  readonly certainty: Certainty;
}

/** Comparisons of one source: demanded where they are made, and listed in the guide. */
export interface PublishedSource {
  /**
   * Demands that a number is within tolerance of the source's, and takes it down for the guide.
   *
   * @param quantity what is compared, complete without the heading of the test: "torque at slip 2, 50 hp"
   * @param unit as printed in the guide; '' for a ratio
   * @param certainty where it differs from that of the source as a whole
   * @throws Error as `expectWithin`
   */
  compare(
    ours: number | null | undefined,
    published: number,
    tolerance: Tolerance,
    quantity: string,
    unit: string,
    certainty?: Certainty,
  ): void;
  /** Registers the last test of a file: that the guide shows these comparisons. Call it once, at the end. */
  listedInGuide(): void;
}

/**
 * @param name of the section in the guide: the test file's name without `.test.ts`
 * @param source author, work, place in it, as a reader would look it up
 */
export function publishedSource(name: string, source: string, certainty: Certainty): PublishedSource {
  const rows: Row[] = [];
  return {
    compare(ours, published, tolerance, quantity, unit, own = certainty) {
      // Taken down first: a comparison that fails must not vanish from the page.
      rows.push({ quantity, unit, published, ours: ours ?? Number.NaN, certainty: own });
      expectWithin(ours, published, tolerance, quantity);
    },
    listedInGuide() {
      it('the guide lists these comparisons', () => {
        expect(rows.length).toBeGreaterThan(0);
        expectSection(PAGE, name, sectionOf(name, source, certainty, rows));
      });
    },
  };
}

function sectionOf(name: string, source: string, certainty: Certainty, rows: readonly Row[]): string {
  const head = `${source} *(${certainty}; [${name}.test.ts](../../tests/published/${name}.test.ts))*`;
  const lines = rows.map(({ quantity, unit, published, ours, certainty: own }) => {
    const words = own === certainty ? quantity : `${quantity} (${own})`;
    const printed = digitsOf(published);
    const digits = printed > DIGITS && printed <= MOST_PRINTED ? printed : DIGITS;
    const cells = [published, ours].map((value) => withUnit(numberText(value, digits), unit));
    return `| ${[words, ...cells, differenceText(ours, published)].join(' | ')} |`;
  });
  return `${['', head, '', '| quantity | source | ours | difference |', '| --- | --- | --- | --- |', ...lines, ''].join('\n')}\n`;
}

const withUnit = (text: string, unit: string) => `${text}${unit === '' || unit === '°' ? '' : ' '}${unit}`;

/** Digits of our numbers; more where the source has more, fewer than engines differ in. */
const DIGITS = 6;

/** With more digits than any source prints a number is a formula's, not a source's. */
const MOST_PRINTED = 9;

/** How many significant digits a number is written with. */
const digitsOf = (value: number) =>
  String(value)
    .replace(/e.*$/u, '')
    .replace(/^-?0*\.?0*|\./gu, '').length;

/** A number with at most so many significant digits; −1.2·10^−7 where it is written with a power. */
function numberText(value: number, digits: number): string {
  const [mantissa, power] = String(Number(value.toPrecision(digits)))
    .replaceAll('-', '−')
    .split('e');
  return power === undefined ? mantissa! : `${mantissa}·10^${power.replace('+', '')}`;
}

/** As a share of the source's number, to two digits; in its unit where that number is zero. */
function differenceText(ours: number, published: number): string {
  if (ours === published) return '0';
  if (errorInTolerances(ours, published, { relative: 1e-6 }) <= 1) return 'below 0.0001 %';
  if (published === 0) return numberText(ours - published, 2);
  const percent = Number(((100 * (ours - published)) / Math.abs(published)).toPrecision(2));
  return `${percent > 0 ? '+' : '−'}${Math.abs(percent)} %`;
}
