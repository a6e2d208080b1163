import type { Drawing, Point } from './drawing.ts';

/**
 * Places where a dot says that conductors are joined: three or more of them meet. Where one only crosses another nothing
 * ends, so there is no dot.
 */
export function junctions(drawing: Drawing): readonly Point[] {
  const ends = [
    ...drawing.symbols.flatMap((symbol) => symbol.ends),
    ...drawing.wires.flatMap(({ points }) => [points[0]!, points.at(-1)!]),
  ];
  const pieces = drawing.wires.flatMap(({ points }) =>
    points.slice(1).map((to, i) => ({ from: points[i]!, to })),
  );
  const corners = drawing.wires.flatMap(({ points }) => points.slice(1, -1));
  const counts = new Map<string, { at: Point; meeting: number }>();
  for (const at of ends) {
    const known = counts.get(keyOf(at));
    if (known === undefined) {
      // A conductor that passes goes away from the place in two directions, and so does one that turns a corner there.
      const passing = pieces.filter(({ from, to }) => isInside(at, from, to)).length;
      const turning = corners.filter((corner) => isNear(corner.x, at.x) && isNear(corner.y, at.y)).length;
      counts.set(keyOf(at), { at, meeting: 1 + 2 * (passing + turning) });
    } else known.meeting += 1;
  }
  return [...counts.values()].filter(({ meeting }) => meeting >= 3).map(({ at }) => at);
}

function keyOf({ x, y }: Point): string {
  return `${x.toFixed(2)},${y.toFixed(2)}`;
}

/** Strictly between the ends of a horizontal or vertical piece. */
function isInside(at: Point, from: Point, to: Point): boolean {
  return (
    (isNear(at.x, from.x) && isNear(at.x, to.x) && isBetween(at.y, from.y, to.y)) ||
    (isNear(at.y, from.y) && isNear(at.y, to.y) && isBetween(at.x, from.x, to.x))
  );
}

/** Coordinates are written with two decimals. */
function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) < 0.01;
}

function isBetween(value: number, a: number, b: number): boolean {
  return value > Math.min(a, b) + 0.01 && value < Math.max(a, b) - 0.01;
}
