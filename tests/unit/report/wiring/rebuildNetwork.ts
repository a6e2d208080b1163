import type { Point, ReadDrawing, ReadSymbol } from './readDrawing.ts';

/** The conductors of a drawing as nodes, found from where its lines meet. */
export interface RebuiltNetwork {
  readonly node: (point: Point) => number;
  /** What a reader of the drawing would stumble over. */
  readonly faults: readonly string[];
}

/**
 * Joins what a drawing joins: lines and symbols that end at one place, and lines through a dot. Lines that cross without a dot
 * stay apart.
 */
export function rebuildNetwork(drawing: ReadDrawing): RebuiltNetwork {
  const keys = new Map<string, number>();
  const parent: number[] = [];
  const idOf = (point: Point): number => {
    const key = `${point.x},${point.y}`;
    const known = keys.get(key);
    if (known !== undefined) return known;
    const id = parent.length;
    keys.set(key, id);
    parent.push(id);
    return id;
  };
  const root = (id: number): number => (parent[id] === id ? id : root(parent[id]!));
  const join = (a: Point, b: Point) => {
    parent[root(idOf(a))] = root(idOf(b));
  };
  const faults: string[] = [];
  const isDotted = (point: Point) => drawing.dots.some((dot) => dot.x === point.x && dot.y === point.y);
  const pieces = drawing.wires.flatMap((wire) =>
    wire.slice(1).map((to, i) => ({ wire, from: wire[i]!, to })),
  );

  for (const wire of drawing.wires) {
    for (const point of wire) join(wire[0]!, point);
  }
  const ends = [
    ...drawing.symbols.flatMap((symbol) => symbol.ends),
    ...drawing.wires.flatMap((wire) => [wire[0]!, wire.at(-1)!]),
  ];
  for (const end of ends) {
    const meeting = ends.filter((other) => other.x === end.x && other.y === end.y).length;
    if (meeting >= 3 && !isDotted(end)) faults.push(`three ends without a dot at ${end.x}, ${end.y}`);
    for (const { wire, from, to } of pieces) {
      if (!isInside(end, from, to)) continue;
      if (!isDotted(end)) faults.push(`an end without a dot on a conductor at ${end.x}, ${end.y}`);
      join(end, wire[0]!);
    }
  }
  for (const dot of drawing.dots)
    for (const { wire, from, to } of pieces) if (isInside(dot, from, to)) join(dot, wire[0]!);
  for (const { from, to } of pieces)
    if (from.x !== to.x && from.y !== to.y) faults.push(`a slanting conductor at ${from.x}, ${from.y}`);
  return { node: (point) => root(idOf(point)), faults };
}

/** Nodes that hang together with a place through symbols that conduct. */
export function reachable(
  network: RebuiltNetwork,
  from: Point,
  conducting: readonly ReadSymbol[],
): ReadonlySet<number> {
  const edges = conducting.map(({ ends }) => [network.node(ends[0]!), network.node(ends[1]!)] as const);
  const found = new Set([network.node(from)]);
  for (let size = 0; size !== found.size; ) {
    size = found.size;
    for (const [a, b] of edges) {
      if (found.has(a)) found.add(b);
      if (found.has(b)) found.add(a);
    }
  }
  return found;
}

function isInside(at: Point, from: Point, to: Point): boolean {
  const within = (value: number, a: number, b: number) => value > Math.min(a, b) && value < Math.max(a, b);
  return (
    (at.x === from.x && at.x === to.x && within(at.y, from.y, to.y)) ||
    (at.y === from.y && at.y === to.y && within(at.x, from.x, to.x))
  );
}
