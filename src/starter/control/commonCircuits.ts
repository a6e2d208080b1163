import type { ControlData } from '../../scenario/scenario.ts';
import { coil, contact, either, follow, holds, make } from './contacts.ts';
import type { Branch, CoilCircuit, Network } from './controlCircuit.ts';

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

/** Both contactors have been out for the timer's time before one picks up; once in, it bypasses the timer. */
export function withChangeoverTimer(coils: readonly CoilCircuit[], time: number): readonly CoilCircuit[] {
  const isContactor = ({ coil: name }: CoilCircuit) =>
    name === 'forwardContactor' || name === 'reverseContactor';
  const timer: CoilCircuit = {
    ...coil(
      'changeoverTimer',
      [],
      [follow(contact('forwardContactor', 'break', '41-42'), contact('reverseContactor', 'break', '41-42'))],
    ),
    delay: { kind: 'onDelay', time },
  };
  const delayed = coils.map((one): CoilCircuit => {
    if (!isContactor(one)) return one;
    const late = either(make('changeoverTimer', '17-18'), make(one.coil, '53-54'));
    return { ...one, guard: { series: [one.guard, late] } };
  });
  return [timer, ...delayed];
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
