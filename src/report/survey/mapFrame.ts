import type { MapAxis, SurveyMap } from '../../survey/spread/map.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { element, textElement } from '../svgElement.ts';
import { textWidth } from '../svgLayout.ts';
import { ink } from '../svgStyle.ts';
import { fieldUnit, statedNumber } from './fieldUnit.ts';
import { fieldName } from './fieldWords.ts';
import type { Sheet } from './svgSheet.ts';

/**
 * Where the cells of a map lie: the second field to the right, the first upwards, both rising, all cells of
 * one size.
 */
export interface MapFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Number of cells to the right and upwards. */
  readonly columns: number;
  readonly rows: number;
  /** px. */
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Left edge of a column, counted from the left, px. */
  readonly x: (column: number) => number;
  /** Upper edge of a row, counted from below, px. */
  readonly y: (row: number) => number;
}

/** Height of a cell where there are few, and of the whole map at most and at least, px. */
const CELL_HEIGHT = 34;
const MOST_HEIGHT = 460;
const LEAST_HEIGHT = 90;
/** Digits of the values at the axes. */
const DIGITS = 3;

/** Cells of a table in the order in which they are drawn: [row from below][column from the left]. */
export function inDrawnOrder<T>({ first, second }: SurveyMap, cells: readonly (readonly T[])[]): T[][] {
  const columns = rising(second);
  return rising(first).map((i) => columns.map((j) => cells[i]![j]!));
}

/** Places the cells below `sheet.top`. */
export function mapFrame({ first, second }: SurveyMap, { width, top, style }: Sheet): MapFrame {
  const [rows, columns] = [first.values.length, second.values.length];
  const left = style.narrow ? 58 : 84;
  const right = width - 14;
  const height = Math.max(LEAST_HEIGHT, Math.min(MOST_HEIGHT, rows * CELL_HEIGHT));
  const head = style.fontSize + 10;
  const [upper, bottom] = [top + head, top + head + height];
  const cellWidth = (right - left) / columns;
  const cellHeight = height / rows;
  return {
    left,
    right,
    top: upper,
    bottom,
    columns,
    rows,
    cellWidth,
    cellHeight,
    x: (column) => left + column * cellWidth,
    y: (row) => bottom - (row + 1) * cellHeight,
  };
}

/** Height that the axes take below a frame, px. */
export const AXES_BELOW = 44;

/** Frame, values and names of both fields. */
export function mapAxes(
  { first, second }: SurveyMap,
  frame: MapFrame,
  style: Sheet['style'],
  units: UnitSystem,
): string {
  const size = style.fontSize - 1;
  const small = { 'font-size': size, fill: ink(style, 'muted') };
  const below = valueTexts(second, units);
  const beside = valueTexts(first, units);
  const widest = Math.max(...below.map((text) => textWidth(text, size))) + 8;
  const everyColumn = Math.ceil(widest / frame.cellWidth);
  const everyRow = Math.ceil((size + 4) / frame.cellHeight);
  return [
    element('rect', {
      x: frame.left,
      y: frame.top,
      width: frame.right - frame.left,
      height: frame.bottom - frame.top,
      fill: 'none',
      stroke: ink(style, 'zero'),
    }),
    ...below.map((text, k) =>
      k % everyColumn === 0
        ? textElement(text, {
            x: frame.x(k) + frame.cellWidth / 2,
            y: frame.bottom + size + 5,
            'text-anchor': 'middle',
            ...small,
          })
        : '',
    ),
    ...beside.map((text, k) =>
      k % everyRow === 0
        ? textElement(text, {
            x: frame.left - 6,
            y: frame.y(k) + frame.cellHeight / 2 + size / 3,
            'text-anchor': 'end',
            ...small,
          })
        : '',
    ),
    textElement(axisName(first, units), {
      x: 8,
      y: frame.top - 9,
      'font-size': style.fontSize,
      'font-weight': 600,
      fill: ink(style, 'ink'),
    }),
    textElement(axisName(second, units), {
      x: (frame.left + frame.right) / 2,
      y: frame.bottom + AXES_BELOW - 8,
      'text-anchor': 'middle',
      'font-size': style.fontSize,
      fill: ink(style, 'ink'),
    }),
  ].join('');
}

/** "Load inertia (kg·m²)" */
function axisName({ field, unit }: MapAxis, units: UnitSystem): string {
  const { label } = fieldUnit(unit, units);
  const name = fieldName(field);
  return label === '' ? name : `${name} (${label})`;
}

/** The values at an axis, rising. */
function valueTexts(axis: MapAxis, units: UnitSystem): string[] {
  const { perWritten } = fieldUnit(axis.unit, units);
  return rising(axis).map((k) => statedNumber(Number((axis.values[k]! * perWritten).toPrecision(DIGITS))));
}

/** Places of the values, the smallest first. */
function rising({ values }: MapAxis): number[] {
  return values.map((_, k) => k).sort((a, b) => values[a]! - values[b]!);
}

/** Stretches of cells of a row that show the same: what is drawn as one rectangle. */
export function stretchesOfRow<T>(row: readonly T[]): { from: number; to: number; value: T }[] {
  const stretches: { from: number; to: number; value: T }[] = [];
  for (const [column, value] of row.entries()) {
    const last = stretches.at(-1);
    if (last !== undefined && last.value === value) last.to = column + 1;
    else stretches.push({ from: column, to: column + 1, value });
  }
  return stretches;
}

/** Rectangle of a stretch of cells. */
export function stretchBox(frame: MapFrame, row: number, { from, to }: { from: number; to: number }) {
  return {
    x: frame.x(from),
    y: frame.y(row),
    width: frame.x(to) - frame.x(from),
    height: frame.cellHeight,
    // No seam between neighbours of one colour.
    'shape-rendering': 'crispEdges',
  };
}
