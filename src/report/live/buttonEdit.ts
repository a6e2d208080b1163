import type { Edit } from '../../scenario/edit/edit.ts';
import type { ButtonName, Scenario } from '../../scenario/scenario.ts';

/** How a button stands when a hand comes. */
export interface ButtonTouch {
  readonly button: ButtonName;
  /** Somebody keeps it pressed now, or it has latched. */
  readonly held: boolean;
  /** The hand shall stay on it until it is touched again. */
  readonly keep: boolean;
  /** s */
  readonly at: number;
}

/**
 * What one touch of a button does: a held button is let go; an emergency stop latches; inching lasts as long as the hand stays; all
 * others are let go by themselves, unless the hand shall stay.
 */
export function buttonEdit(
  { starter }: Scenario,
  { button, held, keep, at }: ButtonTouch,
): Extract<Edit, { readonly kind: 'button' }> {
  const press = { kind: 'button', at, do: 'press', button } as const;
  if (button === 'overloadTest' || button === 'overloadReset') return press;
  if (held) return { ...press, do: 'release' };
  if (button === 'emergencyStop') return press;
  const inches = starter.control?.scheme === 'jog' && (button === 'forward' || button === 'reverse');
  return keep || inches ? { ...press, do: 'hold' } : press;
}
