import { synchronousSpeed } from '../scenario/synchronousSpeed.ts';
import { comesWithSupply, vainCoilEvents } from '../simulate/madeCommands.ts';
import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import type { Device } from '../starter/control/controlCircuit.ts';
import type { ContactorName } from '../starter/starter.ts';

/**
 * Something about the control that a reader must know before any figure. In all of them `t` is the instant, s, and `speed`
 * a speed of the motor shaft, rad/s: that at the end of the run, or at `t` where there is one; `cause` is what led to it,
 * in words, `times` the number of dips.
 */
export type ControlFinding =
  /** Braking was never ended: the machine has run up in the other direction. `speed` at the end, rad/s. */
  | { readonly kind: 'runsUpInReverse'; readonly contactor: ContactorName; readonly speed: number }
  /** A welded contactor stays in although its coil is dead, and the machine runs at the end; rad/s. */
  | {
      readonly kind: 'doesNotStop';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly speed: number;
    }
  /** The last thing asked for was a stop, and at the end the machine runs with a contactor in; rad/s. */
  | { readonly kind: 'stillRuns'; readonly contactor: ContactorName; readonly speed: number }
  /** A contactor goes in though nobody has pressed anything; `held`: a start button is held down meanwhile. */
  | {
      readonly kind: 'startsByItself';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly cause: string;
      readonly held: boolean;
    }
  /** A stop that should brake leaves the machine coasting; speed at the command, rad/s. `shown`: the switch had picked up. */
  | { readonly kind: 'notBraked'; readonly t: number; readonly speed: number; readonly shown: boolean }
  /** A contactor drops because the control voltage dips, so many times; `returns`: it goes in again. */
  | {
      readonly kind: 'voltageDrops';
      readonly contactor: ContactorName;
      readonly t: number;
      readonly times: number;
      readonly returns: boolean;
    }
  /** Both coils are energised and only the mechanical interlock keeps a contactor out. */
  | { readonly kind: 'heldByInterlock'; readonly contactor: ContactorName; readonly t: number }
  /**
   * The time limit of an emergency stop of category 1 ends braking before the zero-speed switch does, at a speed, rad/s; `ranUp`: by
   * then the machine was driven in the other direction.
   */
  | { readonly kind: 'limitEndsBraking'; readonly t: number; readonly speed: number; readonly ranUp: boolean }
  /** The overload relay trips. */
  | { readonly kind: 'overloadTrips'; readonly t: number };

/** Slower than this fraction of synchronous speed the machine counts as standing. */
const STANDING_FRACTION = 0.05;

const CONTACTORS = ['forward', 'reverse'] as const;

/** What happened in the control that decides about everything else, the gravest first. */
export function controlFindings(trajectory: Trajectory): readonly ControlFinding[] {
  if (trajectory.scenario.starter.control === undefined) return runsUp(trajectory);
  const up = runsUp(trajectory);
  const on = goesOn(trajectory);
  return [
    ...up,
    ...on,
    ...(up.length + on.length > 0 ? [] : stillRuns(trajectory)),
    ...byItself(trajectory),
    ...coasts(trajectory),
    ...limited(trajectory),
    ...drops(trajectory),
    ...held(trajectory),
    ...trips(trajectory),
  ];
}

