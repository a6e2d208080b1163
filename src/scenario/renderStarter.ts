import { contactorTimes } from './contactorTimes.ts';
import { renderControl } from './renderControl.ts';
import { renderFault } from './renderFault.ts';
import type { StarterData, SwitchSpeeds, ZeroSpeedSwitchData } from './scenario.ts';
import { renderStopDevices } from './stopDevices.ts';
import { writeQuantity as write } from './writeQuantity.ts';

/** The starter section of a file, in SI units with all digits. */
export function renderStarter(starter: StarterData): Readonly<Record<string, unknown>> {
  const { zeroSpeedSwitch, lineResistors, plugConnection, windingOrder, control, faults } = starter;
  return {
    poles: starter.poles,
    closingTime: write(starter.closingTime, 's'),
    openingTime: write(starter.openingTime, 's'),
    closingScatter: starter.closingScatter.map((time) => write(time, 's')),
    openingScatter: starter.openingScatter.map((time) => write(time, 's')),
    ...renderChangeover(starter),
    minimumArcingTime: write(starter.minimumArcingTime, 's'),
    exchangedPhases: starter.exchangedPhases,
    zeroSpeedSwitch: zeroSpeedSwitch === null ? 'off' : renderSwitch(zeroSpeedSwitch),
    ...(lineResistors === undefined
      ? {}
      : {
          lineResistors: {
            resistance: write(lineResistors.resistance, 'ohm'),
            closingTime: write(lineResistors.closingTime, 's'),
            openingTime: write(lineResistors.openingTime, 's'),
            bypassAfter: lineResistors.bypassAfter === null ? 'never' : write(lineResistors.bypassAfter, 's'),
          },
        }),
    ...(plugConnection === undefined ? {} : { plugConnection }),
    ...(windingOrder === undefined ? {} : { windingOrder }),
    ...renderStopDevices(starter),
    ...(control === undefined ? {} : { control: renderControl(control) }),
    ...(faults === undefined ? {} : { faults: faults.map(renderFault) }),
  };
}

function renderSwitch(data: ZeroSpeedSwitchData): Readonly<Record<string, unknown>> {
  const { reverse, lockout } = data;
  return {
    ...renderSpeeds(data),
    ...(reverse === undefined ? {} : { reverse: renderSpeeds(reverse) }),
    ...(lockout === undefined ? {} : { lockout }),
    delay: write(data.delay, 's'),
  };
}

function renderSpeeds({ dropOutSpeed, pickUpSpeed }: SwitchSpeeds): Readonly<Record<string, string>> {
  return { dropOutSpeed: write(dropOutSpeed, 'rad/s'), pickUpSpeed: write(pickUpSpeed, 'rad/s') };
}

/** With a control circuit the change-over is what comes out. */
function renderChangeover(starter: StarterData): Readonly<Record<string, string>> {
  const { closingTime, openingTime, changeoverDelay, changeoverGivenAs } = starter;
  if (starter.control !== undefined) return {};
  if (changeoverGivenAs === 'default' && changeoverDelay === openingTime) return {};
  if (changeoverGivenAs === 'deadTime') {
    const deadTime = Math.max(0, changeoverDelay + closingTime - openingTime);
    const parsed = contactorTimes({ closingTime, openingTime, deadTime });
    if (parsed.changeoverDelay === changeoverDelay) return { deadTime: write(deadTime, 's') };
  }
  return { changeoverDelay: write(changeoverDelay, 's') };
}
