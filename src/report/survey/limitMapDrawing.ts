import type { RowVerdict } from '../../survey/spec/survey.ts';
import type { SurveyMap } from '../../survey/spread/map.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { element, textElement } from '../svgElement.ts';
import { textWidth } from '../svgLayout.ts';
import { ink } from '../svgStyle.ts';
import { criterionWords, RUN_ITSELF } from './criterionWords.ts';
import { fieldWords } from './fieldWords.ts';
import { type LimitKey, limitKeys } from './limitKeys.ts';
import {
  AXES_BELOW,
  inDrawnOrder,
  type MapFrame,
  mapAxes,
  mapFrame,
  stretchBox,
  stretchesOfRow,
} from './mapFrame.ts';
import { type Drawing, hatchFill, type Sheet } from './svgSheet.ts';

/** What a cell shows. */
type CellState = RowVerdict['outcome'] | 'none';

/** How a cell of each kind is told apart: pale and dark, hatched, empty, and by a letter. */
const KINDS: Readonly<
  Record<CellState, { letter: string; words: string; fill: string | null; text: string | null }>
> = {
  suitable: { letter: 'S', words: 'suitable', fill: '#CDE9DF', text: '#14181D' },
  notSuitable: { letter: 'N', words: 'not suitable', fill: '#A63F00', text: '#FFFFFF' },
  notJudged: { letter: '?', words: 'not judged', fill: null, text: null },
  none: { letter: '×', words: 'no verdict', fill: 'none', text: null },
};
const ORDER: readonly CellState[] = ['suitable', 'notSuitable', 'notJudged', 'none'];
/** Room that a letter needs, px. */
const LETTER = 14;
/** How much wider bold text is. */
const BOLD = 1.1;
/** Height of a row of the legend, px. */
const LEGEND_ROW = 26;

/**
 * The verdict in each cell of two fields, with the line along which it changes; null where no verdict was
 * taken down.
 */
export function limitMapDrawing(map: SurveyMap, units: UnitSystem): Drawing | null {
  if (map.verdicts === null) return null;
  const cells = inDrawnOrder(map, map.verdicts).map((row) =>
    row.map((verdict): CellState => verdict?.outcome ?? 'none'),
  );
  const all = cells.flat();
  const verdicts = inDrawnOrder(map, map.verdicts);
  const keys = limitKeys(verdicts.flat());
  const keyed = verdicts.map((row) => row.map(keys.of));
  const count = (state: CellState) => all.filter((other) => other === state).length;
  const suitable = count('suitable');
  return {
    id: 'limit-map',
    title: `Plugging suits ${suitable} of ${all.length} combinations of ${fieldWords(map.first.field)} and ${fieldWords(map.second.field)}`,
    note: 'Every cell is a judged run; cells are drawn equally large, whatever the steps of the fields. The thick line runs where the verdict changes: the limit itself lies somewhere between the two runs beside it. Small letters say what decides: what fails, what is missing for a judgement, or what of a suitable run is closest to its limit.',
    description: ORDER.map((state) => `${KINDS[state].words}: ${count(state)} cells`).join('; '),
    draw: (sheet) => {
      const frame = mapFrame(map, sheet);
      const legend = legendMarkup(
        ORDER.filter((state) => count(state) > 0),
        frame.bottom + AXES_BELOW,
        areKeysShown(keyed, frame, sheet) ? keys.entries : [],
        sheet,
      );
      return {
        markup: [
          cellsMarkup(cells, frame, sheet),
          areKeysShown(keyed, frame, sheet)
            ? keyedMarkup(cells, keyed, frame, sheet)
            : lettersMarkup(cells, frame, sheet),
          boundaryMarkup(cells, frame, sheet),
          mapAxes(map, frame, sheet.style, units),
          legend.markup,
        ].join('\n'),
        height: frame.bottom + AXES_BELOW + legend.height - sheet.top,
      };
    },
  };
}

const fillOf = (state: CellState, style: Sheet['style']) => KINDS[state].fill ?? hatchFill(style);

function cellsMarkup(cells: readonly (readonly CellState[])[], frame: MapFrame, { style }: Sheet): string {
  return cells
    .flatMap((row, r) =>
      stretchesOfRow(row).map((stretch) =>
        element('rect', {
          ...stretchBox(frame, r, stretch),
          fill: fillOf(stretch.value, style),
          'data-state': stretch.value,
        }),
      ),
    )
    .join('');
}

/** "N ab"; "Nab" where there is little room. */
function keyedText(state: CellState, key: string, narrow: boolean): string {
  return key === '' ? KINDS[state].letter : `${KINDS[state].letter}${narrow ? '' : ' '}${key}`;
}

/** Whether every cell has room for what decides in it. */
function areKeysShown(keyed: readonly (readonly string[])[], frame: MapFrame, { style }: Sheet): boolean {
  if (frame.cellHeight < LETTER + 1) return false;
  const widths = keyed
    .flat()
    .map((key) => textWidth(keyedText('notSuitable', key, style.narrow), style.fontSize - 1));
  return Math.max(...widths) * BOLD + 2 <= frame.cellWidth;
}

