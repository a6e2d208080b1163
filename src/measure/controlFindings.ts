import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import type { ContactorName } from '../starter/starter.ts';

/** Something about the control that a reader must know before any figure. */
export type ControlFinding =
  /** Braking was never ended: the machine has run up in the other direction. `speed` at the end, rad/s. */
  | { readonly kind: 'runsUpInReverse'; readonly contactor: ContactorName; readonly speed: number }
  /** A contactor stays in although its coil is dead, and the machine runs at the end; rad/s. */
  | {
      readonly kind: 'doesNotStop';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly speed: number;
    }
  /** A coil is energised though nobody has pressed anything. */
  | {
      readonly kind: 'startsByItself';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly cause: string;
    }
  /** A stop that should brake leaves the machine coasting; speed at the command, rad/s. */
  | { readonly kind: 'notBraked'; readonly t: number; readonly speed: number }
  /** A coil drops because the control voltage dips, so many times. */
  | {
      readonly kind: 'voltageDrops';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly times: number;
    }
  /** Both coils are energised and only the mechanical interlock keeps a contactor out. */
  | { readonly kind: 'heldByInterlock'; readonly contactor: ContactorName; readonly t: number }
  /** The overload relay trips. */
  | { readonly kind: 'overloadTrips'; readonly t: number };

/** Slower than this fraction of synchronous speed the machine counts as standing. */
const STANDING_FRACTION = 0.05;

const CONTACTORS = ['forward', 'reverse'] as const;

/** What happened in the control that decides about everything else, the gravest first. */
export function controlFindings(trajectory: Trajectory): readonly ControlFinding[] {
  return [
    ...runsUp(trajectory),
    ...goesOn(trajectory),
    ...byItself(trajectory),
    ...coasts(trajectory),
    ...drops(trajectory),
    ...held(trajectory),
    ...trips(trajectory),
  ];
}

function synchronous({ scenario }: Trajectory): number {
  return (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
}

function runsUp(trajectory: Trajectory): readonly ControlFinding[] {
  const { status, tEnd, commands } = trajectory;
  const last = commands.at(-1);
  if (status.code !== 'switchNeverOpened' || last?.do !== 'plug') return [];
  const contactor = energisedAtEnd(trajectory);
  const { speed } = trajectory.at(tEnd);
  const drives = contactor === 'forward' ? 1 : -1;
  if (contactor === null || drives * speed < STANDING_FRACTION * synchronous(trajectory)) return [];
  return [{ kind: 'runsUpInReverse', contactor, speed }];
}

function energisedAtEnd({ events }: Trajectory): ContactorName | null {
  for (const event of events.toReversed()) {
    if (event.kind === 'coilReleased') return null;
    if (event.kind === 'coilEnergised') return event.contactor ?? null;
  }
  return null;
}

function goesOn(trajectory: Trajectory): readonly ControlFinding[] {
  const { speed } = trajectory.at(trajectory.tEnd);
  if (trajectory.shortCircuit !== null) return [];
  if (Math.abs(speed) < STANDING_FRACTION * synchronous(trajectory)) return [];
  const stuck = trajectory.events.find((event) => event.kind === 'contactorSticks');
  if (stuck?.contactor === undefined) return [];
  return [{ kind: 'doesNotStop', contactor: stuck.contactor, t: stuck.t, speed }];
}

/** What may bring a coil in without anybody's hand on a start or stop button. */
const NO_HAND: readonly RunEvent['kind'][] = [
  'supplyReturns',
  'voltageRecovers',
  'emergencyStopReleased',
  'overloadResets',
  'switchCloses',
];

function byItself({ events }: Trajectory): readonly ControlFinding[] {
  return events.flatMap((event): readonly ControlFinding[] => {
    if (event.kind !== 'coilEnergised' || event.rootTime === undefined || event.contactor === undefined)
      return [];
    const atRoot = events.filter(({ t }) => t === event.rootTime);
    // A coil that only comes back after a dip of its own voltage is a chatter, told elsewhere.
    if (
      atRoot.some(({ kind }) => kind === 'voltageRecovers') &&
      !atRoot.some(({ kind }) => kind === 'supplyReturns')
    )
      return [];
    const root = atRoot.find(({ kind }) => NO_HAND.includes(kind));
    if (root === undefined) return [];
    return [{ kind: 'startsByItself', contactor: event.contactor, t: event.t, cause: root.text }];
  });
}

/** Schemes in which a stop is meant to brake. */
const BRAKING = ['plugStop', 'plugStopBoth', 'jog'];

function coasts(trajectory: Trajectory): readonly ControlFinding[] {
  const { starter } = trajectory.scenario;
  if (starter.control === undefined || !BRAKING.includes(starter.control.scheme)) return [];
  const pickUp = starter.zeroSpeedSwitch?.pickUpSpeed ?? Number.POSITIVE_INFINITY;
  return trajectory.commands.flatMap((command): readonly ControlFinding[] => {
    const byHand = trajectory.events.some(
      ({ t, kind }) => t === command.at && (kind === 'buttonPressed' || kind === 'buttonReleased'),
    );
    const { speed } = trajectory.at(command.at, 'left');
    const stuck = trajectory.events.some(({ kind }) => kind === 'contactorSticks');
    if (command.do !== 'coast' || !byHand || stuck || Math.abs(speed) <= pickUp) return [];
    return [{ kind: 'notBraked', t: command.at, speed }];
  });
}

function drops({ events }: Trajectory): readonly ControlFinding[] {
  return CONTACTORS.flatMap((contactor): readonly ControlFinding[] => {
    const dipped = events.filter(
      (event) =>
        event.kind === 'coilReleased' &&
        event.contactor === contactor &&
        events.some(({ kind, t }) => kind === 'voltageDips' && t === event.t) &&
        !events.some(({ kind, t }) => (kind === 'supplyLost' || kind === 'phaseLost') && t === event.t),
    );
    const [first] = dipped;
    return first === undefined ? [] : [{ kind: 'voltageDrops', contactor, t: first.t, times: dipped.length }];
  });
}

function held({ events }: Trajectory): readonly ControlFinding[] {
  const blocked = events.find((event) => event.kind === 'interlockBlocks');
  return blocked?.contactor === undefined
    ? []
    : [{ kind: 'heldByInterlock', contactor: blocked.contactor, t: blocked.t }];
}

function trips({ events }: Trajectory): readonly ControlFinding[] {
  const trip = events.find((event) => event.kind === 'overloadTrips');
  return trip === undefined ? [] : [{ kind: 'overloadTrips', t: trip.t }];
}
