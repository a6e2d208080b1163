import { type Drawing, wire } from './drawing.ts';
import { earthArt, iecFuse, transformerArt } from './iecDevice.ts';
import type { PowerCircuit } from './powerCircuit.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';
import { usFuse } from './usDevice.ts';

/** Designations and words of what feeds the control circuit. */
export const SUPPLY_DEVICES: readonly (readonly [string, string])[] = [
  ['F3', 'fuses ahead of the control transformer'],
  ['T1', 'control transformer'],
  ['F4', 'control fuse'],
];

/** Half the length of a fuse with its conductors, px. */
const FUSE = 20;
/** x of the middles of the fuses ahead, the transformer and the fuse behind. */
const AHEAD = 188;
const TRANSFORMER = 246;
const BEHIND = 306;
const TRANSFORMER_HALF = 34;

/** x where the fused conductor leaves for the control circuit. */
export const SUPPLY_END = BEHIND + FUSE;
/** x where the conductor back from the control circuit arrives. */
export const RETURN_END = TRANSFORMER + TRANSFORMER_HALF;

/**
 * Control transformer between the first two lines with its fuses. The fused secondary conductor leaves at `SUPPLY_END`; in the
 * IEC drawing it is the upper one, since its rail runs above the paths; in the North American one the lower, since its rail is on
 * the left.
 */
export function controlSupply({ taps }: PowerCircuit, symbols: SymbolSet): Drawing {
  const [upper, lower] = taps.y;
  const middle = (upper + lower) / 2;
  const fused = symbols === 'iec' ? upper : lower;
  const art = symbols === 'iec' ? iecFuse(FUSE) : usFuse(FUSE);
  const left = TRANSFORMER - TRANSFORMER_HALF;
  const right = RETURN_END;
  const fuse = (designation: string, x: number, y: number) => ({
    art,
    at: { x, y },
    turned: true as const,
    ends: [
      { x: x - FUSE, y },
      { x: x + FUSE, y },
    ],
    data: { symbol: 'fuse', designation: designationText(designation, symbols) },
    power: false,
  });
  const label = (designation: string, x: number, y: number) => ({
    text: designationText(designation, symbols),
    x,
    y,
    size: FONT.designation,
    anchor: 'middle' as const,
  });
  const mark = (text: string, x: number, y: number, anchor: 'start' | 'end') => ({
    text,
    x,
    y,
    size: FONT.mark,
    anchor,
  });
  return {
    wires: [
      wire(false, taps.x[0], upper, AHEAD - FUSE, upper),
      wire(false, taps.x[1], lower, AHEAD - FUSE, lower),
      wire(false, AHEAD + FUSE, upper, left, upper),
      wire(false, AHEAD + FUSE, lower, left, lower),
      wire(false, right, fused, BEHIND - FUSE, fused),
    ],
    symbols: [
      fuse('F3', AHEAD, upper),
      fuse('F3', AHEAD, lower),
      fuse('F4', BEHIND, fused),
      {
        art: transformerArt(TRANSFORMER_HALF, symbols === 'iec' ? 1 : 2),
        at: { x: TRANSFORMER, y: middle },
        ends: [
          { x: left, y: upper },
          { x: left, y: lower },
          { x: right, y: fused },
          { x: right, y: upper + lower - fused },
        ],
        data: { symbol: 'transformer' },
        power: false,
      },
    ],
    texts: [
      label('F3', AHEAD, upper - 10),
      label('T1', TRANSFORMER, upper - 10),
      label('F4', BEHIND, fused - 10),
      ...(symbols === 'us'
        ? [
            mark('H1', left + 2, upper - 4, 'start'),
            mark('H2', left + 2, lower + 12, 'start'),
            mark('X2', right - 2, upper - 4, 'end'),
            mark('X1', right - 2, lower + 12, 'end'),
          ]
        : []),
    ],
  };
}

/** Earth of the control circuit's return conductor, hanging from (x, y). */
export function controlEarth(x: number, y: number, symbols: SymbolSet): Drawing {
  return {
    wires: [],
    symbols: [
      {
        art: earthArt(symbols === 'iec'),
        at: { x, y },
        ends: [{ x, y }],
        data: { symbol: 'earth' },
        power: false,
      },
    ],
    texts: [],
  };
}
