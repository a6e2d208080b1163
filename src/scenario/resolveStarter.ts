import { type ContactorTimes, contactorTimes } from './contactorTimes.ts';
import { derivedValue, type Note, within } from './origin.ts';
import type { LineResistorData, StarterData, StarterFault } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Fills in the starter; see `contactorTimes` for the times.
 *
 * @param input starter as stated, in SI
 * @param note takes down what was not given
 */
export function resolveStarter(input: NonNullable<ScenarioInput['starter']>, note: Note): StarterData {
  const times = contactorTimes(input);
  const noteDefault = (key: keyof typeof input, value: string) => {
    if (input[key] === undefined) note(key, value, 'default');
  };
  noteDefault('poles', 'arcing');
  noteDefault('closingTime', derivedValue(times.closingTime * 1e3, 'ms'));
  noteDefault('openingTime', derivedValue(times.openingTime * 1e3, 'ms'));
  noteDefault('closingScatter', '0 ms, 0 ms, 0 ms');
  noteDefault('openingScatter', '0 ms, 0 ms, 0 ms');
  if (times.changeoverGivenAs !== 'delay') {
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
  const { lineResistors, plugConnection, windingOrder, faults } = input;
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
            delay: zeroSpeedSwitch.delay ?? 0,
          },
    ...(lineResistors === undefined
      ? {}
      : { lineResistors: resolveLineResistors(lineResistors, times, within('lineResistors', note)) }),
    ...(plugConnection === undefined ? {} : { plugConnection }),
    ...(windingOrder === undefined ? {} : { windingOrder }),
    ...(faults === undefined ? {} : { faults: faults.map(resolveFault) }),
  };
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

type FaultInput = NonNullable<NonNullable<ScenarioInput['starter']>['faults']>[number];

function resolveFault(fault: FaultInput): StarterFault {
  switch (fault.kind) {
    case 'lost phase':
      return { kind: 'lostPhase', phase: fault.phase, from: fault.at };
    case 'welded pole':
      return { kind: 'weldedPole', contactor: fault.contactor, pole: fault.pole };
    case 'dead pole':
      return { kind: 'deadPole', contactor: fault.contactor, pole: fault.pole };
    default:
      return fault satisfies never;
  }
}
