import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import { SUPPLY_END } from './controlSupply.ts';
import type { Point } from './drawing.ts';
import type { ControlLayout } from './layoutControl.ts';
import { type LegendEntry, legendHeight, legendWidth } from './legend.ts';
import { pathOffsets } from './pathOffsets.ts';
import { type Grid, onSheet, referencesHeight } from './placeControl.ts';
import type { PowerCircuit } from './powerCircuit.ts';
import type { SymbolSet } from './symbolSet.ts';
import { titleBlockHeight } from './titleBlock.ts';

/** Size of a sheet and where its parts stand, px. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly grid: Grid;
  readonly legend: { readonly left: number; readonly width: number; readonly bottom: number };
}

/** Distance of the frame from the edge of the sheet, px. */
export const FRAME = 8;
/** Height of the lines' upper ends on the sheet, px. */
export const TOP = 62;

/** A4 across at 96 px per inch, px. A fuller drawing takes a larger sheet, which is printed smaller. */
const SMALLEST_WIDTH = 1122;
/** Width over height of A4 across inside margins of 10 mm, a little flatter so that rounding starts no second page. */
const RATIO = 277 / 189;
const MARGIN = 2 * FRAME;

/** Length of a slot: least and most, px. */
const SLOT: Readonly<Record<SymbolSet, readonly [number, number]>> = { iec: [58, 72], us: [84, 112] };
/** Distance of the lines of a North American drawing: least and most, px. */
const LINE: readonly [number, number] = [42, 56];
/** Most that the paths of an IEC drawing are moved apart, px. */
const APART = 56;
/** Room for what is written beside the right rail of a North American drawing, px. */
const BESIDE = 140;
/** Room right of the last path of an IEC drawing, px. */
const LAST_PATH = 48;

/** Clear space between the circuits and a legend on their right, and above the title block, px. */
const LEGEND_GAP = 30;
const FOOT_GAP = 8;

/** What a sheet has to hold. */
export interface SheetContent {
  readonly circuit: ControlCircuit;
  readonly layout: ControlLayout;
  readonly power: PowerCircuit;
  readonly symbols: SymbolSet;
  readonly entries: readonly LegendEntry[];
  readonly notes: readonly string[];
}

/** Chooses the smallest sheet, with the legend below or on the right, and moves slots and paths apart where there is room. */
export function planSheet(content: SheetContent): Sheet {
  const { layout, symbols, entries, notes } = content;
  const foot = titleBlockHeight(notes) + FRAME;
  const least = extent(content, gridOf(content, 0, 0));

  const column = legendWidth(entries);
  const onRight = sheetWidth(
    least.x + LEGEND_GAP + column + MARGIN,
    Math.max(least.y, TOP + legendHeight(entries, 0)) + FOOT_GAP + foot,
  );
  const wide = Math.max(SMALLEST_WIDTH, least.x + FRAME);
  const belowHeight = (width: number) => legendHeight(entries, width - 2 * MARGIN) + 20;
  const below = sheetWidth(wide, least.y + belowHeight(wide) + foot);

  const width = Math.min(onRight, below);
  const height = Math.round(width / RATIO);
  const right = onRight <= below;
  const free = {
    x: width - (right ? column + MARGIN + LEGEND_GAP : FRAME) - least.x,
    y: height - foot - (right ? FOOT_GAP : belowHeight(width)) - least.y,
  };
  const [along, across] = symbols === 'iec' ? [free.y, free.x] : [free.x, free.y];
  const longer = share(along, layout.back.u - layout.supply.u, SLOT[symbols][1] - SLOT[symbols][0]);
  const apart = share(across, layout.paths.at(-1)!, symbols === 'iec' ? APART : LINE[1] - LINE[0]);
  return {
    width,
    height,
    grid: gridOf(content, longer, apart),
    legend: right
      ? { left: width - MARGIN - column, width: column, bottom: TOP - 24 + legendHeight(entries, 0) }
      : { left: MARGIN, width: width - 2 * MARGIN, bottom: height - foot - 8 },
  };
}

/** Width of the smallest sheet that is wide and high enough, px. */
function sheetWidth(wideEnough: number, highEnough: number): number {
  return Math.ceil(Math.max(SMALLEST_WIDTH, wideEnough, highEnough * RATIO));
}

/** What each of some parts gets of free space, in whole px, at most `most`. */
function share(space: number, parts: number, most: number): number {
  return Math.min(most, Math.max(0, Math.floor(space / Math.max(1, parts))));
}

/** Right and lower edge of both circuits. */
function extent({ circuit, layout, power, symbols }: SheetContent, grid: Grid): Point {
  const last = onSheet(grid, { u: layout.back.u, v: layout.paths.at(-1)! });
  const under = symbols === 'iec' ? referencesHeight(circuit, layout) + 20 : 30;
  return {
    x: last.x + (symbols === 'iec' ? LAST_PATH : BESIDE),
    y: Math.max(power.bottom, last.y + under),
  };
}

/**
 * @param longer added to the length of a slot, px
 * @param apart added to the distance of the paths, px
 */
function gridOf({ circuit, layout, power, symbols }: SheetContent, longer: number, apart: number): Grid {
  const slot = SLOT[symbols][0] + longer;
  const [upper, lower] = power.taps.y;
  if (symbols === 'us') {
    const origin = { x: SUPPLY_END + 40 - layout.supply.u * slot, y: lower + 32 };
    return { symbols, origin, slot, across: (v) => v * (LINE[0] + apart) };
  }
  const offsets = pathOffsets(circuit, layout);
  return {
    symbols,
    origin: { x: SUPPLY_END + 72, y: upper - layout.supply.u * slot },
    slot,
    across: (v) => offsets[v]! + v * apart,
  };
}
