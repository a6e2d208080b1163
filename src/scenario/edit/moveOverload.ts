import type { Draft } from './draft.ts';
import type { Plain } from './writeFlow.ts';

/**
 * Takes the overload relay of a starter without a control circuit out of its place: the motor lines hold one, and with a control
 * circuit it stands there.
 *
 * @returns as written; null where there is none
 */
export function takeOverload(draft: Draft): Readonly<Record<string, Plain>> | null {
  const { overload, ...others } = (draft.at('protection') ?? {}) as Readonly<Record<string, Plain>>;
  if (overload === undefined) return null;
  if (Object.keys(others).length === 0) draft.remove('protection');
  else draft.remove('protection', 'overload');
  return overload as Readonly<Record<string, Plain>>;
}

/** Puts the overload relay of a control circuit back where it stands without one; before the control circuit goes. */
export function returnOverload(draft: Draft): void {
  const found = draft.at('starter', 'control', 'overload');
  if (typeof found !== 'object' || found === null) return;
  const { setting, class: tripClass } = found as Readonly<Record<string, Plain>>;
  draft.set(['protection', 'overload'], {
    ...(setting === undefined ? {} : { setting }),
    ...(tripClass === undefined ? {} : { class: tripClass }),
  });
}
