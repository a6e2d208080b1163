import { contactorTimes } from './contactorTimes.ts';
import type { StarterData, StarterFault } from './scenario.ts';
import { writeQuantity as write } from './writeQuantity.ts';

/** The starter section of a file, in SI units with all digits. */
export function renderStarter(starter: StarterData): Readonly<Record<string, unknown>> {
  const { zeroSpeedSwitch, lineResistors, plugConnection, windingOrder, faults } = starter;
  return {
    poles: starter.poles,
    closingTime: write(starter.closingTime, 's'),
    openingTime: write(starter.openingTime, 's'),
    closingScatter: starter.closingScatter.map((time) => write(time, 's')),
    openingScatter: starter.openingScatter.map((time) => write(time, 's')),
    ...renderChangeover(starter),
    minimumArcingTime: write(starter.minimumArcingTime, 's'),
    exchangedPhases: starter.exchangedPhases,
    zeroSpeedSwitch:
      zeroSpeedSwitch === null
        ? 'off'
        : {
            dropOutSpeed: write(zeroSpeedSwitch.dropOutSpeed, 'rad/s'),
            pickUpSpeed: write(zeroSpeedSwitch.pickUpSpeed, 'rad/s'),
            delay: write(zeroSpeedSwitch.delay, 's'),
          },
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
    ...(faults === undefined ? {} : { faults: faults.map(renderFault) }),
  };
}

function renderFault(fault: StarterFault): Readonly<Record<string, string>> {
  switch (fault.kind) {
    case 'lostPhase':
      return { kind: 'lost phase', phase: fault.phase, at: write(fault.from, 's') };
    case 'weldedPole':
      return { kind: 'welded pole', contactor: fault.contactor, pole: fault.pole };
    case 'deadPole':
      return { kind: 'dead pole', contactor: fault.contactor, pole: fault.pole };
    default:
      return fault satisfies never;
  }
}

function renderChangeover(starter: StarterData): Readonly<Record<string, string>> {
  const { closingTime, openingTime, changeoverDelay, changeoverGivenAs } = starter;
  if (changeoverGivenAs === 'default' && changeoverDelay === openingTime) return {};
  if (changeoverGivenAs === 'deadTime') {
    const deadTime = Math.max(0, changeoverDelay + closingTime - openingTime);
    const parsed = contactorTimes({ closingTime, openingTime, deadTime });
    if (parsed.changeoverDelay === changeoverDelay) return { deadTime: write(deadTime, 's') };
  }
  return { changeoverDelay: write(changeoverDelay, 's') };
}
