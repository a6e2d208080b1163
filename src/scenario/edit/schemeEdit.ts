import { brakes, SCHEME_OF_WORD, WORD_OF_SCHEME } from '../controlWords.ts';
import { INITIAL_STATES } from '../initialStates.ts';
import type { InitialState, SchemeName } from '../scenario.ts';
import { synchronousSpeed } from '../synchronousSpeed.ts';
import { nothing, writeInstant } from './actionEdits.ts';
import type { Draft } from './draft.ts';
import { dropImpossibleFaults } from './faultsEdit.ts';
import { returnOverload, takeOverload } from './moveOverload.ts';
import { poleCount } from './poleCount.ts';
import { buttonsOf, commandsOf, type WrittenAction } from './translateActions.ts';
import type { Plain } from './writeFlow.ts';
import { writeRounded } from './writeRounded.ts';

/** Drop-out and pick-up speed of a switch that a scheme brings with it, of synchronous speed. Common practice, no source. */
const DROP_OUT = 0.04;
const PICK_UP = 0.08;

/** rad/s; synchronous speed where a text does not tell the poles: four of them at 50 Hz. */
const SYNCHRONOUS_SPEED = 50 * Math.PI;

/** Trip class of an overload relay that a scheme brings with it: for ordinary starts. */
const USUAL_CLASS = 10;

/**
 * Gives a scenario another control circuit, or none.
 *
 * @param scheme null: commands act on the coils
 */
export function setScheme(draft: Draft, scheme: SchemeName | null): string | null {
  const { control } = draft.input.starter ?? {};
  const before = control === undefined ? null : SCHEME_OF_WORD[control.scheme];
  if (scheme === before) return null;
  const initial = INITIAL_STATES[draft.input.initial ?? 'rest'];
  if (scheme === null && before !== null) removeControl(draft, before, initial);
  else if (scheme !== null && before === null) createControl(draft, scheme, initial);
  else if (scheme !== null) changeScheme(draft, scheme);
  if (scheme === null || scheme === 'antiPlugging') draft.remove('starter', 'zeroSpeedSwitch', 'lockout');
  dropImpossibleFaults(draft);
  return null;
}

function removeControl(draft: Draft, before: SchemeName, initial: InitialState): void {
  returnOverload(draft);
  draft.remove('starter', 'control');
  setActions(draft, commandsOf(draft.input.actions, before, initial));
}

function createControl(draft: Draft, scheme: SchemeName, initial: InitialState): void {
  const { machine } = draft.input;
  draft.remove('starter', 'deadTime');
  draft.remove('starter', 'changeoverDelay');
  const knowsCurrent = (machine.nameplate?.current ?? machine.rated?.current) !== undefined;
  const overload = takeOverload(draft) ?? (knowsCurrent ? { class: USUAL_CLASS } : null);
  draft.set(['starter', 'control'], {
    scheme: WORD_OF_SCHEME[scheme],
    ...(brakes(scheme) ? { memoryRelay: true } : {}),
    ...(overload === null ? {} : { overload }),
  });
  bringSwitch(draft, scheme);
  const start = fitInitial(draft, scheme, initial);
  setActions(draft, buttonsOf(draft.input.actions, scheme, start));
}

function changeScheme(draft: Draft, scheme: SchemeName): void {
  const path = ['starter', 'control'];
  draft.set([...path, 'scheme'], WORD_OF_SCHEME[scheme]);
  if (brakes(scheme)) {
    if (draft.at(...path, 'memoryRelay') === undefined) draft.set([...path, 'memoryRelay'], true);
  } else {
    draft.remove(...path, 'memoryRelay');
    if (draft.input.starter?.control?.emergencyStop?.category === 1) draft.remove(...path, 'emergencyStop');
  }
  bringSwitch(draft, scheme);
  fitInitial(draft, scheme, INITIAL_STATES[draft.input.initial ?? 'rest']);
  if (scheme === 'plugStop') dropActions(draft, (word) => / reverse$/u.test(word));
}

/** Takes actions on what is not there any more out of the list. */
export function dropActions(draft: Draft, isGone: (word: string) => boolean): void {
  const written = draft.at('actions') as readonly Plain[];
  const kept = written.filter((_, index) => !isGone(draft.input.actions[index]?.do ?? ''));
  if (kept.length < written.length) draft.setList(['actions'], kept.length > 0 ? kept : [nothing(draft)]);
}

function setActions(draft: Draft, actions: readonly WrittenAction[]): void {
  const written = actions.map(({ at, do: word }) => ({ at: writeInstant(at), do: word }));
  draft.setList(['actions'], written.length > 0 ? written : [nothing(draft)]);
}

function bringSwitch(draft: Draft, scheme: SchemeName): void {
  const found = draft.at('starter', 'zeroSpeedSwitch');
  const needed = brakes(scheme) || scheme === 'antiPlugging';
  if (!needed || (found !== undefined && found !== 'off')) return;
  const poles = poleCount(draft.input);
  const synchronous =
    poles === null ? SYNCHRONOUS_SPEED : synchronousSpeed(draft.input.supply.frequency, poles);
  draft.set(['starter', 'zeroSpeedSwitch'], {
    dropOutSpeed: writeRounded(DROP_OUT * synchronous, 'speed', undefined, 'rpm'),
    pickUpSpeed: writeRounded(PICK_UP * synchronous, 'speed', undefined, 'rpm'),
  });
}

/** A machine that the scheme could not have brought to run begins at rest, or in the one direction there is. */
function fitInitial(draft: Draft, scheme: SchemeName, initial: InitialState): InitialState {
  if (scheme === 'jog' && initial !== 'rest') {
    draft.set(['initial'], 'rest');
    return 'rest';
  }
  if (scheme !== 'plugStop' || initial !== 'runningReverse') return initial;
  draft.set(['initial'], 'running forward');
  return 'runningForward';
}
