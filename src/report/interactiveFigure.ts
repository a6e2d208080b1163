import type { EncodedColumn } from './encodeColumn.ts';
import type { FigureSpec, LinesPanel, PanelSpec, StatesPanel } from './figureSpec.ts';
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
  /** What depends on the width of the page. */
  readonly sizes: Readonly<Record<PageWidth, SizedLayout>>;
}

/** Classes of page width: a telephone, a page, a large screen or projector. */
export type PageWidth = 'narrow' | 'wide' | 'large';

interface SizedLayout extends MarkLayout {
  /** px, with everything. */
  readonly height: number;
  /** Size of text, px. */
  readonly text: number;
  /** px right of the plot that the labels of the curves take. */
  readonly right: number;
}

/** Event labels and lines. */
interface MarkLayout {
  readonly annotations: readonly object[];
  readonly shapes: readonly object[];
  /** px above the panels that the rows of labels take. */
  readonly top: number;
}

interface PageSize {
  /** Smallest plot width for which event labels are laid out, px. */
  readonly plot: number;
  /** Height of a panel of weight 1, px. */
  readonly panel: number;
  /** Size of text, px. */
  readonly text: number;
  /** px above the event labels for the library's tool bar, which a telephone does not get. */
  readonly toolBar: number;
}

const PAGES: Readonly<Record<PageWidth, PageSize>> = {
  narrow: { plot: 250, panel: 90, text: 12, toolBar: 0 },
  wide: { plot: 800, panel: 90, text: 12, toolBar: 26 },
  large: { plot: 1100, panel: 112, text: 14, toolBar: 26 },
};
/** Margin right of the plot that event labels may use, px. */
const MARK_MARGIN = 90;
/** Margin below the plot for the horizontal axis, px; the page's script sets the same. */
const BOTTOM = 50;
/** From the plot to the first row of event labels, px: the name of the axis stands between. */
const FIRST_ROW = 18;
/** From row to row of event labels, in sizes of text. */
const ROW = 1.25;
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
    axes[`yaxis${index === 0 ? '' : index + 1}`] = { ...panelAxis(panel, spec), domain, anchor: 'x' };
    traces.push(...panelTraces(panel, name, spec.x, columns));
    if (panel.kind === 'lines') annotations.push(axisName(panel, domain[1]!), ...sideLabels(panel, name));
    if (panel.kind === 'states') annotations.push(...rowHeadings(panel, name));
  });
  const lowest = spec.panels.length === 1 ? 'y' : `y${spec.panels.length}`;
  const layout = {
    autosize: true,
    hovermode: 'closest',
    dragmode: 'zoom',
    showlegend: false,
    barmode: 'overlay',
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
  const size = (page: PageSize): SizedLayout => {
    const plot = Math.round(total * page.panel);
    const marks = markLayout(spec, page, plot);
    return {
      ...marks,
      height: plot + BOTTOM + marks.top,
      text: page.text,
      right: rightMargin(spec, page.text),
    };
  };
  return {
    id: spec.id,
    title: spec.title,
    columns: columns.encoded,
    traces,
    layout,
    sizes: { narrow: size(PAGES.narrow), wide: size(PAGES.wide), large: size(PAGES.large) },
  };
}

function panelWeight(panel: PanelSpec): number {
  if (panel.kind === 'lines') return Math.max(1.2, panel.weight);
  return panel.rows.length * (panel.kind === 'states' ? 0.17 : 0.35);
}

function panelAxis(panel: PanelSpec, spec: FigureSpec): object {
  const common = { gridcolor: token('rule'), zerolinecolor: token('zero'), automargin: true };
  // Over a shared axis a drag enlarges a stretch of it, whatever its height; one panel alone is enlarged both ways.
  if (panel.kind === 'lines')
    return { ...common, range: [...panel.y.domain], zeroline: true, fixedrange: spec.panels.length > 1 };
  const names =
    panel.kind === 'bars'
      ? panel.rows.map((row) => escapePlotText(row.label))
      : panel.rows.map((row) => (row.heading === true ? '' : escapePlotText(row.short ?? row.label)));
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

/** Headings of rows stand in the plot: as names of rows they would take their width from it. */
function rowHeadings(panel: StatesPanel, axis: string): object[] {
  return panel.rows.flatMap((row, i) =>
    row.heading === true
      ? [
          {
            text: `<b>${escapePlotText(row.label)}</b>`,
            xref: 'paper',
            x: 0,
            xanchor: 'left',
            yref: axis,
            y: i,
            yanchor: 'middle',
            borderpad: 0,
            bgcolor: token('ground'),
            showarrow: false,
          },
        ]
      : [],
  );
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

function rightMargin(spec: FigureSpec, text: number): number {
  const labels = spec.panels.flatMap((panel) =>
    panel.kind === 'lines' ? panel.series.map((series) => series.label) : [],
  );
  return Math.ceil(Math.max(MARK_MARGIN, ...labels.map((label) => textWidth(label, text) + 16)));
}

function markLayout(spec: FigureSpec, page: PageSize, plotHeight: number): MarkLayout {
  const row = ROW * page.text;
  const [from, to] = spec.x.domain;
  const placed = placeLabels(
    spec.marks.map((mark) => ({ x: ((mark.x - from) / (to - from)) * page.plot, label: mark.label })),
    page.plot + MARK_MARGIN,
    page.text,
  );
  const annotations = placed.map((label, i) => ({
    text: escapePlotText(label.label),
    xref: 'x',
    x: spec.marks[i]!.x,
    xanchor: label.end ? 'right' : 'left',
    yref: 'paper',
    y: 1,
    yanchor: 'bottom',
    yshift: FIRST_ROW + label.row * row,
    showarrow: false,
  }));
  const shapes = placed.map((label, i) => ({
    type: 'line',
    xref: 'x',
    yref: 'paper',
    x0: spec.marks[i]!.x,
    x1: spec.marks[i]!.x,
    y0: 0,
    y1: 1 + (FIRST_ROW + (label.row + 1) * row) / plotHeight,
    line: { color: token('zero'), width: 1, dash: 'dash' },
  }));
  const rows = Math.max(0, ...placed.map((label) => label.row + 1));
  return { annotations, shapes, top: Math.round(FIRST_ROW + 10 + rows * row + page.toolBar) };
}
