import { type PartPoint, pointsOutOfOrder } from './risingPoints.ts';
import type { Impossibility } from './starterView.ts';

/** Protective devices as far as they depend on each other. */
export interface ProtectionView {
  readonly hasOverload: boolean;
  readonly curves: readonly (CurveView | undefined)[];
}

interface CurveView {
  readonly name?: string | undefined;
  readonly points?: readonly PartPoint<'time'>[] | undefined;
}

/**
 * What protective devices cannot be beside each other.
 *
 * @param view currents in A, times in s
 * @param controlHasOverload true where the control circuit holds an overload relay
 */
export function protectionImpossibilities(
  { hasOverload, curves }: ProtectionView,
  controlHasOverload: boolean,
): readonly Impossibility[] {
  const names = curves.map((curve) => curve?.name);
  return [
    ...(hasOverload && controlHasOverload
      ? [
          {
            path: ['protection', 'overload'],
            message: 'stands beside the overload relay of the control circuit; the motor lines hold one',
            expected: 'the one under starter.control only',
          },
        ]
      : []),
    ...curves.flatMap((curve, index) => [
      ...(curve?.name !== undefined && names.indexOf(curve.name) < index
        ? [
            {
              path: ['protection', 'curves', index, 'name'],
              message: 'is the name of a curve before it',
              expected: 'a name of its own',
            },
          ]
        : []),
      ...pointsOutOfOrder(curve?.points ?? [], ['protection', 'curves', index, 'points'], {
        key: 'time',
        falls: 'never rises',
      }),
    ]),
  ];
}
