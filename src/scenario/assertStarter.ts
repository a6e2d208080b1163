import type { Demands } from './demands.ts';
import type { MachineData, StarterData } from './scenario.ts';

const PHASES = ['A', 'B', 'C'] as const;
const CONTACTORS = ['forward', 'reverse'] as const;

/** Takes down what is impossible about a starter. */
export function assertStarter(starter: StarterData, machine: MachineData, demands: Demands): void {
  const { group, report, word } = demands;
  group('starter', starter, {
    closingTime: 'notNegative',
    openingTime: 'notNegative',
    changeoverDelay: 'notNegative',
    minimumArcingTime: 'notNegative',
  });
  if (starter?.zeroSpeedSwitch)
    group('starter.zeroSpeedSwitch', starter.zeroSpeedSwitch, {
      dropOutSpeed: 'notNegative',
      pickUpSpeed: 'positive',
      delay: 'notNegative',
    });
  if (starter?.lineResistors !== undefined) {
    const { lineResistors } = starter;
    group('starter.lineResistors', lineResistors, {
      resistance: 'notNegative',
      closingTime: 'notNegative',
      openingTime: 'notNegative',
      ...(lineResistors.bypassAfter === null ? {} : { bypassAfter: 'notNegative' }),
    });
  }
  if (starter?.plugConnection !== undefined) {
    word('starter.plugConnection', starter.plugConnection, ['star']);
    if (machine?.connection === 'star') report('starter.plugConnection', 'star', 'a delta machine');
  }
  if (starter?.windingOrder !== undefined) word('starter.windingOrder', starter.windingOrder, ['AB', 'AC']);
  for (const [j, fault] of (starter?.faults ?? []).entries()) {
    const path = `starter.faults.${j}`;
    word(`${path}.kind`, fault.kind, ['lostPhase', 'weldedPole', 'deadPole']);
    if (fault.kind === 'lostPhase') {
      word(`${path}.phase`, fault.phase, PHASES);
      group(path, fault, { from: 'notNegative' });
    } else {
      word(`${path}.contactor`, fault.contactor, CONTACTORS);
      word(`${path}.pole`, fault.pole, PHASES);
    }
  }
}
