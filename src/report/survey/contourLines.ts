/**
 * A straight piece of a contour line between two points of a map: columns and rows, counted in cells from
 * the middle of the first.
 */
export interface ContourPiece {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A point on the side of a square of four neighbouring cells. */
type Crossing = readonly [x: number, y: number];

/**
 * The line on which a table has a value, by linear interpolation between the middles of neighbouring cells
 * (marching squares; a
 * saddle is decided by the mean of its four corners). Squares with a missing corner have no line.
 *
 * @param cells cells[row][column]
 */
export function contourLines(cells: readonly (readonly (number | null)[])[], level: number): ContourPiece[] {
  const pieces: ContourPiece[] = [];
  for (let row = 0; row + 1 < cells.length; row++)
    for (let column = 0; column + 1 < cells[row]!.length; column++) {
      const corners = [
        cells[row]![column]!,
        cells[row]![column + 1]!,
        cells[row + 1]![column + 1]!,
        cells[row + 1]![column]!,
      ];
      if (corners.some((value) => value === null)) continue;
      for (const [a, b] of chords(corners, level))
        pieces.push({ x1: column + a[0], y1: row + a[1], x2: column + b[0], y2: row + b[1] });
    }
  return pieces;
}

/** Corners of the unit square in the order in which their values are given. */
const CORNERS: readonly Crossing[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

function chords(corners: readonly number[], level: number): (readonly [Crossing, Crossing])[] {
  const above = corners.map((value) => value >= level);
  const crossings = corners.flatMap((value, k): Crossing[] => {
    const next = (k + 1) % corners.length;
    if (above[k] === above[next]) return [];
    const share = (level - value) / (corners[next]! - value);
    const [from, to] = [CORNERS[k]!, CORNERS[next]!];
    return [[from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]];
  });
  const [a, b, c, d] = crossings;
  if (a === undefined || b === undefined) return [];
  if (c === undefined || d === undefined) return [[a, b]];
  // Four crossings: the corners on one diagonal are above. The middle says which pair of corners is cut off.
  const middle = corners.reduce((sum, value) => sum + value, 0) / corners.length >= level;
  return middle === above[0]
    ? [
        [a, b],
        [c, d],
      ]
    : [
        [d, a],
        [b, c],
      ];
}
