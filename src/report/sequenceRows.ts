import type { PhaseName } from '../scenario/scenario.ts';
import type { Channel, ChannelOf, ChannelValue } from '../simulate/channels.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import {
  type CoilDevice,
  DESIGNATIONS,
  DEVICE_WORDS,
  type Device,
} from '../starter/control/controlCircuit.ts';
import type { ContactorName } from '../starter/starter.ts';
import { bypassIntervals, PHASES } from './contactIntervals.ts';
import type { StateInterval, StateRow } from './figureSpec.ts';

/** "-K2 reverse contactor": designation and name of a device. */
export function deviceLabel(device: Device): string {
  return `-${DESIGNATIONS[device]} ${DEVICE_WORDS[device]}`;
}

/** Words of the rows of a narrow drawing, under headings that say what kind of device they are: at most eight letters. */
const SHORT_WORDS: Readonly<Record<Device, string>> = {
  stopButton: 'stop',
  forwardButton: 'forward',
  reverseButton: 'reverse',
  resetButton: 'reset',
  emergencyStop: 'emerg.',
  overload: 'overload',
  switchForward: 'forward',
  switchReverse: 'reverse',
  forwardContactor: 'forward',
  reverseContactor: 'reverse',
  forwardMemory: 'fwd mem',
  reverseMemory: 'rev mem',
  forwardRun: 'fwd run',
  reverseRun: 'rev run',
  ready: 'ready',
  forwardTimer: 'fwd dly',
  reverseTimer: 'rev dly',
  limitTimer: 'limit',
  lockout: 'lockout',
};

function shortLabel(device: Device): string {
  return `-${DESIGNATIONS[device]} ${SHORT_WORDS[device]}`;
}

const CONTACTOR_DEVICE: Readonly<Record<ContactorName, CoilDevice>> = {
  forward: 'forwardContactor',
  reverse: 'reverseContactor',
};

/** "-K1 forward pole A" */
export function poleLabel(contactor: ContactorName, phase: string): string {
  return `-${DESIGNATIONS[CONTACTOR_DEVICE[contactor]]} ${contactor} pole ${phase}`;
}

type GroupName =
  | 'buttons'
  | 'relays'
  | 'coils'
  | 'contactors'
  | 'poles'
  | 'zeroSpeedSwitch'
  | 'protection'
  | 'supply';

/** The groups of rows from the hand to the machine and what watches it; each heading says what a bar means. */
const GROUPS: readonly { readonly name: GroupName; readonly heading: string }[] = [
  { name: 'buttons', heading: 'Buttons: pressed' },
  { name: 'relays', heading: 'Relays and timers: operated' },
  { name: 'coils', heading: 'Coils: energised' },
  { name: 'contactors', heading: 'Contactors: armature in' },
  { name: 'poles', heading: 'Main poles: closed, arcing' },
  { name: 'zeroSpeedSwitch', heading: 'Zero-speed switch: actuated' },
  { name: 'protection', heading: 'Overload relay: tripped' },
  { name: 'supply', heading: 'Supply: there' },
];

const GROUP_OF_DEVICE: Readonly<Record<Device, GroupName>> = {
  stopButton: 'buttons',
  forwardButton: 'buttons',
  reverseButton: 'buttons',
  resetButton: 'buttons',
  emergencyStop: 'buttons',
  overload: 'protection',
  switchForward: 'zeroSpeedSwitch',
  switchReverse: 'zeroSpeedSwitch',
  forwardContactor: 'contactors',
  reverseContactor: 'contactors',
  forwardMemory: 'relays',
  reverseMemory: 'relays',
  forwardRun: 'relays',
  reverseRun: 'relays',
  ready: 'relays',
  forwardTimer: 'relays',
  reverseTimer: 'relays',
  limitTimer: 'relays',
  lockout: 'relays',
};

/** Of these, a row that stays empty says nothing: no hand was on the button, nothing tripped. */
const SHOWN_ONLY_WHEN_ON: ReadonlySet<GroupName> = new Set(['buttons', 'protection']);
/** Coils with a row beside that of their contacts: of the other relays both move together but for the relay's own time. */
const SHOWN_COILS: ReadonlySet<CoilDevice> = new Set([
  'forwardContactor',
  'reverseContactor',
  'forwardTimer',
  'reverseTimer',
  'limitTimer',
]);

