import { actionImpossibilities, type Deed } from './actionChecks.ts';
import { COMMAND_OF_WORD, isCommandWord, meaningOf } from './actionWords.ts';
import { controlImpossibilities } from './controlChecks.ts';
import { faultImpossibilities } from './faultChecks.ts';
import { INITIAL_STATES } from './initialStates.ts';
import { type FaultInput, resolveFault } from './resolveFault.ts';
import type { RuleContext } from './rule.ts';
import { viewOfInput } from './starterView.ts';
import { type StopDevicesView, stopDeviceImpossibilities } from './stopDeviceChecks.ts';

/** The control circuit with what it needs, faults of what is there, and actions that it knows. */
export function controlRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  const view = viewOfInput(context);
  const initial = isStated('initial') ? input.initial && INITIAL_STATES[input.initial] : 'rest';
  const faults = (input.starter?.faults ?? []).map((fault) =>
    isWhole(fault) ? resolveFault(fault) : undefined,
  );
  const deeds = (input.actions ?? []).map((action): Deed | undefined => {
    if (action?.do === undefined) return undefined;
    return isCommandWord(action.do) ? { do: COMMAND_OF_WORD[action.do] } : meaningOf(action.do);
  });
  for (const { path, message, expected } of [
    ...controlImpossibilities(view, initial),
    ...faultImpossibilities(view, faults),
    ...actionImpossibilities(view, deeds),
    ...stopDeviceImpossibilities(stopDevices(context, view.hasSwitch), deeds),
  ])
    report(path, 'conflict', message, expected);
  if (view.control === null) return;
  for (const key of ['changeoverDelay', 'deadTime'])
    if (isStated('starter', key)) {
      const message = 'stands beside control, where the dead time is what comes out';
      report(['starter', key], 'conflict', message, '`changeoverTimer` under control, or this key left out');
    }
  settingRule(context);
}

function stopDevices({ input, isStated }: RuleContext, hasSwitch: boolean | undefined): StopDevicesView {
  const duration = isStated('starter', 'injection', 'duration')
    ? input.starter?.injection?.duration
    : 'until the switch opens';
  return {
    hasBrake: isStated('starter', 'brake'),
    hasInjection: isStated('starter', 'injection'),
    hasSwitch,
    endsWithSwitch: duration === undefined ? undefined : duration === 'until the switch opens',
  };
}

/** A fault of a list is read as a whole or not at all. */
function isWhole(fault: unknown): fault is FaultInput {
  return fault !== undefined;
}

function settingRule({ input, isStated, report }: RuleContext): void {
  const overload = input.starter?.control?.overload;
  if (typeof overload !== 'object' || overload.setting !== undefined) return;
  if (isStated('machine', 'nameplate', 'current') || isStated('machine', 'rated', 'current')) return;
  const message = 'is missing, and the machine states no rated current';
  const expected = 'a current such as `14.6 A`, or `current` under rated';
  report(['starter', 'control', 'overload', 'setting'], 'missingKey', message, expected);
}
