import { contactorTimes } from './contactorTimes.ts';
import { derivedValue, type Note } from './origin.ts';
import type { StarterData } from './scenario.ts';
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
  };
}
