import { computeExtent, paddedDomain } from './envelope.ts';
import type { Dash, EventMark, FigureSpec, LinesPanel, PointMark, ReferenceLine } from './figureSpec.ts';
import type { Quantity } from './palette.ts';

/** One curve. */
export interface Curve {
  /** Stands beside the curve; may be empty where the panel has only one. */
  readonly label: string;
  /** Gives the colour: the same quantity has the same colour in every figure. */
  readonly quantity: Quantity;
  /** Solid where nothing is said. */
  readonly dash?: Dash;
  /** In the unit of the horizontal axis, rising. */
  readonly x: ArrayLike<number>;
  /** In the unit of its panel; as long as `x`. Not a number makes a gap. */
  readonly y: ArrayLike<number>;
  /** A circle at every point: for few points, between which nothing was computed. */
  readonly marked?: boolean;
}

/** Curves that share a vertical axis, which always shows zero. */
export interface CurvesPanel {
  /** "Quantity (unit)" */
  readonly label: string;
  readonly curves: readonly Curve[];
  /** Thin lines at values worth comparing with, in the unit of the panel. */
  readonly references?: readonly ReferenceLine[];
  /** Points with words. */
  readonly points?: readonly PointMark[];
  /** Height relative to the other panels; 1.6 where nothing is said. */
  readonly weight?: number;
}

/** What a figure of curves says and shows. */
export interface CurvesOptions {
  /** Unique among figures; letters, digits and hyphens. */
  readonly id: string;
  /** Says what is seen, with the numbers. */
  readonly title: string;
  /** How to read it, one sentence. */
  readonly note: string;
  /** For readers who do not see it; the title where nothing is said. */
  readonly description?: string;
  /** Horizontal axis: "Quantity (unit)". */
  readonly x: string;
  /** Logarithmic horizontal axis, over positive values. */
  readonly logarithmic?: boolean;
  /** From top to bottom. */
  readonly panels: readonly CurvesPanel[];
  /** Marks at values of the horizontal axis. */
  readonly marks?: readonly EventMark[];
}

/**
 * A figure of any curves over one axis, in the look of the others.
 *
 * @throws RangeError where a curve's x and y differ in length, or no curve has a point
 */
export function curvesFigure(options: CurvesOptions): FigureSpec {
  const curves = options.panels.flatMap((panel) => panel.curves);
  for (const { label, x, y } of curves) {
    if (x.length === y.length) continue;
    throw new RangeError(`curve "${label}" has ${x.length} values of x and ${y.length} of y`);
  }
  const xs = Float64Array.from(curves.flatMap(({ x }) => Array.from(x)));
  if (xs.length === 0) throw new RangeError('a figure needs a curve with at least one point');
  return {
    id: options.id,
    title: options.title,
    note: options.note,
    description: options.description ?? options.title,
    x: {
      label: options.x,
      domain: computeExtent(xs),
      ...(options.logarithmic ? { scale: 'log' as const } : {}),
    },
    panels: options.panels.map(linesPanel),
    marks: options.marks ?? [],
    bands: [],
  };
}

function linesPanel(panel: CurvesPanel): LinesPanel {
  const { curves, references = [], points = [] } = panel;
  const values = [
    ...curves.flatMap(({ y }) => Array.from(y).filter((value) => !Number.isNaN(value))),
    ...references.map(({ y }) => y),
    ...points.map(({ y }) => y),
  ];
  return {
    kind: 'lines',
    y: { label: panel.label, domain: paddedDomain(computeExtent(Float64Array.from(values))) },
    weight: panel.weight ?? 1.6,
    series: curves.map(({ label, quantity, dash = 'solid', x, y }) => ({
      form: 'line',
      label,
      quantity,
      dash,
      x: Float64Array.from(x),
      y: Float64Array.from(y),
    })),
    references,
    points: [...points, ...curves.flatMap(circles)],
  };
}

function circles({ marked, quantity, x, y }: Curve): PointMark[] {
  if (!marked) return [];
  return Array.from(x, (at, i) => ({ x: at, y: y[i]!, label: '', quantity })).filter(
    (point) => !Number.isNaN(point.y),
  );
}
