import type { Edit } from '../../scenario/edit/edit.ts';

/** True where a hand stays on the button, or the button latches, after what was done to it. */
export function heldAfter({ do: verb, button }: Extract<Edit, { readonly kind: 'button' }>): boolean {
  return verb === 'hold' || (verb === 'press' && button === 'emergencyStop');
}
