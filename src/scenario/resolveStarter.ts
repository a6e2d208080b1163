import { type ContactorTimes, contactorTimes } from './contactorTimes.ts';
import { derivedValue, type Note, within } from './origin.ts';
import { resolveControl } from './resolveControl.ts';
import { resolveFault } from './resolveFault.ts';
import type { LineResistorData, StarterData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { resolveBrake, resolveInjection } from './stopDevices.ts';

/**
 * Fills in the starter; see `contactorTimes` for the times.
 *
 * @param input starter as stated, in SI
 * @param ratedCurrent of the machine, A; null where it is not known
 * @param note takes down what was not given
 */
export function resolveStarter(
  input: NonNullable<ScenarioInput['starter']>,
  ratedCurrent: number | null,
  note: Note,
): StarterData {
  const times = timesOf(input);
  const { lineResistors, plugConnection, windingOrder, brake, injection, control, faults } = input;
  const noteDefault = (key: keyof typeof input, value: string) => {
    if (input[key] === undefined) note(key, value, 'default');
  };
  noteDefault('poles', 'arcing');
  noteDefault('closingTime', derivedValue(times.closingTime * 1e3, 'ms'));
  noteDefault('openingTime', derivedValue(times.openingTime * 1e3, 'ms'));
  noteDefault('closingScatter', '0 ms, 0 ms, 0 ms');
  noteDefault('openingScatter', '0 ms, 0 ms, 0 ms');
  if (times.changeoverGivenAs !== 'delay' && control === undefined) {
    const kind = times.changeoverGivenAs === 'default' ? 'default' : 'derived';
    note('changeoverDelay', derivedValue(times.changeoverDelay * 1e3, 'ms'), kind);
  }
  noteDefault('minimumArcingTime', '0 ms');
  noteDefault('exchangedPhases', 'BC');
  noteDefault('zeroSpeedSwitch', 'off');
  const zeroSpeedSwitch = input.zeroSpeedSwitch ?? 'off';
  if (zeroSpeedSwitch !== 'off' && zeroSpeedSwitch.delay === undefined) {
    note('zeroSpeedSwitch.delay', '0 ms', 'default');
  }
  for (const [index, fault] of (faults ?? []).entries())
    if (fault.kind === 'supply lost' && fault.until === undefined)
      note(`faults.${index}.until`, 'never', 'default');
  if (plugConnection !== undefined) noteDefault('windingOrder', 'AB');
  return {
    ...times,
    closingScatter: input.closingScatter ?? [0, 0, 0],
    openingScatter: input.openingScatter ?? [0, 0, 0],
    poles: input.poles ?? 'arcing',
    minimumArcingTime: input.minimumArcingTime ?? 0,
    exchangedPhases: input.exchangedPhases ?? 'BC',
    zeroSpeedSwitch:
      zeroSpeedSwitch === 'off'
        ? null
        : {
            dropOutSpeed: zeroSpeedSwitch.dropOutSpeed,
            pickUpSpeed: zeroSpeedSwitch.pickUpSpeed,
            ...(zeroSpeedSwitch.reverse === undefined ? {} : { reverse: zeroSpeedSwitch.reverse }),
            ...(zeroSpeedSwitch.lockout === true ? { lockout: true } : {}),
            delay: zeroSpeedSwitch.delay ?? 0,
          },
    ...(lineResistors === undefined
      ? {}
      : { lineResistors: resolveLineResistors(lineResistors, times, within('lineResistors', note)) }),
    ...(plugConnection === undefined ? {} : { plugConnection }),
    ...(windingOrder === undefined ? {} : { windingOrder }),
    ...(brake === undefined ? {} : { brake: resolveBrake(brake, note) }),
    ...(injection === undefined ? {} : { injection: resolveInjection(injection, times.closingTime, note) }),
    ...(control === undefined
      ? {}
      : { control: resolveControl(control, ratedCurrent, within('control', note)) }),
    ...(faults === undefined ? {} : { faults: faults.map(resolveFault) }),
  };
}

/** With a control circuit the change-over is what comes out. */
function timesOf(input: NonNullable<ScenarioInput['starter']>): ContactorTimes {
  const times = contactorTimes(input);
  return input.control === undefined ? times : { ...times, changeoverDelay: 0, changeoverGivenAs: 'default' };
}

function resolveLineResistors(
  input: NonNullable<NonNullable<ScenarioInput['starter']>['lineResistors']>,
  times: ContactorTimes,
  note: Note,
): LineResistorData {
  for (const key of ['closingTime', 'openingTime'] as const)
    if (input[key] === undefined) note(key, derivedValue(times[key] * 1e3, 'ms'), 'default');
  if (input.bypassAfter === undefined) note('bypassAfter', 'never', 'default');
  const bypassAfter = input.bypassAfter ?? 'never';
  return {
    resistance: input.resistance,
    closingTime: input.closingTime ?? times.closingTime,
    openingTime: input.openingTime ?? times.openingTime,
    bypassAfter: bypassAfter === 'never' ? null : bypassAfter,
  };
}
