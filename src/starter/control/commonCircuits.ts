import type { ControlData } from '../../scenario/scenario.ts';
import { coil, contact, either, follow, holds, make } from './contacts.ts';
import type { Branch, CoilCircuit, CoilDevice, Network } from './controlCircuit.ts';

/** Overload relay and emergency stop ahead of every coil: what they open no other contact closes. */
export function feed(control: ControlData): Network {
  const emergency =
    control.emergencyStop.category === 0
      ? contact('emergencyStop', 'break', '11-12')
      : make('limitTimer', '17-18');
  return { series: [contact('overload', 'break', '95-96'), emergency] };
}

/** Category 1: released by the emergency stop, its late contact kills the feed. */
export function limitTimer({ emergencyStop }: ControlData): readonly CoilCircuit[] {
  if (emergencyStop.category === 0) return [];
  const branch: Branch = {
    purpose: 'follow',
    network: { series: [contact('emergencyStop', 'break', '11-12')] },
  };
  return [
    {
      coil: 'limitTimer',
      guard: { series: [] },
      branches: [branch],
      aheadOfFeed: true,
      delay: { kind: 'offDelay', time: emergencyStop.limit },
    },
  ];
}

/** Set by the reset button while nobody presses a start button; drops with the supply and with what stands in its feed. */
export function readyRelay(control: ControlData): CoilCircuit {
  const starts: readonly Network[] = [
    contact('forwardButton', 'break', '31-32'),
    // With one direction there is no reverse button.
    ...(control.scheme === 'plugStop' ? [] : [contact('reverseButton', 'break', '31-32')]),
  ];
  const set: Network = { series: [make('resetButton', '13-14'), ...starts] };
  const emergency = control.emergencyStop.category === 1 ? [contact('emergencyStop', 'break', '21-22')] : [];
  return coil('ready', emergency, [follow(either(set, holds('ready')))]);
}

/**
 * A contactor picks up only when the other one has been out for the timer's time. Each has a timer of its own, run by the other's
 * break contact: with one timer for both, a start pressed within the dead time would bring both in together.
 */
export function withChangeoverTimers(coils: readonly CoilCircuit[], time: number): readonly CoilCircuit[] {
  const timer = (name: CoilDevice, other: CoilDevice): CoilCircuit => ({
    ...coil(name, [], [follow(contact(other, 'break', '41-42'))]),
    delay: { kind: 'onDelay', time },
  });
  const delayed = coils.map((one): CoilCircuit => {
    if (one.coil !== 'forwardContactor' && one.coil !== 'reverseContactor') return one;
    const late = make(one.coil === 'forwardContactor' ? 'forwardTimer' : 'reverseTimer', '17-18');
    return { ...one, guard: { series: [one.guard, late] } };
  });
  return [timer('forwardTimer', 'reverseContactor'), timer('reverseTimer', 'forwardContactor'), ...delayed];
}

/** Lets the zero-speed switch be actuated only while a contactor is in that may drive the machine. */
export function lockoutSolenoid(coils: readonly CoilCircuit[]): CoilCircuit {
  const drives = coils.filter(
    ({ coil: name, branches }) =>
      (name === 'forwardContactor' || name === 'reverseContactor') &&
      branches.some(({ purpose }) => purpose === 'command'),
  );
  return coil('lockout', [], [follow(either(...drives.map(({ coil: name }) => make(name, '63-64'))))]);
}
