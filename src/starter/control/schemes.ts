import type { ControlData, SchemeName, StarterData } from '../../scenario/scenario.ts';
import { brakeForward, brakeReverse, memoryRelays } from './braking.ts';
import { feed, limitTimer, lockoutSolenoid, readyRelay, withChangeoverTimers } from './commonCircuits.ts';
import {
  coil,
  command,
  contact,
  either,
  follow,
  forwardBreak,
  forwardHolds,
  forwardMake,
  forwardOut,
  holds,
  make,
  reverseBreak,
  reverseHolds,
  reverseMake,
  reverseOut,
  run,
  stop,
  turnsForward,
} from './contacts.ts';
import type { CoilCircuit, ControlCircuit } from './controlCircuit.ts';

const TITLES: Readonly<Record<SchemeName, string>> = {
  throughStop: 'Reversing only through stop',
  direct: 'Reversing directly',
  plugStop: 'Plug to stop, one direction',
  plugStopBoth: 'Plug to stop, both directions',
  antiPlugging: 'Reversing with anti-plugging',
  jog: 'Inching in both directions with plug to stop',
};

/**
 * The control circuit of a starter.
 *
 * @param control what the scenario says of it
 * @param lockout the zero-speed switch has a lockout solenoid
 */
export function controlCircuit(control: ControlData, lockout: boolean): ControlCircuit {
  const { coils } = SCHEMES[control.scheme](control);
  const timed = control.changeoverTimer > 0 ? withChangeoverTimers(coils, control.changeoverTimer) : coils;
  return {
    title: TITLES[control.scheme],
    feed: feed(control),
    coils: [
      ...limitTimer(control),
      ...(control.readyRelay ? [readyRelay(control)] : []),
      ...timed,
      ...(lockout ? [lockoutSolenoid(coils)] : []),
    ],
  };
}

/** The control circuit of a starter; null where it has none. */
export function circuitOfStarter(starter: StarterData): ControlCircuit | null {
  if (starter.control === undefined) return null;
  return controlCircuit(starter.control, starter.zeroSpeedSwitch?.lockout === true);
}

type SchemeTable = (control: ControlData) => { readonly coils: readonly CoilCircuit[] };

const SCHEMES: Readonly<Record<SchemeName, SchemeTable>> = {
  throughStop: (control) => ({
    coils: [
      coil('forwardContactor', [reverseOut], [command(control, stop, either(forwardMake, forwardHolds))]),
      coil('reverseContactor', [forwardOut], [command(control, stop, either(reverseMake, reverseHolds))]),
    ],
  }),

  direct: (control) => ({
    coils: [
      coil(
        'forwardContactor',
        [reverseOut],
        [command(control, stop, reverseBreak, either(forwardMake, forwardHolds))],
      ),
      coil(
        'reverseContactor',
        [forwardOut],
        [command(control, stop, forwardBreak, either(reverseMake, reverseHolds))],
      ),
    ],
  }),

  antiPlugging: (control) => ({
    coils: [
      coil(
        'forwardContactor',
        [reverseOut, contact('switchReverse', 'break', '31-32')],
        [command(control, stop, reverseBreak, either(forwardMake, forwardHolds))],
      ),
      coil(
        'reverseContactor',
        [forwardOut, contact('switchForward', 'break', '11-12')],
        [command(control, stop, forwardBreak, either(reverseMake, reverseHolds))],
      ),
    ],
  }),

  plugStop: (control) => ({
    coils: [
      coil('forwardContactor', [reverseOut], [command(control, stop, either(forwardMake, forwardHolds))]),
      ...(control.memoryRelay
        ? [
            coil(
              'forwardMemory',
              [],
              [
                follow(
                  turnsForward('23-24'),
                  either(make('forwardContactor', '33-34'), make('forwardMemory', '13-14')),
                ),
              ],
            ),
          ]
        : []),
      coil('reverseContactor', [forwardOut], [brakeForward(control)]),
    ],
  }),

  plugStopBoth: (control) => ({
    coils: [
      coil(
        'forwardRun',
        [contact('reverseRun', 'break', '21-22')],
        [command(control, stop, reverseBreak, either(forwardMake, holds('forwardRun')))],
      ),
      coil(
        'reverseRun',
        [contact('forwardRun', 'break', '21-22')],
        [command(control, stop, forwardBreak, either(reverseMake, holds('reverseRun')))],
      ),
      ...memoryRelays(control),
      coil('forwardContactor', [reverseOut], [run('forwardRun'), brakeReverse(control)]),
      coil('reverseContactor', [forwardOut], [run('reverseRun'), brakeForward(control)]),
    ],
  }),

  jog: (control) => ({
    coils: [
      ...memoryRelays(control),
      coil(
        'forwardContactor',
        [reverseOut],
        [command(control, stop, reverseBreak, forwardMake), brakeReverse(control)],
      ),
      coil(
        'reverseContactor',
        [forwardOut],
        [command(control, stop, forwardBreak, reverseMake), brakeForward(control)],
      ),
    ],
  }),
};
