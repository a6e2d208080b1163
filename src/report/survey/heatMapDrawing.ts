import type { MetricKey } from '../../measure/metric.ts';
import type { SurveyMap } from '../../survey/spread/map.ts';
import { computeExtent } from '../envelope.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { element, textElement } from '../svgElement.ts';
import { textWidth } from '../svgLayout.ts';
import { contourLines } from './contourLines.ts';
import { fieldWords } from './fieldWords.ts';
import {
  HEAT_LEGEND,
  type HeatClasses,
  heatClasses,
  heatLegend,
  TEXT_ON_DARK,
  TEXT_ON_PALE,
  valueText,
} from './heatClasses.ts';
import {
  AXES_BELOW,
  inDrawnOrder,
  type MapFrame,
  mapAxes,
  mapFrame,
  stretchBox,
  stretchesOfRow,
} from './mapFrame.ts';
import type { ShownMetric } from './shownMetric.ts';
import { type Drawing, hatchFill, type Sheet } from './svgSheet.ts';
import { badness, WORSE_SIDE } from './worseSide.ts';

/** Smallest cell that has its value written in, beside the width of the text, px. */
const WRITTEN_HEIGHT = 17;
/** px between two labels of contour lines. */
const LABEL_DISTANCE = 46;

/**
 * A metric of a sweep over two fields: cells by class, contour lines at round values; null where no cell
 * has a value.
 */
export function heatMapDrawing(
  map: SurveyMap,
  table: number,
  shown: ShownMetric,
  units: UnitSystem,
): Drawing | null {
  const cells = inDrawnOrder(map, map.tables[table]!.cells).map((row) =>
    row.map((value) => (value === null ? null : value * shown.perSi)),
  );
  const present = cells.flat().filter((value) => value !== null);
  if (present.length === 0) return null;
  const classes = heatClasses(present, darkEnd(shown.key, present));
  const missing = present.length < cells.flat().length;
  const [least, most] = computeExtent(present);
  return {
    id: `map-${shown.key}`,
    title: `${shown.axis} over ${fieldWords(map.first.field)} and ${fieldWords(map.second.field)}`,
    note: `Every cell is a run; cells are drawn equally large, whatever the steps of the fields. ${darkWords(shown.key, present)} Where the cells are too small for numbers, lines join equal values, interpolated between the runs.`,
    description: `From ${shown.text(least / shown.perSi)} to ${shown.text(most / shown.perSi)} in ${present.length} of ${cells.flat().length} cells.`,
    draw: (sheet) => {
      const frame = mapFrame(map, sheet);
      const legendTop = frame.bottom + AXES_BELOW;
      return {
        markup: [
          cellsMarkup(cells, frame, classes, sheet),
          contoursMarkup(cells, frame, classes, sheet),
          mapAxes(map, frame, sheet.style, units),
          heatLegend(classes, shown, missing, legendTop, sheet),
        ].join('\n'),
        height: legendTop + HEAT_LEGEND - sheet.top,
      };
    },
  };
}

/** The end of the values that is dark: the worse one. */
function darkEnd(key: MetricKey, present: readonly number[]): 'largest' | 'smallest' {
  const [least, most] = computeExtent(present);
  const bad = badness(key);
  return bad(least) > bad(most) ? 'smallest' : 'largest';
}

function darkWords(key: MetricKey, present: readonly number[]): string {
  const { side, why } = WORSE_SIDE[key];
  return side === 'none'
    ? 'Darker is larger.'
    : `Darker is worse, here the ${darkEnd(key, present)}: ${why}.`;
}

/** Whether the cells are large enough for their values. */
function isWritten(
  cells: readonly (readonly (number | null)[])[],
  frame: MapFrame,
  classes: HeatClasses,
  { style }: Sheet,
): boolean {
  if (frame.cellHeight < WRITTEN_HEIGHT) return false;
  const size = style.fontSize - 2;
  return cells
    .flat()
    .every((value) => value === null || textWidth(valueText(value, classes), size) + 4 <= frame.cellWidth);
}

function cellsMarkup(
  cells: readonly (readonly (number | null)[])[],
  frame: MapFrame,
  classes: HeatClasses,
  sheet: Sheet,
): string {
  const { style } = sheet;
  const boxes = cells.flatMap((row, r) =>
    stretchesOfRow(row.map((value) => (value === null ? null : classes.of(value)))).map((stretch) =>
      element('rect', {
        ...stretchBox(frame, r, stretch),
        fill: stretch.value === null ? hatchFill(style) : classes.fill(stretch.value),
        'data-class': stretch.value ?? 'none',
      }),
    ),
  );
  if (!isWritten(cells, frame, classes, sheet)) return boxes.join('');
  const texts = cells.flatMap((row, r) =>
    row.map((value, column) =>
      value === null
        ? ''
        : textElement(valueText(value, classes), {
            x: frame.x(column) + frame.cellWidth / 2,
            y: frame.y(r) + frame.cellHeight / 2 + 4,
            'text-anchor': 'middle',
            'font-size': style.fontSize - 2,
            fill: classes.text(classes.of(value)),
          }),
    ),
  );
  return boxes.join('') + texts.join('');
}

function contoursMarkup(
  cells: readonly (readonly (number | null)[])[],
  frame: MapFrame,
  classes: HeatClasses,
  sheet: Sheet,
): string {
  // A line would strike through the numbers, which say more.
  if (isWritten(cells, frame, classes, sheet)) return '';
  const x = (column: number) => frame.x(column) + frame.cellWidth / 2;
  const y = (row: number) => frame.y(row) + frame.cellHeight / 2;
  const short = (value: number) => String(Math.round(10 * value) / 10);
  const labels: { x: number; y: number; text: string }[] = [];
  const lines = classes.edges.slice(1, -1).map((level) => {
    const pieces = contourLines(cells, level).map((piece) => ({
      x1: x(piece.x1),
      y1: y(piece.y1),
      x2: x(piece.x2),
      y2: y(piece.y2),
    }));
    const free = pieces.find(
      (piece) =>
        piece.x1 > frame.left + 20 &&
        piece.x1 < frame.right - 20 &&
        labels.every((label) => Math.hypot(label.x - piece.x1, label.y - piece.y1) > LABEL_DISTANCE),
    );
    if (free !== undefined) labels.push({ x: free.x1, y: free.y1 + 4, text: valueText(level, classes) });
    const d = pieces.map(
      (piece) => `M${short(piece.x1)},${short(piece.y1)}L${short(piece.x2)},${short(piece.y2)}`,
    );
    return d.length === 0
      ? ''
      : [
          { stroke: TEXT_ON_DARK, 'stroke-width': 3, 'stroke-opacity': 0.6 },
          { stroke: TEXT_ON_PALE, 'stroke-width': 1.1, 'data-level': String(level) },
        ]
          .map((stroke) =>
            element('path', { d: d.join(''), fill: 'none', 'stroke-linecap': 'round', ...stroke }),
          )
          .join('');
  });
  const texts = labels.map((label) =>
    textElement(label.text, {
      x: label.x,
      y: label.y,
      'text-anchor': 'middle',
      'font-size': sheet.style.fontSize - 2,
      'font-weight': 600,
      fill: TEXT_ON_PALE,
      stroke: TEXT_ON_DARK,
      'stroke-width': 3,
      'paint-order': 'stroke',
    }),
  );
  return lines.join('') + texts.join('');
}