/** In each cell the letter of its verdict and those of what decides. */
function keyedMarkup(
  cells: readonly (readonly CellState[])[],
  keyed: readonly (readonly string[])[],
  frame: MapFrame,
  { style }: Sheet,
): string {
  return cells
    .flatMap((row, r) =>
      row.map((state, c) =>
        letterMarkup(
          state,
          frame.x(c) + frame.cellWidth / 2,
          frame.y(r) + frame.cellHeight / 2,
          style,
          keyedText(state, keyed[r]![c]!, style.narrow),
        ),
      ),
    )
    .join('');
}

/** A letter in each cell; of finer cells one in each block of them that shows the same throughout. */
function lettersMarkup(cells: readonly (readonly CellState[])[], frame: MapFrame, { style }: Sheet): string {
  const across = Math.ceil(LETTER / frame.cellWidth);
  const up = Math.ceil((LETTER + 1) / frame.cellHeight);
  const letters: string[] = [];
  for (let r = 0; r < frame.rows; r += up)
    for (let c = 0; c < frame.columns; c += across) {
      const block = cells.slice(r, r + up).flatMap((row) => row.slice(c, c + across));
      const [state] = block;
      if (state === undefined || block.length < up * across || block.some((other) => other !== state))
        continue;
      letters.push(
        letterMarkup(
          state,
          (frame.x(c) + frame.x(c + across)) / 2,
          (frame.y(r) + frame.y(r + up)) / 2 + frame.cellHeight,
          style,
        ),
      );
    }
  return letters.join('');
}

function letterMarkup(
  state: CellState,
  x: number,
  y: number,
  style: Sheet['style'],
  letter = KINDS[state].letter,
): string {
  const { text } = KINDS[state];
  const size = style.fontSize - 1;
  return textElement(letter, {
    x,
    y: y + size / 3,
    'text-anchor': 'middle',
    'font-size': size,
    'font-weight': 650,
    fill: text ?? ink(style, 'ink'),
    ...(state === 'notJudged'
      ? { stroke: ink(style, 'ground'), 'stroke-width': 4, 'paint-order': 'stroke' }
      : {}),
  });
}

/** Along all sides between cells that show different verdicts. */
function boundaryMarkup(cells: readonly (readonly CellState[])[], frame: MapFrame, { style }: Sheet): string {
  const short = (value: number) => String(Math.round(10 * value) / 10);
  const sides = cells.flatMap((row, r) =>
    row.map((state, c) => {
      const [left, right] = [short(frame.x(c)), short(frame.x(c + 1))];
      const [upper, lower] = [short(frame.y(r)), short(frame.y(r) + frame.cellHeight)];
      const beside = row[c + 1];
      const above = cells[r + 1]?.[c];
      return (
        (beside !== undefined && beside !== state ? `M${right},${upper}V${lower}` : '') +
        (above !== undefined && above !== state ? `M${left},${upper}H${right}` : '')
      );
    }),
  );
  const d = sides.join('');
  if (d === '') return '';
  return [
    { stroke: ink(style, 'ground'), 'stroke-width': 5 },
    { stroke: ink(style, 'ink'), 'stroke-width': 2.4, class: 'boundary' },
  ]
    .map((stroke) => element('path', { d, fill: 'none', 'stroke-linecap': 'square', ...stroke }))
    .join('');
}

function legendMarkup(
  states: readonly CellState[],
  top: number,
  keys: readonly LimitKey[],
  { width, style }: Sheet,
): { markup: string; height: number } {
  const size = style.fontSize;
  let x = 8;
  let y = top;
  const place = (room: number) => {
    if (x + room > width && x > 8) {
      x = 8;
      y += LEGEND_ROW;
    }
    const at = { x, y };
    x += room;
    return at;
  };
  const label = (text: string, at: { x: number; y: number }) =>
    textElement(text, { x: at.x, y: at.y + 14, 'font-size': size, fill: ink(style, 'ink') });
  const entries = states.map((state) => {
    const { words } = KINDS[state];
    const at = place(LETTER + 22 + textWidth(words, size));
    const box = element('rect', {
      ...at,
      width: LETTER + 4,
      height: LETTER + 4,
      fill: fillOf(state, style),
      stroke: ink(style, 'zero'),
    });
    const letter = letterMarkup(state, at.x + (LETTER + 4) / 2, at.y + (LETTER + 4) / 2, style);
    return box + letter + label(words, { x: at.x + LETTER + 10, y: at.y });
  });
  if (keys.length > 0) place(width);
  const meanings = keys.map(({ letter, criterion }, k) => {
    if (k === 0) x = 8;
    const text = `${letter}: ${criterion === '' ? RUN_ITSELF : criterionWords(criterion).toLowerCase()}`;
    return label(text, place(textWidth(text, size) + 18));
  });
  return {
    markup: `<g class="legend">${entries.join('')}${meanings.join('')}</g>`,
    height: y + LEGEND_ROW - top,
  };
}
