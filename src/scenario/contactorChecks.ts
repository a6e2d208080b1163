import { withUnit } from './field.ts';
import type { Path } from './place.ts';
import { type PartPoint, pointsOutOfOrder } from './risingPoints.ts';
import type { Impossibility } from './starterView.ts';

/** A contactor as far as its data depend on each other; null: not stated, undefined: not known, as it was refused. */
export interface ContactorView {
  readonly ratedCurrentAc3: number | null | undefined;
  readonly ratedCurrentAc4: number | null | undefined;
  readonly lifeAc4: number | null | undefined;
  readonly lifeTable: readonly PartPoint<'operations'>[] | null | undefined;
}

/**
 * What data of a contactor cannot be beside each other.
 *
 * @param view currents in A
 * @param path of the contactor
 */
export function contactorImpossibilities(view: ContactorView, path: Path): readonly Impossibility[] {
  const { ratedCurrentAc3: ac3, ratedCurrentAc4: ac4, lifeAc4, lifeTable } = view;
  const found: Impossibility[] = [];
  if (typeof ac3 === 'number' && typeof ac4 === 'number' && ac4 > ac3)
    found.push({
      path: [...path, 'ratedCurrentAc4'],
      message: `is above the ${withUnit(ac3, 'A')} of AC-3, which is the lighter duty`,
      expected: 'a current up to ratedCurrentAc3',
    });
  if (lifeAc4 !== null && ac4 === null)
    found.push({
      path: [...path, 'lifeAc4'],
      message: 'has no meaning without ratedCurrentAc4, at which it holds',
      expected: 'ratedCurrentAc4 beside it, or this key left out',
    });
  const law = { key: 'operations', falls: 'always' } as const;
  return [...found, ...pointsOutOfOrder(lifeTable ?? [], [...path, 'lifeTable'], law)];
}
