/** A stretch of a figure's shared axis, in its unit. */
export type Span = readonly [number, number];

/** The shortest stretch that is shown, as a share of the whole: 0.1 ms of a second still shows single samples. */
const SHORTEST = 1e-4;

/**
 * The stretch moved into the whole and never shorter than a ten-thousandth of it; null where it is the whole.
 */
export function clamped(span: Span | null, whole: Span): Span | null {
  if (span === null) return null;
  const all = whole[1] - whole[0];
  const low = Math.min(span[0], span[1]);
  const high = Math.max(span[0], span[1]);
  const length = Math.max(high - low, SHORTEST * all);
  if (!(length < all)) return null;
  const from = Math.min(whole[1] - length, Math.max(whole[0], (low + high - length) / 2));
  return [from, from + length];
}

/**
 * The stretch enlarged about a value that stays where it is on the picture.
 *
 * @param factor above 1 shows less and larger, below 1 more
 */
export function zoomed(span: Span | null, whole: Span, factor: number, about: number): Span | null {
  const [from, to] = span ?? whole;
  const centre = Math.min(to, Math.max(from, about));
  return clamped([centre - (centre - from) / factor, centre + (to - centre) / factor], whole);
}

/** The stretch moved by a share of its own length, as far as the whole reaches; positive: later. */
export function moved(span: Span | null, whole: Span, share: number): Span | null {
  if (span === null) return null;
  const by = share * (span[1] - span[0]);
  return clamped([span[0] + by, span[1] + by], whole);
}

/**
 * The stretch moved, if it must, so that a value on it can be seen: it then stands an eighth from the edge behind it, with room ahead.
 */
export function following(span: Span | null, whole: Span, x: number): Span | null {
  if (span === null || (x >= span[0] && x <= span[1])) return span;
  const length = span[1] - span[0];
  const from = x > span[1] ? x - length / 8 : x - (7 * length) / 8;
  return clamped([from, from + length], whole);
}

/** Whether two stretches are the same. */
export function sameSpan(a: Span | null, b: Span | null): boolean {
  return a === b || (a !== null && b !== null && a[0] === b[0] && a[1] === b[1]);
}

/** A stretch narrower than this on the picture was not meant, px. */
const LEAST_CHOICE = 5;

/**
 * The stretch that a hand has chosen; undefined where it hardly moved.
 *
 * @param px distance of a value of the axis on the picture, px
 */
export function chosenSpan(a: number, b: number, px: (x: number) => number): Span | undefined {
  return Math.abs(px(a) - px(b)) < LEAST_CHOICE ? undefined : [Math.min(a, b), Math.max(a, b)];
}