/** The rows of the sequence chart in the window [t0, t1] s, grouped under headings, each an exact copy of its channel. */
export function sequenceRows(run: Trajectory, t0: number, t1: number): StateRow[] {
  const members = [...run.channels.flatMap((channel) => channelRow(channel, run.tEnd)), ...otherRows(run)];
  return GROUPS.flatMap(({ name, heading }) => {
    const rows = members
      .filter((member) => member.group === name)
      .map(({ row }) => ({ ...row, intervals: clipIntervals(row.intervals, t0, t1) }))
      .filter((row) => row.intervals.length > 0 || !SHOWN_ONLY_WHEN_ON.has(name))
      .sort(byDesignation);
    return rows.length === 0 ? [] : [{ label: heading, heading: true, intervals: [] }, ...rows];
  });
}

/** Labels begin with the designation; what has none comes last. */
function byDesignation(a: StateRow, b: StateRow): number {
  return a.label < b.label ? -1 : 1;
}

interface Member {
  readonly group: GroupName;
  readonly row: StateRow;
}

function channelRow(channel: Channel, tEnd: number): Member[] {
  const place = placeOf(channel.of);
  if (place === null) return [];
  const { group, label, short } = place;
  return [{ group, row: { label, short, intervals: channelIntervals(channel.changes, tEnd) } }];
}

function placeOf(of: ChannelOf): { group: GroupName; label: string; short: string } | null {
  switch (of.kind) {
    case 'device':
      return {
        group: GROUP_OF_DEVICE[of.device],
        label: deviceLabel(of.device),
        short: shortLabel(of.device),
      };
    case 'coil':
      if (!SHOWN_COILS.has(of.device)) return null;
      return { group: 'coils', label: `${deviceLabel(of.device)} coil`, short: shortLabel(of.device) };
    case 'pole': {
      const label = poleLabel(of.contactor, of.phase);
      return { group: 'poles', label, short: label.replace(` ${of.contactor}`, '') };
    }
    case 'controlVoltage':
      return { group: 'supply', label: 'control voltage', short: 'control' };
  }
}

/** What no channel records: the bypass of line resistors, and supply phases that are lost. */
function otherRows(run: Trajectory): Member[] {
  const lost = PHASES.filter((phase) =>
    run.events.some((event) => event.kind === 'phaseLost' && event.phase === phase),
  );
  const supply = lost.map((phase): Member => {
    const row = { label: `supply phase ${phase}`, short: `phase ${phase}` };
    const intervals = channelIntervals(phaseChanges(run, phase), run.tEnd);
    return { group: 'supply', row: { ...row, intervals } };
  });
  if (run.scenario.starter.lineResistors === undefined) return supply;
  const row = { label: 'bypass contactor', short: 'bypass', intervals: bypassIntervals(run) };
  return [{ group: 'poles', row }, ...supply];
}

/** A phase that is lost carries its current on to the next zero; the supply comes back on all phases at once. */
function phaseChanges(run: Trajectory, phase: PhaseName): Channel['changes'] {
  const changes = run.events.flatMap((event): Channel['changes'] => {
    if (event.kind === 'supplyReturns') return [{ t: event.t, value: 'closed' }];
    if (event.phase !== phase) return [];
    if (event.kind === 'phaseLost') return [{ t: event.t, value: 'arcing' }];
    return event.kind === 'phaseClears' ? [{ t: event.t, value: 'open' }] : [];
  });
  return [{ t: run.tStart, value: 'closed' }, ...changes];
}

const STATE_OF: Partial<Record<ChannelValue, StateInterval['state']>> = {
  on: 'on',
  closed: 'closed',
  arcing: 'arcing',
};

/** When a channel was on, closed or arcing, s; what it is at its last change it stays up to `tEnd`. */
export function channelIntervals(changes: Channel['changes'], tEnd: number): StateInterval[] {
  return changes.flatMap(({ t, value }, i) => {
    const state = STATE_OF[value];
    const until = changes[i + 1]?.t ?? tEnd;
    return state === undefined || until <= t ? [] : [{ x0: t, x1: until, state }];
  });
}

/** The part of the intervals within [t0, t1]. */
export function clipIntervals(intervals: readonly StateInterval[], t0: number, t1: number): StateInterval[] {
  return intervals
    .filter((interval) => interval.x1 > t0 && interval.x0 < t1)
    .map((interval) => ({ ...interval, x0: Math.max(t0, interval.x0), x1: Math.min(t1, interval.x1) }));
}
