import { brakes, SCHEME_OF_WORD } from '../controlWords.ts';
import type { Draft } from './draft.ts';
import type { ControlOption } from './edit.ts';
import { dropImpossibleFaults } from './faultsEdit.ts';
import { takeOverload } from './moveOverload.ts';
import { dropActions } from './schemeEdit.ts';
import { writeRounded } from './writeRounded.ts';

/** Of rated control voltage, %; IEC 60947-4-1 asks coils to operate at 85 % and to drop out between 20 % and 75 %. */
const PICK_UP = 80;
const DROP_OUT = 55;

const CONTROL = ['starter', 'control'];

/**
 * Chooses one thing about the control circuit.
 *
 * @returns why that cannot be, or null where it was done
 */
export function setControlOption(draft: Draft, option: ControlOption): string | null {
  const control = draft.input.starter?.control;
  if (control === undefined) return 'the scenario has no control circuit';
  const braking = brakes(SCHEME_OF_WORD[control.scheme]);
  const { key } = option;
  switch (key) {
    case 'memoryRelay':
      if (option.value && !braking) return `the scheme \`${control.scheme}\` does not brake`;
      draft.set([...CONTROL, key], option.value);
      return null;
    case 'readyRelay':
      draft.set([...CONTROL, key], option.value);
      if (!option.value) dropActions(draft, (word) => / reset$/u.test(word));
      return null;
    case 'mechanicalInterlock':
      draft.set([...CONTROL, key], option.value);
      dropImpossibleFaults(draft);
      return null;
    case 'changeoverTimer':
    case 'scanTime':
    case 'relayTime':
      draft.set([...CONTROL, key], writeRounded(option.value, 'time', draft.at(...CONTROL, key), 'ms'));
      return null;
    case 'emergencyStopLimit':
      return setEmergencyStop(draft, option.value, braking, control.scheme);
    case 'coilVoltage':
      if (option.value && control.coilVoltage !== undefined) return null;
      if (option.value) draft.set([...CONTROL, key], { pickUp: `${PICK_UP} %`, dropOut: `${DROP_OUT} %` });
      else draft.remove(...CONTROL, key);
      return null;
    case 'overload':
      return setOverload(draft, option.value);
    default:
      return key satisfies never;
  }
}

function setEmergencyStop(
  draft: Draft,
  limit: number | null,
  braking: boolean,
  scheme: string,
): string | null {
  const path = [...CONTROL, 'emergencyStop'];
  if (limit === null) {
    draft.remove(...path);
    return null;
  }
  if (!braking) return `the scheme \`${scheme}\` does not brake`;
  const written = writeRounded(limit, 'time', draft.at(...path, 'limit'), 's');
  if (draft.at(...path, 'category') === 1) draft.set([...path, 'limit'], written);
  else draft.set(path, { category: 1, limit: written });
  return null;
}

function setOverload(
  draft: Draft,
  value: Extract<ControlOption, { readonly key: 'overload' }>['value'],
): string | null {
  const path = [...CONTROL, 'overload'];
  if (value === null) {
    draft.remove(...path);
    dropActions(draft, (word) => / overload$/u.test(word));
    dropImpossibleFaults(draft);
    return null;
  }
  const { machine } = draft.input;
  const written = value === '10A' ? value : Number(value);
  const found = draft.at(...path);
  if (typeof found === 'object' && found !== null) {
    draft.set([...path, 'class'], written);
    return null;
  }
  const taken = takeOverload(draft);
  if (taken === null && (machine.nameplate?.current ?? machine.rated?.current) === undefined)
    return 'the scenario states no rated current to set the overload relay to';
  draft.set(path, { ...taken, class: written });
  return null;
}
