import type { EncodedColumn } from './encodeColumn.ts';
import type { FigureSpec, LinesPanel, PanelSpec } from './figureSpec.ts';
import { type ColourToken, columnStore, panelTraces, token } from './interactiveTraces.ts';
import { escapePlotText } from './plainText.ts';
import { placeLabels, textWidth } from './svgLayout.ts';

/** A figure as the page's script hands it to the plotting library. Columns are shared by the traces that name them. */
export interface InteractiveFigure {
  readonly id: string;
  readonly title: string;
  readonly columns: readonly EncodedColumn[];
  readonly traces: readonly object[];
  readonly layout: object;
  /** px */
  readonly height: number;
  /** px right of the plot that the labels of the curves take. */
  readonly right: number;
  /** Event labels and lines for a wide and for a narrow page. */
  readonly marks: { readonly wide: MarkLayout; readonly narrow: MarkLayout };
}

interface MarkLayout {
  readonly annotations: readonly object[];
  readonly shapes: readonly object[];
  /** px above the panels that the rows of labels take. */
  readonly top: number;
}

/** Plot widths for which event labels are laid out, px. */
const PLOT_WIDTH = { wide: 800, narrow: 250 } as const;
/** Margin right of the plot that event labels may use, px. */
const MARK_MARGIN = 90;
/** Margin below the plot for the horizontal axis, px; the page's script sets the same. */
const BOTTOM = 50;
/** From the plot to the first row of event labels, and from row to row, px. */
const FIRST_ROW = 16;
const ROW = 15;
const LABEL_SIZE = 12;
const PANEL_HEIGHT = 90;
/** Share of the height between two panels. */
const GAP = 0.045;

/** Turns a figure description into data for the plotting library; all text is neutralised for it. */
export function interactiveFigure(spec: FigureSpec): InteractiveFigure {
  const columns = columnStore();
  const weights = spec.panels.map(panelWeight);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const gaps = GAP * (spec.panels.length - 1);
  const axes: Record<string, object> = {};
  const annotations: object[] = [];
  const traces: object[] = [];
  let top = 1;
  spec.panels.forEach((panel, index) => {
    const share = ((1 - gaps) * weights[index]!) / total;
    const domain = [Math.max(0, top - share), top];
    top -= share + GAP;
    const name = index === 0 ? 'y' : `y${index + 1}`;
    axes[`yaxis${index === 0 ? '' : index + 1}`] = { ...panelAxis(panel), domain, anchor: 'x' };
    traces.push(...panelTraces(panel, name, columns));
    if (panel.kind === 'lines') annotations.push(axisName(panel, domain[1]!), ...sideLabels(panel, name));
  });
  const lowest = spec.panels.length === 1 ? 'y' : `y${spec.panels.length}`;
  const layout = {
    autosize: true,
    hovermode: 'closest',
    dragmode: 'zoom',
    showlegend: false,
    xaxis: {
      title: { text: escapePlotText(spec.x.label) },
      range: [...spec.x.domain],
      anchor: lowest,
      zeroline: spec.panels[0]?.kind === 'bars',
      gridcolor: token('rule'),
      zerolinecolor: token('zero'),
    },
    ...axes,
    shapes: bandShapes(spec),
    annotations,
  };
  const height = Math.round(total * PANEL_HEIGHT + BOTTOM);
  return {
    id: spec.id,
    title: spec.title,
    columns: columns.encoded,
    traces,
    layout,
    height,
    right: rightMargin(spec),
    marks: {
      wide: markLayout(spec, PLOT_WIDTH.wide, height - BOTTOM),
      narrow: markLayout(spec, PLOT_WIDTH.narrow, height - BOTTOM),
    },
  };
}

function panelWeight(panel: PanelSpec): number {
  if (panel.kind === 'lines') return Math.max(1.2, panel.weight);
  return panel.rows.length * (panel.kind === 'states' ? 0.17 : 0.35);
}

function panelAxis(panel: PanelSpec): object {
  const common = { gridcolor: token('rule'), zerolinecolor: token('zero'), automargin: true };
  if (panel.kind === 'lines') return { ...common, range: [...panel.y.domain], zeroline: true };
  const names = panel.rows.map((row) => escapePlotText(row.label));
  return {
    ...common,
    tickmode: 'array',
    tickvals: names.map((_, i) => i),
    ticktext: names,
    range: [names.length - 0.4, -0.6],
    showgrid: panel.kind === 'states',
    fixedrange: true,
    zeroline: false,
  };
}

function axisName(panel: LinesPanel, top: number): object {
  return {
    text: `<b>${escapePlotText(panel.y.label)}</b>`,
    xref: 'paper',
    yref: 'paper',
    x: 0,
    y: top,
    yshift: 10,
    xanchor: 'left',
    yanchor: 'middle',
    showarrow: false,
  };
}

function sideLabels(panel: LinesPanel, axis: string): object[] {
  const label = (text: string, y: number, color: ColourToken) => ({
    text: escapePlotText(text),
    xref: 'paper',
    x: 1.004,
    xanchor: 'left',
    yref: axis,
    y,
    showarrow: false,
    font: { size: LABEL_SIZE - 1 },
    bordercolor: color,
    borderwidth: 1.5,
    borderpad: 2,
  });
  const [low, high] = panel.y.domain;
  // Labels side by side at fixed heights: the ends of fast curves would put them on top of each other.
  const step = (high - low) / (panel.series.length + 1);
  return panel.series.map((series, i) => label(series.label, high - step * (i + 1), token(series.quantity)));
}

function bandShapes(spec: FigureSpec): object[] {
  return spec.bands.map((band) => ({
    type: 'rect',
    layer: 'below',
    xref: 'x',
    yref: 'paper',
    x0: band.x0,
    x1: band.x1,
    y0: 0,
    y1: 1,
    fillcolor: token('band'),
    line: { width: 0 },
  }));
}

function rightMargin(spec: FigureSpec): number {
  const labels = spec.panels.flatMap((panel) =>
    panel.kind === 'lines' ? panel.series.map((series) => series.label) : [],
  );
  return Math.ceil(Math.max(MARK_MARGIN, ...labels.map((label) => textWidth(label, LABEL_SIZE) + 16)));
}

function markLayout(spec: FigureSpec, width: number, plotHeight: number): MarkLayout {
  const [from, to] = spec.x.domain;
  const placed = placeLabels(
    spec.marks.map((mark) => ({ x: ((mark.x - from) / (to - from)) * width, label: mark.label })),
    width + MARK_MARGIN,
    LABEL_SIZE,
  );
  const annotations = placed.map((label, i) => ({
    text: escapePlotText(label.label),
    xref: 'x',
    x: spec.marks[i]!.x,
    xanchor: label.end ? 'right' : 'left',
    yref: 'paper',
    y: 1,
    yanchor: 'bottom',
    yshift: FIRST_ROW + label.row * ROW,
    showarrow: false,
    font: { size: LABEL_SIZE },
  }));
  const shapes = placed.map((label, i) => ({
    type: 'line',
    xref: 'x',
    yref: 'paper',
    x0: spec.marks[i]!.x,
    x1: spec.marks[i]!.x,
    y0: 0,
    y1: 1 + (FIRST_ROW + (label.row + 1) * ROW) / plotHeight,
    line: { color: token('zero'), width: 1, dash: 'dash' },
  }));
  const rows = Math.max(0, ...placed.map((label) => label.row + 1));
  return { annotations, shapes, top: FIRST_ROW + 10 + rows * ROW };
}
