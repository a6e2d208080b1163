import { assertControl } from './assertControl.ts';
import { assertFault } from './assertFault.ts';
import type { Demands } from './demands.ts';
import type { MachineData, StarterData, SwitchSpeeds } from './scenario.ts';

/** Takes down what is impossible about a starter. */
export function assertStarter(starter: StarterData, machine: MachineData, demands: Demands): void {
  const { group, report, word } = demands;
  group('starter', starter, {
    closingTime: 'notNegative',
    openingTime: 'notNegative',
    changeoverDelay: 'notNegative',
    minimumArcingTime: 'notNegative',
  });
  if (starter?.zeroSpeedSwitch) {
    const { reverse, lockout } = starter.zeroSpeedSwitch;
    assertSpeeds('starter.zeroSpeedSwitch', starter.zeroSpeedSwitch, demands);
    group('starter.zeroSpeedSwitch', starter.zeroSpeedSwitch, { delay: 'notNegative' });
    if (reverse !== undefined) assertSpeeds('starter.zeroSpeedSwitch.reverse', reverse, demands);
    if (lockout !== undefined && lockout !== true)
      report('starter.zeroSpeedSwitch.lockout', lockout, 'true, or this key left out');
  }
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
  if (starter?.brake !== undefined) {
    group('starter.brake', starter.brake, { torque: 'notNegative', delay: 'notNegative' });
    word('starter.brake.sets', starter.brake.sets, ['onCommand', 'afterPlugging']);
  }
  if (starter?.injection !== undefined)
    group('starter.injection', starter.injection, {
      voltage: 'positive',
      resistance: 'notNegative',
      delay: 'notNegative',
      closingTime: 'notNegative',
      ...(starter.injection.duration === null ? {} : { duration: 'positive' }),
    });
  if (starter?.control !== undefined) assertControl(starter.control, starter, demands);
  for (const [j, fault] of (starter?.faults ?? []).entries())
    assertFault(fault, `starter.faults.${j}`, demands);
}

/** Speeds of one direction. */
function assertSpeeds(path: string, speeds: SwitchSpeeds, { group, report }: Demands): void {
  group(path, speeds, { dropOutSpeed: 'notNegative', pickUpSpeed: 'positive' });
  if (speeds?.dropOutSpeed >= speeds?.pickUpSpeed)
    report(`${path}.dropOutSpeed`, speeds.dropOutSpeed, 'a speed below the pick-up speed');
}
