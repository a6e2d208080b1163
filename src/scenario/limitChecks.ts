import type { LimitsData } from './judgementData.ts';
import type { Impossibility } from './starterView.ts';

/** Limits that hold at a radius. */
const AT_RADIUS = ['deceleration', 'tippingRatio', 'slidingFriction'] as const;

/** Limits as far as they depend on each other; null: not stated, undefined: not known, as it was refused. */
export type LimitsView = {
  readonly [K in (typeof AT_RADIUS)[number] | 'decelerationRadius']: LimitsData[K] | undefined;
};

/** Limits of what the load does at a radius, without the radius. */
export function limitImpossibilities(view: LimitsView): readonly Impossibility[] {
  if (view.decelerationRadius !== null) return [];
  return AT_RADIUS.filter((key) => typeof view[key] === 'number').map((key) => ({
    path: ['limits', key],
    message: 'has no meaning without decelerationRadius, at which it holds',
    expected: 'decelerationRadius beside it, such as `160 mm`',
  }));
}
