import type { Deed } from './actionChecks.ts';
import type { Impossibility } from './starterView.ts';

/** What stands beside the actions that stop otherwise; undefined where it is not known. */
export interface StopDevicesView {
  readonly hasBrake: boolean;
  readonly hasInjection: boolean;
  readonly hasSwitch: boolean | undefined;
  /** The injection ends with the zero-speed switch. */
  readonly endsWithSwitch: boolean | undefined;
}

/** A brake or direct current that is asked for and not there, and a direct current that nothing ends. */
export function stopDeviceImpossibilities(
  view: StopDevicesView,
  deeds: readonly (Deed | undefined)[],
): readonly Impossibility[] {
  const lacking = deeds.flatMap((deed, index): Impossibility[] => {
    const path = ['actions', index, 'do'];
    if (deed?.do === 'brake' && !view.hasBrake)
      return [{ path, message: 'acts on a brake that is not stated', expected: '`brake` under starter' }];
    if (deed?.do === 'injectDc' && !view.hasInjection)
      return [
        {
          path,
          message: 'acts on a source of direct current that is not stated',
          expected: '`injection` under starter',
        },
      ];
    return [];
  });
  if (!(view.hasInjection && view.endsWithSwitch === true && view.hasSwitch === false)) return lacking;
  return [
    ...lacking,
    {
      path: ['starter', 'injection'],
      message: 'lasts until the zero-speed switch opens, and there is no such switch',
      expected: '`zeroSpeedSwitch` with its speeds, or `duration` with a time',
    },
  ];
}
