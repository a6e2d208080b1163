import { type Drawing, type Point, together, wire, wiresOnly } from './drawing.ts';
import { FONT } from './symbolSet.ts';

/** x of three conductors or poles. */
export type Three = readonly [number, number, number];

/** Half the height of a device in the power circuit, px. */
export const HALF = 30;
/** Distance of the conductors that run across, px. */
const STEP = 12;

/** Three like devices in three conductors, one designation. */
export interface ThreePoleDevice {
  /** What programs know it by: `data-symbol`. */
  readonly symbol: 'pole' | 'disconnector' | 'fuse' | 'heater' | 'resistor';
  /** As written: "-K1". */
  readonly designation: string;
  readonly art: string;
  /** Marks of each pole's terminals; null: none. */
  readonly marks: readonly (readonly [string, string])[] | null;
  /** Which side its designation stands on. */
  readonly side: 'left' | 'right';
}

/** Main contacts, and whatever is marked like them. */
export const POLE_MARKS = [
  ['1', '2'],
  ['3', '4'],
  ['5', '6'],
] as const;

/** Draws three like devices with their middles at height `y`. */
export function threePole(device: ThreePoleDevice, xs: Three, y: number): Drawing {
  return {
    wires: [],
    symbols: xs.map((x, i) => ({
      art: device.art,
      at: { x, y },
      ends: [
        { x, y: y - HALF },
        { x, y: y + HALF },
      ],
      data: {
        symbol: device.symbol,
        designation: device.designation,
        ...(device.marks === null ? {} : { terminals: device.marks[i]!.join('-') }),
      },
      power: true,
    })),
    texts: [
      {
        text: device.designation,
        x: device.side === 'left' ? xs[0] - (device.symbol === 'disconnector' ? 26 : 16) : xs[2] + 18,
        y: y + 4,
        size: FONT.designation,
        anchor: device.side === 'left' ? 'end' : 'start',
      },
      ...(device.marks ?? []).flatMap(([top, bottom], i) => [
        { text: top, x: xs[i]! + 5, y: y - 17, size: FONT.mark, anchor: 'start' } as const,
        { text: bottom, x: xs[i]! + 5, y: y + 24, size: FONT.mark, anchor: 'start' } as const,
      ]),
    ],
  };
}

/** Height of two devices side by side with the conductors that run across above and below, px. */
export const BRIDGED_HEIGHT = 3 * STEP + 2 * HALF + 3 * STEP;

/** Where the middle of the devices stands below the top of the bridged part, px. */
export const BRIDGED_MIDDLE = 3 * STEP + HALF;

/**
 * One device in the conductors and a second beside it, fed from the same conductors. Pole p of the second leads back to
 * conductor `back[p]` below. Conductors across are stepped so that they cross only the conductors they must.
 */
export function bridged(
  inLine: ThreePoleDevice,
  beside: ThreePoleDevice,
  lines: Three,
  right: Three,
  back: Three,
  top: number,
): Drawing {
  const middle = top + BRIDGED_MIDDLE;
  const bottom = top + BRIDGED_HEIGHT;
  const wires = [0, 1, 2].flatMap((p) => {
    const line = lines[p]!;
    const x = right[p]!;
    const above = top + STEP * (2 - p);
    const below = middle + HALF + STEP * (p + 1) - 4;
    return [
      wire(true, line, top, line, middle - HALF),
      wire(true, line, middle + HALF, line, bottom),
      wire(true, line, above, x, above, x, middle - HALF),
      wire(true, x, middle + HALF, x, below, lines[back[p]!]!, below),
    ];
  });
  return together([wiresOnly(...wires), threePole(inLine, lines, middle), threePole(beside, right, middle)]);
}

/** A conductor straight down each line. */
export function down(lines: Three, from: number, to: number): Drawing {
  return wiresOnly(...lines.map((x) => wire(true, x, from, x, to)));
}

/** Where two mechanically linked groups of poles face each other. */
export function between(lines: Three, right: Three, y: number): Point {
  return { x: (lines[2] + right[0]) / 2, y };
}