function synchronous({ scenario }: Trajectory): number {
  return synchronousSpeed(scenario.supply.frequency, 2 * scenario.machine.polePairs);
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

/** A contactor whose poles, most of them, do not part any more. */
function isWeldedIn({ scenario }: Trajectory, contactor: ContactorName): boolean {
  const own = (scenario.starter.faults ?? []).filter(
    (fault) =>
      (fault.kind === 'weldedContactor' || fault.kind === 'weldedPole') && fault.contactor === contactor,
  );
  return own.some(({ kind }) => kind === 'weldedContactor') || own.length >= 2;
}

function goesOn(trajectory: Trajectory): readonly ControlFinding[] {
  const { speed } = trajectory.at(trajectory.tEnd);
  if (trajectory.shortCircuit !== null) return [];
  if (Math.abs(speed) < STANDING_FRACTION * synchronous(trajectory)) return [];
  const stuck = trajectory.events.find((event) => event.kind === 'contactorSticks');
  if (stuck?.contactor === undefined || !isWeldedIn(trajectory, stuck.contactor)) return [];
  return [{ kind: 'doesNotStop', contactor: stuck.contactor, t: stuck.t, speed }];
}

function stillRuns(trajectory: Trajectory): readonly ControlFinding[] {
  const { speed } = trajectory.at(trajectory.tEnd);
  const last = trajectory.commands.at(-1);
  if (trajectory.shortCircuit !== null || trajectory.scenario.solver.endTime !== 'auto') return [];
  if (last === undefined || last.do.startsWith('start')) return [];
  if (Math.abs(speed) < STANDING_FRACTION * synchronous(trajectory)) return [];
  const contactor = energisedAtEnd(trajectory);
  return contactor === null ? [] : [{ kind: 'stillRuns', contactor, speed }];
}

/** Events of hands that ask for a contactor: to run, or to brake. */
function isAskedFor(event: RunEvent, atRoot: readonly RunEvent[]): boolean {
  if (event.rootKind !== 'hand') return false;
  const starts = (device: RunEvent['device']) => device === 'forwardButton' || device === 'reverseButton';
  if (atRoot.some(({ kind, device }) => kind === 'buttonPressed' && starts(device))) return true;
  const stops: readonly RunEvent['kind'][] = [
    'buttonPressed',
    'buttonReleased',
    'emergencyStopPressed',
    'overloadTrips',
  ];
  return event.purpose === 'brake' && atRoot.some(({ kind }) => stops.includes(kind));
}

function byItself(trajectory: Trajectory): readonly ControlFinding[] {
  const { events } = trajectory;
  const vain = vainCoilEvents(events);
  return events.flatMap((event): readonly ControlFinding[] => {
    if (event.kind !== 'coilEnergised' || event.rootTime === undefined || event.contactor === undefined)
      return [];
    // A coil that only comes back after a dip of its own voltage chatters, which is told elsewhere.
    const withSupply = event.rootKind === 'voltage' && comesWithSupply(event, events);
    if ((event.rootKind === 'voltage' && !withSupply) || vain.has(event)) return [];
    const atRoot = events.filter(({ t }) => t === event.rootTime);
    const holds = isOn(trajectory, 'forwardButton', event.t) || isOn(trajectory, 'reverseButton', event.t);
    // Anti-plugging lets a held button in when the speed is low: that is what it is for.
    const waited = holds && event.rootKind === 'switch';
    if (isAskedFor(event, atRoot) || waited) return [];
    const cause =
      event.rootKind === 'start' ? 'the control voltage is on' : (atRoot[0]?.text ?? 'of a fault');
    return [{ kind: 'startsByItself', contactor: event.contactor, t: event.t, cause, held: holds }];
  });
}

/** Whether a device is actuated at an instant, all that happens at it included. */
function isOn({ channels }: Trajectory, device: Device, t: number): boolean {
  const found = channels.find(({ of }) => of.kind === 'device' && of.device === device);
  return found?.changes.findLast((change) => change.t <= t)?.value === 'on';
}

/** Schemes in which a stop is meant to brake. */
const BRAKING = ['plugStop', 'plugStopBoth', 'jog'];

function coasts(trajectory: Trajectory): readonly ControlFinding[] {
  const { starter } = trajectory.scenario;
  if (starter.control === undefined || !BRAKING.includes(starter.control.scheme)) return [];
  const pickUp = starter.zeroSpeedSwitch?.pickUpSpeed ?? Number.POSITIVE_INFINITY;
  const { commands, events } = trajectory;
  return commands.flatMap((command, i): readonly ControlFinding[] => {
    const byHand = events.some(
      ({ t, kind, device }) =>
        t === command.at &&
        ((kind === 'buttonPressed' && device === 'stopButton') ||
          (kind === 'buttonReleased' && starter.control?.scheme === 'jog')),
    );
    const { speed } = trajectory.at(command.at, 'left');
    const stuck = events.some(({ kind }) => kind === 'contactorSticks');
    if (command.do !== 'coast' || !byHand || stuck || Math.abs(speed) <= pickUp) return [];
    const until = commands[i + 1]?.at ?? trajectory.tEnd;
    const brake = speed > 0 ? 'reverseContactor' : 'forwardContactor';
    const braked = events.some(
      ({ t, kind, device }) => kind === 'relayPicksUp' && device === brake && t > command.at && t <= until,
    );
    if (braked) return [];
    const shown = isOn(trajectory, speed > 0 ? 'switchForward' : 'switchReverse', command.at);
    const blind = (starter.faults ?? []).some((fault) => fault.kind === 'zeroSpeedSwitch');
    return [{ kind: 'notBraked', t: command.at, speed, shown: shown && !blind }];
  });
}

function limited(trajectory: Trajectory): readonly ControlFinding[] {
  const limits = trajectory.events.filter(
    ({ kind, device }) => kind === 'timerElapses' && device === 'limitTimer',
  );
  const ended = trajectory.events.find(
    ({ kind, t }) => kind === 'coilReleased' && limits.some((limit) => limit.t === t),
  );
  if (ended === undefined) return [];
  const drives = ended.contactor === 'forward' ? 1 : -1;
  const ranUp = drives * ended.speed > STANDING_FRACTION * synchronous(trajectory);
  return [{ kind: 'limitEndsBraking', t: ended.t, speed: ended.speed, ranUp }];
}

function drops(trajectory: Trajectory): readonly ControlFinding[] {
  const { events } = trajectory;
  return CONTACTORS.flatMap((contactor): readonly ControlFinding[] => {
    const own = events.filter((event) => event.contactor === contactor);
    // Counted are contactors that go out, not coils that let go for a moment.
    const out = own.filter((event, i) => {
      const before = own
        .slice(0, i)
        .findLast(({ kind }) => kind === 'coilReleased' || kind === 'coilEnergised');
      const dips = before?.kind === 'coilReleased' && before.rootKind === 'voltage';
      return event.kind === 'relayDropsOut' && dips && !supplyIsLost(events, event.t);
    });
    const [first] = out;
    if (first === undefined) return [];
    const returns = own.some(({ kind, t }) => kind === 'relayPicksUp' && t > first.t);
    return [{ kind: 'voltageDrops', contactor, t: first.t, times: out.length, returns }];
  });
}

function supplyIsLost(events: readonly RunEvent[], t: number): boolean {
  const last = events.findLast(
    ({ kind, t: at }) =>
      at <= t && (kind === 'supplyLost' || kind === 'supplyReturns' || kind === 'phaseLost'),
  );
  return last !== undefined && last.kind !== 'supplyReturns';
}

function held({ events }: Trajectory): readonly ControlFinding[] {
  const blocked = events.find(
    ({ kind, contactor, t }) => kind === 'interlockBlocks' && contactor !== undefined && bothOn(events, t),
  );
  return blocked?.contactor === undefined
    ? []
    : [{ kind: 'heldByInterlock', contactor: blocked.contactor, t: blocked.t }];
}

/** Both coils are energised just before an instant, or after all that happens at it. */
function bothOn(events: readonly RunEvent[], t: number): boolean {
  const on = (until: (at: number) => boolean) =>
    CONTACTORS.every((contactor) => {
      const last = events.findLast(
        (event) =>
          until(event.t) &&
          event.contactor === contactor &&
          (event.kind === 'coilEnergised' || event.kind === 'coilReleased'),
      );
      return last?.kind === 'coilEnergised';
    });
  return on((at) => at < t) || on((at) => at <= t);
}

function trips({ events }: Trajectory): readonly ControlFinding[] {
  const trip = events.find((event) => event.kind === 'overloadTrips');
  return trip === undefined ? [] : [{ kind: 'overloadTrips', t: trip.t }];
}
