import { derivedValue, type Note } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import type { BrakeData, InjectionData } from './starterData.ts';
import { writeQuantity as write } from './writeQuantity.ts';

type StarterInput = NonNullable<ScenarioInput['starter']>;

/** Fills in a mechanical brake. */
export function resolveBrake(input: NonNullable<StarterInput['brake']>, note: Note): BrakeData {
  if (input.sets === undefined) note('brake.sets', 'on command', 'default');
  return {
    torque: input.torque,
    delay: input.delay,
    sets: input.sets === 'after plugging' ? 'afterPlugging' : 'onCommand',
  };
}

/**
 * Fills in a source of direct current.
 *
 * @param closingTime of the other contactors, s
 */
export function resolveInjection(
  input: NonNullable<StarterInput['injection']>,
  closingTime: number,
  note: Note,
): InjectionData {
  if (input.closingTime === undefined)
    note('injection.closingTime', derivedValue(closingTime * 1e3, 'ms'), 'default');
  if (input.duration === undefined) note('injection.duration', 'until the switch opens', 'default');
  const { duration } = input;
  return {
    voltage: input.voltage,
    resistance: input.resistance,
    delay: input.delay,
    closingTime: input.closingTime ?? closingTime,
    duration: typeof duration === 'number' ? duration : null,
  };
}

/** Both in the form of a file. */
export function renderStopDevices(starter: {
  readonly brake?: BrakeData;
  readonly injection?: InjectionData;
}): Readonly<Record<string, unknown>> {
  const { brake, injection } = starter;
  return {
    ...(brake === undefined
      ? {}
      : {
          brake: {
            torque: write(brake.torque, 'N m'),
            delay: write(brake.delay, 's'),
            sets: brake.sets === 'afterPlugging' ? 'after plugging' : 'on command',
          },
        }),
    ...(injection === undefined
      ? {}
      : {
          injection: {
            voltage: write(injection.voltage, 'V'),
            resistance: write(injection.resistance, 'ohm'),
            delay: write(injection.delay, 's'),
            closingTime: write(injection.closingTime, 's'),
            duration: injection.duration === null ? 'until the switch opens' : write(injection.duration, 's'),
          },
        }),
  };
}
