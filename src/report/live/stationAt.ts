import type { ButtonName, PhaseName, Scenario } from '../../scenario/scenario.ts';
import type { Channel, ChannelOf } from '../../simulate/channels.ts';
import { type CoilDevice, type Device, INPUT_DEVICES } from '../../starter/control/controlCircuit.ts';
import type { ContactorName, PoleState } from '../../starter/starter.ts';
import { PHASES } from '../contactIntervals.ts';
import { deviceLabel } from '../sequenceRows.ts';
import { channelValue } from './channelValue.ts';
import type { Film, FilmAuxiliary, FilmEvent } from './film.ts';
import { sampleBelow } from './sampleBelow.ts';
import { DEVICE_OF_BUTTON, stationButtons } from './stationButtons.ts';

/** The whole starter at one instant. */
export interface StationState {
  readonly buttons: readonly ButtonState[];
  readonly contactors: Readonly<Record<ContactorName, ContactorState>>;
  /** null: there is none. */
  readonly zeroSpeedSwitch: Readonly<Record<ContactorName, boolean>> | null;
  /** null: there is none. */
  readonly overload: OverloadState | null;
  /** Auxiliary relays, timers and solenoids. */
  readonly relays: readonly RelayState[];
  /** There is voltage enough to hold coils in; null: no control circuit. */
  readonly controlVoltage: boolean | null;
  readonly auxiliaries: readonly AuxiliaryState[];
  /** null: nothing has happened yet. */
  readonly lastEvent: FilmEvent | null;
}

/** A button at one instant. */
export interface ButtonState {
  readonly button: ButtonName;
  readonly pressed: boolean;
  /** Pressed and not to be let go by itself. */
  readonly held: boolean;
}

/** A contactor at one instant. */
export interface ContactorState {
  readonly coil: boolean;
  /** The armature is in; without a control circuit: any pole is closed. */
  readonly isIn: boolean;
  readonly poles: Readonly<Record<PhaseName, PoleState>>;
  /** Poles that a fault keeps from parting, now that they have touched. */
  readonly welded: Readonly<Record<PhaseName, boolean>>;
}

/** The overload relay at one instant. */
export interface OverloadState {
  readonly tripped: boolean;
  /** Thermal memory as a share of the trip level. */
  readonly share: number;
}

/** A relay, timer or solenoid at one instant. */
export interface RelayState {
  readonly device: CoilDevice;
  /** "-K7 ready relay" */
  readonly label: string;
  readonly coil: boolean;
  /** Its contacts have moved. */
  readonly operated: boolean;
}

/** A device that no channel records. */
export interface AuxiliaryState {
  readonly label: string;
  readonly on: boolean;
  /** "closed", "set", "lost" … */
  readonly words: string;
}

/** The starter of a film at t, s. */
export function stationAt(film: Film, scenario: Scenario, t: number): StationState {
  const { channels } = film;
  const device = (name: Device) => isOn(channels, { kind: 'device', device: name }, t);
  const hasControl = scenario.starter.control !== undefined;
  return {
    buttons: stationButtons(scenario).map(({ button }) => {
      const pressed = device(DEVICE_OF_BUTTON[button]) === true;
      return {
        button,
        pressed,
        held: pressed && (button === 'emergencyStop' || isHeld(scenario, button, t)),
      };
    }),
    contactors: {
      forward: contactorAt(film, scenario, 'forward', t),
      reverse: contactorAt(film, scenario, 'reverse', t),
    },
    zeroSpeedSwitch:
      scenario.starter.zeroSpeedSwitch === null
        ? null
        : { forward: device('switchForward') === true, reverse: device('switchReverse') === true },
    overload: overloadAt(film, scenario, t, device('overload') === true),
    relays: relaysAt(channels, t),
    // A voltage that is always there has no channel.
    controlVoltage: hasControl ? (isOn(channels, { kind: 'controlVoltage' }, t) ?? true) : null,
    auxiliaries: (film.auxiliaries ?? []).map((one) => auxiliaryAt(one, t)),
    lastEvent: film.events.findLast((event) => event.t <= t) ?? null,
  };
}

