import type { RunResult } from '../../../src/measure/result.ts';
import type { PhaseName } from '../../../src/scenario/scenario.ts';
import type { Channel, ChannelOf, ChannelValue } from '../../../src/simulate/channels.ts';
import type { RunEvent } from '../../../src/simulate/trajectory.ts';
import type { CoilDevice, Device } from '../../../src/starter/control/controlCircuit.ts';
import { END, FAKE_EVENTS, fakeRun, PARTING, REVERSE, TOUCH } from './fakeRun.ts';

/** The made-up run again, with what a plug-to-stop circuit with a memory relay would have done in it. */
export const STOP = 1.49;
export const OPENS = 1.955;
export const RELEASED = 1.9551;
/** rad/s; 41.06 r/min. */
export const OPENING_SPEED = 4.3;

type Change = readonly [t: number, value: ChannelValue];

function channel(of: ChannelOf, ...changes: readonly Change[]): Channel {
  return { of, changes: changes.map(([t, value]) => ({ t, value })) };
}

/** Off at t = 0, then on and off in turn. */
export function device(name: Device, ...times: readonly number[]): Channel {
  return channel({ kind: 'device', device: name }, ...inTurn(times));
}

/** Off at t = 0, then energised and dead in turn. */
export function coil(name: CoilDevice, ...times: readonly number[]): Channel {
  return channel({ kind: 'coil', device: name }, ...inTurn(times));
}

function inTurn(times: readonly number[]): Change[] {
  return [[0, 'off'], ...times.map((t, i): Change => [t, i % 2 === 0 ? 'on' : 'off'])];
}

function pole(
  contactor: 'forward' | 'reverse',
  phase: PhaseName,
  touches: number,
  parts: number,
  clears: number,
): Channel {
  return channel(
    { kind: 'pole', contactor, phase },
    [0, 'open'],
    [touches, 'closed'],
    [parts, 'arcing'],
    [clears, 'open'],
  );
}

export const CHANNELS: readonly Channel[] = [
  device('overload'),
  device('emergencyStop'),
  coil('forwardContactor', 0, STOP),
  coil('forwardMemory', 0.13, RELEASED),
  coil('reverseContactor', 1.52, RELEASED),
  device('stopButton', STOP, 1.69),
  device('forwardButton', 0, 0.2),
  device('forwardMemory', 0.14, 1.965),
  device('forwardContactor', TOUCH, PARTING),
  device('reverseContactor', REVERSE, 1.965),
  device('switchForward', 0.12, OPENS),
  pole('forward', 'A', TOUCH, PARTING, 1.5061),
  pole('forward', 'B', TOUCH, PARTING, 1.5023),
  pole('forward', 'C', TOUCH, PARTING, 1.5061),
  pole('reverse', 'A', REVERSE, 1.965, 1.9713),
  pole('reverse', 'B', REVERSE, 1.965, 1.9713),
  pole('reverse', 'C', REVERSE, 1.965, 1.9671),
];

const speedAt = (t: number) => (t === OPENS || t === RELEASED ? OPENING_SPEED : t < STOP ? 187 : 90);

type Said = Omit<RunEvent, 'speed'>;

const OF_CONTROL: readonly Said[] = [
  { t: 0, kind: 'buttonPressed', device: 'forwardButton', text: 'forward button pressed' },
  {
    t: 0,
    kind: 'coilEnergised',
    contactor: 'forward',
    device: 'forwardContactor',
    text: 'forward coil energised: forward button pressed',
  },
  { t: 0.14, kind: 'relayPicksUp', device: 'forwardMemory', text: 'forward memory relay picks up' },
  { t: 0.2, kind: 'buttonReleased', device: 'forwardButton', text: 'forward button released' },
  { t: STOP, kind: 'buttonPressed', device: 'stopButton', text: 'stop button pressed' },
  {
    t: STOP,
    kind: 'coilReleased',
    contactor: 'forward',
    device: 'forwardContactor',
    text: 'forward coil released: stop button pressed',
  },
  {
    t: 1.52,
    kind: 'coilEnergised',
    contactor: 'reverse',
    device: 'reverseContactor',
    text: 'reverse coil energised: forward contactor is out',
  },
  { t: 1.69, kind: 'buttonReleased', device: 'stopButton', text: 'stop button released' },
  {
    t: RELEASED,
    kind: 'coilReleased',
    contactor: 'reverse',
    device: 'reverseContactor',
    text: 'reverse coil released: zero-speed switch opens',
  },
];

/** In order of time; of one instant the control's events come first. */
export const SEQUENCE_EVENTS: readonly RunEvent[] = [
  ...OF_CONTROL,
  ...FAKE_EVENTS.filter((event) => event.kind !== 'action'),
]
  .map((event) => ({ ...event, speed: speedAt(event.t) }))
  .sort((a, b) => a.t - b.t);

/** Heats while current flows, trips nothing. */
const THERMAL = {
  t: [0, 0.025, 0.5, 1.5, 1.545, 1.97, END],
  value: [0.2, 0.2, 0.42, 0.43, 0.43, 0.71, 0.7],
};

export interface SequenceParts {
  readonly channels?: readonly Channel[];
  readonly events?: readonly RunEvent[];
  readonly thermal?: RunResult['trajectory']['thermal'];
  readonly tEnd?: number;
}

export function fakeSequence(parts: SequenceParts = {}): RunResult {
  const run = fakeRun();
  const trajectory = {
    ...run.trajectory,
    channels: CHANNELS,
    events: SEQUENCE_EVENTS,
    thermal: THERMAL,
    commands: [],
    ...parts,
  };
  return { ...run, trajectory };
}
