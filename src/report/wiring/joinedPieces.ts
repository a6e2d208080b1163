import type { Point } from './drawing.ts';

/** A straight conductor. */
export type Piece = readonly [Point, Point];

/** Horizontal and vertical pieces with those that overlap or continue each other in one line made one. */
export function joinedPieces(pieces: readonly Piece[]): readonly Piece[] {
  const level = pieces.filter(([a, b]) => a.y === b.y);
  const upright = pieces.filter(([a, b]) => a.y !== b.y);
  return [
    ...inLines(
      level,
      (point) => point.y,
      (point) => point.x,
    ).map(
      ([y, from, to]): Piece => [
        { x: from, y },
        { x: to, y },
      ],
    ),
    ...inLines(
      upright,
      (point) => point.x,
      (point) => point.y,
    ).map(
      ([x, from, to]): Piece => [
        { x, y: from },
        { x, y: to },
      ],
    ),
  ];
}

/** [place of the line, from, to] of every stretch. */
function inLines(
  pieces: readonly Piece[],
  line: (point: Point) => number,
  along: (point: Point) => number,
): readonly (readonly [number, number, number])[] {
  const byLine = new Map<number, (readonly [number, number])[]>();
  for (const [a, b] of pieces) {
    const stretch = [Math.min(along(a), along(b)), Math.max(along(a), along(b))] as const;
    byLine.set(line(a), [...(byLine.get(line(a)) ?? []), stretch]);
  }
  return [...byLine].flatMap(([place, stretches]) => {
    const found: [number, number, number][] = [];
    for (const [from, to] of stretches.sort((a, b) => a[0] - b[0])) {
      const last = found.at(-1);
      if (last !== undefined && from <= last[2]) last[2] = Math.max(last[2], to);
      else found.push([place, from, to]);
    }
    return found;
  });
}
