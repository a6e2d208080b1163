import { logarithm } from '../../numeric/logarithm.ts';
import { raised } from '../../numeric/raised.ts';
/** A point of a table of life. */
export interface LifePoint {
  /** Breaking current, A r.m.s. */
  readonly current: number;
  readonly operations: number;
}

/**
 * Life at a current from a table: straight lines in the logarithms of both. Beyond the ends the slope of the last piece goes on,
 * and a remark says so.
 *
 * @param points at least one, currents ascending
 * @param exponent for a table of one point: life ∝ 1/current^exponent
 */
export function lifeFromTable(
  points: readonly LifePoint[],
  current: number,
  exponent: number,
): { readonly operations: number; readonly remark: string } {
  const [first, last] = [points[0]!, points.at(-1)!];
  const beyond = current < first.current ? 'below' : current > last.current ? 'above' : '';
  const remark =
    beyond === ''
      ? ''
      : `${current.toPrecision(3)} A lies ${beyond} the table of life, which is extrapolated with the slope at its end`;
  if (points.length === 1)
    return { operations: first.operations * raised(first.current / current, exponent), remark };
  const right = Math.max(
    1,
    points.findIndex((point) => point.current >= current),
  );
  const k = current > last.current ? points.length - 1 : right;
  const [a, b] = [points[k - 1]!, points[k]!];
  const share = logarithm(current / a.current) / logarithm(b.current / a.current);
  return { operations: a.operations * raised(b.operations / a.operations, share), remark };
}
