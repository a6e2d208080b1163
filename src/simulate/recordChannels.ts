import { allContacts, type Device } from '../starter/control/controlCircuit.ts';
import { PHASES, type StarterState } from '../starter/starter.ts';
import type { Channel, ChannelOf, ChannelValue } from './channels.ts';

/** Takes down what is discrete after every change. */
export interface ChannelRecorder {
  readonly take: (t: number, starter: StarterState) => void;
  /** Every channel, in the order of the circuit; poles and voltage only where they ever moved. */
  readonly channels: () => readonly Channel[];
}

interface Track {
  readonly of: ChannelOf;
  readonly read: (starter: StarterState) => ChannelValue;
  readonly changes: { t: number; value: ChannelValue }[];
  /** A channel that never changes is left out. */
  readonly whenMoved: boolean;
}

/** Recorder for a run that begins in this state. */
export function channelRecorder(first: StarterState): ChannelRecorder {
  const tracks = tracksOf(first);
  return {
    take: (t, starter) => {
      for (const track of tracks) {
        const value = track.read(starter);
        const last = track.changes.at(-1);
        if (last?.value === value) continue;
        // What is undone at the same instant has not been seen by anybody.
        if (last?.t === t) track.changes.pop();
        if (track.changes.at(-1)?.value !== value) track.changes.push({ t, value });
      }
    },
    channels: () =>
      tracks
        .filter(
          ({ whenMoved, changes }) => !whenMoved || changes.length > 1 || changes[0]?.value === 'closed',
        )
        .map(({ of, changes }) => ({ of, changes })),
  };
}

function tracksOf(first: StarterState): Track[] {
  const { control } = first;
  const onOff = (is: boolean): ChannelValue => (is ? 'on' : 'off');
  const track = (of: ChannelOf, read: Track['read'], whenMoved = false): Track => ({
    of,
    read,
    changes: [],
    whenMoved,
  });
  const poles = (['forward', 'reverse'] as const).flatMap((contactor) =>
    PHASES.map((phase, index) =>
      track({ kind: 'pole', contactor, phase }, (s) => s.poles[contactor][index]!, true),
    ),
  );
  if (control === null) {
    const coils = (['forward', 'reverse'] as const).map((contactor) =>
      track({ kind: 'coil', device: `${contactor}Contactor` }, (s) => onOff(s.coil[contactor])),
    );
    const shown =
      first.data.zeroSpeedSwitch === null
        ? []
        : (['forward', 'reverse'] as const).map((direction) =>
            track(
              { kind: 'device', device: direction === 'forward' ? 'switchForward' : 'switchReverse' },
              (s) => onOff(s.contact[direction]),
            ),
          );
    return [...coils, ...poles, ...shown];
  }
  const { circuit } = control;
  const devices = new Set<Device>([
    ...allContacts(circuit).map(({ device }) => device),
    ...circuit.coils.map(({ coil }) => coil),
  ]);
  return [
    ...[...devices].map((device) =>
      track({ kind: 'device', device }, (s) => onOff(s.control?.positions[device] === true)),
    ),
    ...circuit.coils.map(({ coil }) =>
      track({ kind: 'coil', device: coil }, (s) => onOff(s.control?.coils[coil] === true)),
    ),
    ...poles,
    track({ kind: 'controlVoltage' }, (s) => onOff(s.control?.voltage !== 'low'), true),
  ];
}
