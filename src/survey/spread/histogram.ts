import { decadeBelow } from '../../numeric/decadeBelow.ts';
import { logarithm } from '../../numeric/logarithm.ts';
import { raised } from '../../numeric/raised.ts';

/**
 * Bins of equal width: bin i holds what is at least edges[i] and less than edges[i + 1]; the last one its
 * upper edge too.
 */
export interface Histogram {
  /** SI; one more than there are counts. */
  readonly edges: readonly number[];
  /** Number of values in each bin, in the order of the bins. */
  readonly counts: readonly number[];
}

/** What the bins are chosen from. */
export interface BinChoice {
  readonly count: number;
  readonly smallest: number;
  readonly largest: number;
  /** Quantiles of 25 % and 75 %. */
  readonly quartiles: readonly [number, number];
}

/** More bins than this cannot be told apart in a drawing of a page's width. Chosen. */
const MOST_BINS = 60;
/** First digits of round widths. */
const ROUND = [1, 2, 5, 10] as const;
/** Bins narrower than this share of the values show nothing but how numbers are rounded. */
const FINEST = 1e-12;
/** A width may be so much above a round one and still be rounded to it: it is itself a rounded number. */
const SLACK = 1e-9;
/** Widths below this are at the end of what numbers can express. */
const NARROWEST = 1e-300;

/**
 * Edges at round numbers (1, 2 or 5 times a power of ten apart) around all values. The width is that of
 * Freedman and Diaconis (Z. Wahrscheinlichkeitstheorie 57 (1981) 453), 2·IQR·n^(−1/3), but at most range/√n
 * (common practice, no source), rounded up: a closing angle drawn evenly gives two humps far apart, which the first rule
 * takes for one wide one. Where the quartiles coincide that of Sturges (J. Amer. Statist. Assoc. 21 (1926) 65),
 * range/(1 + log2 n). At most 60 bins.
 */
export function binEdges(choice: BinChoice): number[] {
  const { smallest, largest } = choice;
  const size = Math.max(Math.abs(smallest), Math.abs(largest));
  const finest = size === 0 ? 0 : decadeBelow(size) * FINEST;
  let width = roundAbove(Math.max(idealWidth(choice), (largest - smallest) / MOST_BINS, finest, NARROWEST));
  for (;;) {
    const edges = edgesOf(smallest, largest, width);
    if (edges.length <= MOST_BINS + 1) return edges;
    width = roundAbove(width * ROUND[1]);
  }
}

/** Which bin a value within the edges falls into. */
export function binOf(edges: readonly number[], value: number): number {
  let from = 0;
  let to = edges.length - 1;
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (edges[middle]! <= value) from = middle;
    else to = middle;
  }
  return from;
}

function idealWidth({ count, smallest, largest, quartiles: [lower, upper] }: BinChoice): number {
  const range = largest - smallest;
  if (range === 0) {
    // One value alone: a bin of a tenth of its decade around it.
    return smallest === 0 ? 1 : decadeBelow(Math.abs(smallest)) / 10;
  }
  if (upper > lower) return Math.min((2 * (upper - lower)) / raised(count, 1 / 3), range / Math.sqrt(count));
  return range / (1 + logarithm(count) / Math.LN2);
}

/** The smallest of 1, 2, 5, 10 times a power of ten that is not below a width, rounding aside. */
function roundAbove(width: number): number {
  const decade = decadeBelow(width);
  return (
    ROUND.map((digit) => decimal(digit, decade)).find((round) => round >= width * (1 - SLACK)) ??
    decimal(10, decade)
  );
}

/** k times a power of ten, rounded as its decimal text is, so that 3 · 0.1 is 0.3. */
function decimal(k: number, decade: number): number {
  return Number(`${k}e${decade.toExponential().split('e')[1]}`);
}

function edgesOf(smallest: number, largest: number, width: number): number[] {
  const decade = decadeBelow(width);
  const digit = Math.round(width / decade);
  const at = (k: number) => decimal(k * digit, decade);
  let first = Math.floor(smallest / width);
  // The quotient is rounded; the edges themselves decide.
  while (at(first) > smallest) first--;
  while (at(first + 1) <= smallest) first++;
  const edges = [at(first), at(first + 1)];
  for (let k = first + 2; edges.at(-1)! < largest && edges.length <= MOST_BINS + 1; k++) edges.push(at(k));
  return edges;
}
