import { raised } from '../../numeric/raised.ts';
import type { Survey, VariedField } from '../spec/survey.ts';

/** One field as the search sees it: a coordinate from 0 to 1. */
interface Axis {
  /** The ends are the same place: the coordinate goes from 0 up to, not including, 1 and round again. */
  readonly circular: boolean;
  /** The field's number, in its unit, at a coordinate; the ends of the range exactly at 0 and 1. */
  readonly valueAt: (coordinate: number) => number;
}

/** Where a search looks: the unit cube over the fields, its circular axes closed to rings. */
export interface SearchSpace {
  readonly axes: readonly Axis[];
  /** The nearest point that lies inside; round the ring on circular axes. */
  readonly inside: (point: readonly number[]) => number[];
  /** The way from one point to another, the shorter way round on circular axes. */
  readonly way: (from: readonly number[], to: readonly number[]) => number[];
  /** Whether two points are nearer than a distance. */
  readonly isWithin: (distance: number, a: readonly number[], b: readonly number[]) => boolean;
  /** The fields' numbers at a point, in their units. */
  readonly valuesAt: (point: readonly number[]) => number[];
}

/** One turn in the units of an angle. */
const TURN: Readonly<Record<string, number>> = { deg: 360, rad: 2 * Math.PI, rev: 1 };
/** How far a range may be off a turn: an angle in rad is written with some digits. Share of a turn. */
const TURN_TOLERANCE = 1e-4;

/**
 * The space that a worst-case survey searches.
 *
 * @throws RangeError when a field has no range
 */
export function searchSpace({ fields }: Pick<Survey, 'fields'>): SearchSpace {
  const axes = fields.map(axisOf);
  return {
    axes,
    inside: (point) => point.map((u, i) => (axes[i]!.circular ? withinRing(u) : Math.min(1, Math.max(0, u)))),
    way: (from, to) =>
      to.map((u, i) => {
        const step = u - from[i]!;
        return axes[i]!.circular ? step - Math.round(step) : step;
      }),
    isWithin: (distance, a, b) => {
      let rest = distance * distance;
      for (let i = 0; i < a.length && rest > 0; i++) {
        const step = a[i]! - b[i]!;
        const short = axes[i]!.circular ? step - Math.round(step) : step;
        rest -= short * short;
      }
      return rest > 0;
    },
    valuesAt: (point) => point.map((u, i) => axes[i]!.valueAt(u)),
  };
}

/** Square of the length of a way. */
export function squaredLength(way: readonly number[]): number {
  return way.reduce((sum, step) => sum + step * step, 0);
}

function axisOf({ path, unit, spread }: VariedField): Axis {
  if (spread.kind !== 'uniform' && spread.kind !== 'logUniform')
    throw new RangeError(`${path}: a search needs a uniform or logarithmic range, not ${spread.kind}`);
  const { kind, from, to } = spread;
  const between = (value: number) => Math.min(to, Math.max(from, value));
  const turn = TURN[unit];
  return {
    circular: kind === 'uniform' && turn !== undefined && Math.abs(to - from - turn) <= TURN_TOLERANCE * turn,
    valueAt: (u) => {
      if (u <= 0) return from;
      if (u >= 1) return to;
      return between(kind === 'uniform' ? from + u * (to - from) : from * raised(to / from, u));
    },
  };
}

function withinRing(u: number): number {
  const rest = u - Math.floor(u);
  // A tiny negative number is rounded up to a whole turn.
  return rest < 1 ? rest : 0;
}
