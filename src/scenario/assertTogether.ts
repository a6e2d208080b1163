import { actionImpossibilities, deedOf } from './actionChecks.ts';
import { controlImpossibilities } from './controlChecks.ts';
import type { Demands } from './demands.ts';
import { faultImpossibilities } from './faultChecks.ts';
import type { Scenario } from './scenario.ts';
import { viewOfData } from './starterView.ts';
import { stopDeviceImpossibilities } from './stopDeviceChecks.ts';

/**
 * Takes down what cannot stand beside each other: the control circuit and what it needs, faults of what is there, actions that
 * it knows.
 *
 * @param scenario whose starter and actions are possible by themselves
 * @param demands collects the problems
 */
export function assertTogether({ starter, initial, actions }: Scenario, { conflict }: Demands): void {
  const view = viewOfData(starter);
  for (const { path, message, expected } of [
    ...controlImpossibilities(view, initial),
    ...faultImpossibilities(view, starter.faults ?? []),
    ...actionImpossibilities(view, actions.map(deedOf)),
    ...stopDeviceImpossibilities(
      {
        hasBrake: starter.brake !== undefined,
        hasInjection: starter.injection !== undefined,
        hasSwitch: starter.zeroSpeedSwitch !== null,
        endsWithSwitch: starter.injection?.duration === null,
      },
      actions.map(deedOf),
    ),
  ])
    conflict(path.join('.'), message, expected);
}
