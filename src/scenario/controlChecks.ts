import { brakes, WORD_OF_SCHEME } from './controlWords.ts';
import type { InitialState } from './scenario.ts';
import type { ControlView, Impossibility, StarterView } from './starterView.ts';

const BRAKING = '`plug to stop`, `plug to stop both directions` or `inching`';

/**
 * What a control circuit lacks, or has to no purpose.
 *
 * @param view the starter
 * @param initial state at t = 0; undefined where it is not known
 */
export function controlImpossibilities(
  view: StarterView,
  initial: InitialState | undefined,
): readonly Impossibility[] {
  const { control, hasLockout } = view;
  if (control === null)
    return hasLockout === true
      ? [
          {
            path: ['starter', 'zeroSpeedSwitch', 'lockout'],
            message: 'needs a control circuit, whose contactors feed its solenoid',
            expected: '`control` under starter, or this key left out',
          },
        ]
      : [];
  return [
    ...switchNeeded(view, control),
    ...lockoutHides(view, control),
    ...brakingNeeded(control),
    ...stateReachable(control, initial),
  ];
}

/** A locked switch does not see a shaft that the load turns, and anti-plugging rests on seeing it. */
function lockoutHides({ hasLockout }: StarterView, { scheme }: ControlView): Impossibility[] {
  if (hasLockout !== true || scheme !== 'antiPlugging') return [];
  return [
    {
      path: ['starter', 'zeroSpeedSwitch', 'lockout'],
      message: 'keeps the switch from showing a shaft that the load turns, on which anti-plugging rests',
      expected: `one of the schemes ${BRAKING}, or this key left out`,
    },
  ];
}

function switchNeeded({ hasSwitch }: StarterView, { scheme }: ControlView): Impossibility[] {
  if (hasSwitch !== false || scheme === undefined) return [];
  const reason = brakes(scheme)
    ? 'which brakes until it opens: a device working only on time is not permitted by IEC 60204-1 for reverse-current braking'
    : 'which bars a direction by its contacts while the machine turns the other way';
  if (!brakes(scheme) && scheme !== 'antiPlugging') return [];
  return [
    {
      path: ['starter', 'zeroSpeedSwitch'],
      message: `is needed by the scheme ${WORD_OF_SCHEME[scheme]}, ${reason}`,
      expected: 'its speeds, such as `{ dropOutSpeed: 50 rpm, pickUpSpeed: 100 rpm }`, or another scheme',
    },
  ];
}

function brakingNeeded({ scheme, memoryRelay, category }: ControlView): Impossibility[] {
  if (scheme === undefined || brakes(scheme)) return [];
  const scheme1 = `the scheme ${WORD_OF_SCHEME[scheme]}, which does not brake`;
  return [
    ...(memoryRelay === true
      ? [
          {
            path: ['starter', 'control', 'memoryRelay'],
            message: `has no meaning in ${scheme1}`,
            expected: `one of the schemes ${BRAKING}, or this key left out`,
          },
        ]
      : []),
    ...(category === 1
      ? [
          {
            path: ['starter', 'control', 'emergencyStop', 'category'],
            message: `is 1, a stop by braking, in ${scheme1}`,
            expected: `category 0, or one of the schemes ${BRAKING}`,
          },
        ]
      : []),
  ];
}

/** A running machine runs as if its button had been pressed before. */
function stateReachable({ scheme }: ControlView, initial: InitialState | undefined): Impossibility[] {
  const impossible = (message: string, expected: string) => [{ path: ['initial'], message, expected }];
  if (scheme === 'jog' && (initial === 'runningForward' || initial === 'runningReverse'))
    return impossible(
      'is a running machine, and with inching it runs only while a button is held',
      '`rest` and an action that holds a button',
    );
  if (scheme === 'plugStop' && initial === 'runningReverse')
    return impossible(
      'is reverse rotation, and plug to stop runs in one direction',
      '`running forward`, or `plug to stop both directions`',
    );
  return [];
}
