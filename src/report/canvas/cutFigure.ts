import type { FigureSpec, PanelSpec, Series } from '../figureSpec.ts';
import { firstFrom, neverFalls } from './samples.ts';
import { visibleDomain } from './visibleDomain.ts';
import type { Span } from './zoom.ts';

/** A figure of one stretch of its shared axis alone, for a drawing that goes away; null: the figure itself. */
export function cutFigure(spec: FigureSpec, span: Span | null): FigureSpec {
  if (span === null) return spec;
  const [x0, x1] = span;
  const inside = ({ x }: { readonly x: number }) => x >= x0 && x <= x1;
  const touching = (one: { readonly x0: number; readonly x1: number }) => one.x1 > x0 && one.x0 < x1;
  const clip = <T extends { readonly x0: number; readonly x1: number }>(one: T): T => ({
    ...one,
    x0: Math.max(x0, one.x0),
    x1: Math.min(x1, one.x1),
  });
  const cutPanel = (panel: PanelSpec): PanelSpec => {
    switch (panel.kind) {
      case 'lines':
        return {
          ...panel,
          y: { ...panel.y, domain: visibleDomain(panel, undefined, span) },
          series: panel.series.map((series) => cutSeries(series, span)),
          points: panel.points.filter(inside),
        };
      case 'states':
        return {
          ...panel,
          rows: panel.rows.map((row) => ({ ...row, intervals: row.intervals.filter(touching).map(clip) })),
        };
      case 'bars':
        return panel;
    }
  };
  return {
    ...spec,
    x: { ...spec.x, domain: span },
    panels: spec.panels.map(cutPanel),
    marks: spec.marks.filter(inside),
    bands: spec.bands.filter(touching).map(clip),
  };
}

function cutSeries(series: Series, [x0, x1]: Span): Series {
  // A curve that turns back, as over speed, is left whole: the drawing clips it.
  if (!neverFalls(series.x)) return series;
  const from = firstFrom(series.x, x0);
  const past = firstFrom(series.x, x1);
  const to = series.x[past] === x1 ? past + 1 : past;
  const cut = (values: Float64Array) => values.slice(from, to);
  return series.form === 'line'
    ? { ...series, x: cut(series.x), y: cut(series.y) }
    : { ...series, x: cut(series.x), low: cut(series.low), high: cut(series.high) };
}
