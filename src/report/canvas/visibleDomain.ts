import { computeExtent, paddedDomain } from '../envelope.ts';
import type { FigureSpec, LinesPanel, Series } from '../figureSpec.ts';
import { firstFrom, neverFalls, valueAt } from './samples.ts';
import type { Span } from './zoom.ts';

/** An axis never spans less than this share of what it spans over the whole run: numerical noise would look like a signal. */
const LEAST_SHARE = 0.02;

/** The panel of another figure that shows the same quantity in the same unit; undefined where there is none. */
export function samePanel(panel: LinesPanel, other: FigureSpec | null | undefined): LinesPanel | undefined {
  return other?.panels.find(
    (candidate): candidate is LinesPanel => candidate.kind === 'lines' && candidate.y.label === panel.y.label,
  );
}

/** The stretch of the shared axis that both figures fill together. */
export function wholeDomain(spec: FigureSpec, behind?: FigureSpec | null): Span {
  if (behind == null || behind.x.label !== spec.x.label) return spec.x.domain;
  return [Math.min(spec.x.domain[0], behind.x.domain[0]), Math.max(spec.x.domain[1], behind.x.domain[1])];
}

/**
 * What the vertical axis of a panel spans: over the whole run what the figure says, so that runs compare; over a shorter stretch
 * what is to be seen there, with zero and a margin.
 *
 * @param span visible stretch of the shared axis; null: all
 */
export function visibleDomain(
  panel: LinesPanel,
  behind: LinesPanel | undefined,
  span: Span | null,
): readonly [number, number] {
  const [low, high] = behind === undefined ? panel.y.domain : computeExtent(panel.y.domain, behind.y.domain);
  if (span === null) return [low, high];
  const series = [...panel.series, ...(behind?.series ?? [])];
  const seen = computeExtent(...series.map((one) => visibleExtremes(one, span)));
  const [least, most] = paddedDomain(seen);
  const missing = LEAST_SHARE * (high - low) - (most - least);
  return missing > 0 ? [least - missing / 2, most + missing / 2] : [least, most];
}

/** Smallest and largest value within the stretch, with those interpolated at its ends. */
function visibleExtremes(series: Series, [x0, x1]: Span): readonly number[] {
  const { x } = series;
  const columns = series.form === 'line' ? [series.y] : [series.low, series.high];
  if (neverFalls(x)) {
    const from = firstFrom(x, x0);
    const to = firstFrom(x, x1);
    return columns.flatMap((y) => [
      valueAt(x, y, x0),
      valueAt(x, y, x1),
      ...computeExtentOf(y.subarray(from, to)),
    ]);
  }
  return columns.flatMap((y) => computeExtentOf(y.filter((_, i) => x[i]! >= x0 && x[i]! <= x1)));
}

function computeExtentOf(values: Float64Array): readonly number[] {
  return values.length === 0 ? [] : computeExtent(values);
}
