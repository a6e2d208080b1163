import { SCHEME_OF_WORD } from './controlWords.ts';
import type { Path } from './place.ts';
import type { RuleContext } from './rule.ts';
import type { SchemeName, StarterData } from './starterData.ts';

/** What stands in a starter, as far as others depend on it; undefined where it is not known, as it was refused. */
export interface StarterView {
  /** null: no control circuit. */
  readonly control: ControlView | null;
  readonly hasSwitch: boolean | undefined;
  readonly hasLockout: boolean | undefined;
}

/** The same of a control circuit. */
export interface ControlView {
  readonly scheme: SchemeName | undefined;
  readonly memoryRelay: boolean | undefined;
  readonly readyRelay: boolean | undefined;
  readonly category: 0 | 1 | undefined;
  readonly mechanicalInterlock: boolean | undefined;
  readonly hasOverload: boolean | undefined;
}

/** Something that cannot stand beside something else. */
export interface Impossibility {
  readonly path: Path;
  readonly message: string;
  readonly expected: string;
}

/** The starter of a file. */
export function viewOfInput({ input, isStated }: RuleContext): StarterView {
  const { zeroSpeedSwitch: theSwitch, control } = input.starter ?? {};
  /** The value as read; the default where nothing stands. */
  const at = <T, D>(value: T | undefined, otherwise: D, ...path: Path): T | D | undefined =>
    isStated('starter', ...path) ? value : otherwise;
  const found = at(theSwitch, 'off' as const, 'zeroSpeedSwitch');
  const speeds = typeof found === 'object' ? found : undefined;
  const overload = at(control?.overload, 'none' as const, 'control', 'overload');
  return {
    control: isStated('starter', 'control')
      ? {
          scheme: control?.scheme && SCHEME_OF_WORD[control.scheme],
          memoryRelay: at(control?.memoryRelay, false, 'control', 'memoryRelay'),
          readyRelay: at(control?.readyRelay, false, 'control', 'readyRelay'),
          category: at(control?.emergencyStop?.category, 0, 'control', 'emergencyStop'),
          mechanicalInterlock: at(control?.mechanicalInterlock, true, 'control', 'mechanicalInterlock'),
          hasOverload: overload === undefined ? undefined : overload !== 'none',
        }
      : null,
    hasSwitch: found === undefined ? undefined : found !== 'off',
    hasLockout: at(speeds?.lockout, false, 'zeroSpeedSwitch', 'lockout'),
  };
}

/** The starter of a scenario object. */
export function viewOfData({ control, zeroSpeedSwitch }: StarterData): StarterView {
  return {
    control:
      control === undefined
        ? null
        : {
            scheme: control.scheme,
            memoryRelay: control.memoryRelay,
            readyRelay: control.readyRelay,
            category: control.emergencyStop?.category,
            mechanicalInterlock: control.mechanicalInterlock,
            hasOverload: control.overload !== null,
          },
    hasSwitch: zeroSpeedSwitch !== null,
    hasLockout: zeroSpeedSwitch?.lockout === true,
  };
}