/** The last events up to t, s, the latest first. */
export function eventsUpTo(film: Film, t: number, count: number): FilmEvent[] {
  const after = film.events.findLastIndex((event) => event.t <= t) + 1;
  return film.events.slice(Math.max(0, after - count), after).toReversed();
}

function contactorAt(film: Film, scenario: Scenario, contactor: ContactorName, t: number): ContactorState {
  const { channels } = film;
  const poles = byPhase((phase) => poleAt(channels, contactor, phase, t));
  const armature = isOn(channels, { kind: 'device', device: `${contactor}Contactor` }, t);
  const faults = scenario.starter.faults ?? [];
  const cannotPart = (phase: PhaseName) =>
    faults.some(
      (fault) =>
        (fault.kind === 'weldedContactor' && fault.contactor === contactor) ||
        (fault.kind === 'weldedPole' && fault.contactor === contactor && fault.pole === phase),
    );
  return {
    coil: isOn(channels, { kind: 'coil', device: `${contactor}Contactor` }, t) === true,
    isIn: armature ?? PHASES.some((phase) => poles[phase] === 'closed'),
    poles,
    welded: byPhase((phase) => poles[phase] === 'closed' && cannotPart(phase)),
  };
}

/** A pole that never moved has no channel: it is open. */
function poleAt(
  channels: readonly Channel[],
  contactor: ContactorName,
  phase: PhaseName,
  t: number,
): PoleState {
  const channel = channels.find(
    ({ of }) => of.kind === 'pole' && of.contactor === contactor && of.phase === phase,
  );
  return channel === undefined ? 'open' : (channelValue(channel.changes, t) as PoleState);
}

function byPhase<T>(of: (phase: PhaseName) => T): Record<PhaseName, T> {
  return { A: of('A'), B: of('B'), C: of('C') };
}

/** null: there is no such channel. */
function isOn(
  channels: readonly Channel[],
  wanted: Exclude<ChannelOf, { kind: 'pole' }>,
  t: number,
): boolean | null {
  const channel = channels.find(
    ({ of }) =>
      of.kind === wanted.kind && (!('device' in wanted) || ('device' in of && of.device === wanted.device)),
  );
  return channel === undefined ? null : channelValue(channel.changes, t) === 'on';
}

/** Nobody lets go of it later in the scenario. */
function isHeld(scenario: Scenario, button: ButtonName, t: number): boolean {
  return !scenario.actions.some(
    (action) => 'button' in action && action.button === button && action.do === 'release' && action.at > t,
  );
}

function overloadAt(film: Film, { starter }: Scenario, t: number, tripped: boolean): OverloadState | null {
  const { thermal } = film;
  if (starter.control?.overload == null) return null;
  if (thermal === null || thermal.t.length === 0) return { tripped, share: 0 };
  const { index, share } = sampleBelow(thermal.t, t);
  const from = thermal.value[index]!;
  const to = thermal.value[index + 1] ?? from;
  return { tripped, share: from + share * (to - from) };
}

const INPUTS: ReadonlySet<Device> = new Set(INPUT_DEVICES);

/** Everything with a coil but the two contactors. */
function relaysAt(channels: readonly Channel[], t: number): RelayState[] {
  return channels.flatMap(({ of, changes }): RelayState[] => {
    if (of.kind !== 'device' || INPUTS.has(of.device)) return [];
    const device = of.device as CoilDevice;
    if (device === 'forwardContactor' || device === 'reverseContactor') return [];
    const coil = isOn(channels, { kind: 'coil', device }, t) === true;
    return [{ device, label: deviceLabel(device), coil, operated: channelValue(changes, t) === 'on' }];
  });
}

function auxiliaryAt({ label, onWord, offWord, changes }: FilmAuxiliary, t: number): AuxiliaryState {
  const on = (changes.findLast((change) => change.t <= t) ?? changes[0])?.on === true;
  return { label, on, words: on ? onWord : offWord };
}
