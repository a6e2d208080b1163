import { type ButtonWord, WORD_OF_COMMAND } from '../actionWords.ts';
import type { Draft } from './draft.ts';
import type { Edit } from './edit.ts';
import type { Plain } from './writeFlow.ts';

/** s; a stated end of the run that leaves an action less time than this gives way to one that waits for what comes of it. */
const TIME_TO_WORK = 5;

/** Decimals of an instant in s: a hundredth of a millisecond, finer than any contact. */
const INSTANT_DECIMALS = 5;

/** An instant as it is written. */
export function writeInstant(t: number): string {
  return `${Number(t.toFixed(INSTANT_DECIMALS))} s`;
}

/** A hand on a button; what was done later is forgotten. */
export function addButton(draft: Draft, edit: Extract<Edit, { readonly kind: 'button' }>): string | null {
  if (draft.input.starter?.control === undefined) return 'without a control circuit there are no buttons';
  const word = buttonWord(edit);
  if (word === null) return 'that button lets go by itself';
  append(draft, edit.at, word, (at, now) => at <= now);
  return null;
}

function buttonWord({ do: verb, button }: Extract<Edit, { readonly kind: 'button' }>): ButtonWord | null {
  switch (button) {
    case 'overloadTest':
      return verb === 'release' ? null : 'trip overload';
    case 'overloadReset':
      return verb === 'release' ? null : 'reset overload';
    case 'emergencyStop':
      return verb === 'release' ? 'release emergency stop' : 'press emergency stop';
    default:
      return `${verb} ${button}`;
  }
}

/** A command to the coils; what was commanded later is forgotten. */
export function addCommand(draft: Draft, edit: Extract<Edit, { readonly kind: 'command' }>): string | null {
  const { starter } = draft.input;
  if (starter?.control !== undefined) return 'with a control circuit only its buttons are pressed';
  if (edit.do === 'brake' && starter?.brake === undefined) return 'the scenario has no brake';
  if (edit.do === 'injectDc' && starter?.injection === undefined)
    return 'the scenario has no source of direct current';
  // What holds anyhow must be said before a plug.
  if (edit.do === 'plug' && starter?.zeroSpeedSwitch === undefined)
    draft.set(['starter', 'zeroSpeedSwitch'], 'off');
  append(draft, edit.at, WORD_OF_COMMAND[edit.do], (at, now) => at < now);
  return null;
}

function append(draft: Draft, at: number, word: string, stays: (at: number, now: number) => boolean): void {
  const now = Number(at.toFixed(INSTANT_DECIMALS));
  const written = draft.at('actions') as readonly Plain[];
  const kept = written.filter((_, index) => {
    const action = draft.input.actions[index];
    return action !== undefined && stays(action.at, now) && !isNothing(draft, index);
  });
  draft.setList(['actions'], [...kept, { at: writeInstant(at), do: word }]);
  const end = draft.input.solver?.endTime;
  if (typeof end === 'number' && end < now + TIME_TO_WORK) draft.set(['solver', 'endTime'], 'auto');
}

/** No hand has done anything yet. */
export function clearActions(draft: Draft): null {
  draft.setList(['actions'], [nothing(draft)]);
  return null;
}

/** A list of actions must not be empty; this one changes nothing. */
export function nothing(draft: Draft): { readonly at: string; readonly do: string } {
  const at = writeInstant(0);
  if (draft.at('starter', 'control') !== undefined) return { at, do: 'release stop' };
  const initial = draft.at('initial');
  if (initial === 'running forward') return { at, do: 'start forward' };
  return { at, do: initial === 'running reverse' ? 'start reverse' : 'coast' };
}

/** True for the action that only keeps the list from being empty. */
function isNothing(draft: Draft, index: number): boolean {
  const action = draft.input.actions[index];
  return action?.at === 0 && draft.input.actions.length === 1 && action.do === nothing(draft).do;
}

/** The run lasts until then, s. */
export function setEndTime(draft: Draft, value: number | 'auto'): null {
  if (value === draft.input.solver?.endTime) return null;
  if (value !== 'auto') draft.set(['solver', 'endTime'], writeInstant(value));
  else if (draft.at('solver', 'endTime') !== undefined) draft.set(['solver', 'endTime'], 'auto');
  return null;
}
