import type { SearchSpace } from './searchSpace.ts';

/** Share of a range at each end whose points are put on the bound, because extremes are often there. */
const EDGE = 0.06;
/** Corners are tried one and all where so many axes or fewer have ends: 32 corners. */
const MOST_CORNER_AXES = 5;

/**
 * Points that cover the cube ever more densely: the centre, the corners, then without end a sequence of low
 * discrepancy, of which a share lies on the bounds. No point twice.
 */
export function* exploration(
  space: SearchSpace,
  unitPoint: (index: number) => readonly number[],
): Generator<number[], never> {
  const { axes } = space;
  const known = new Set<string>();
  const isNew = (point: readonly number[]) => {
    const key = point.join();
    if (known.has(key)) return false;
    known.add(key);
    return true;
  };
  const centre = axes.map(() => 0.5);
  isNew(centre);
  yield centre;
  let index = 0;
  const straight = axes.flatMap(({ circular }, i) => (circular ? [] : [i]));
  if (straight.length > 0 && straight.length <= MOST_CORNER_AXES) {
    for (let corner = 0; corner < 1 << straight.length; corner++) {
      const point = [...unitPoint(index++)];
      straight.forEach((axis, bit) => {
        point[axis] = (corner >> bit) & 1;
      });
      if (isNew(point)) yield point;
    }
  }
  for (;;) {
    const point = unitPoint(index++).map((u, i) =>
      axes[i]!.circular ? u : Math.min(1, Math.max(0, (u - EDGE) / (1 - 2 * EDGE))),
    );
    if (isNew(point)) yield point;
  }
}
