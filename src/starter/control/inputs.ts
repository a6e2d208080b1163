import type { ButtonAction, ButtonName } from '../../scenario/scenario.ts';
import { cancel, type Direction, type StarterState, schedule } from '../starter.ts';
import type { StarterEvent } from '../starterEvent.ts';
import type { Transition } from '../transition.ts';
import { type CoilCircuit, type CoilDevice, DEVICE_WORDS, type Device } from './controlCircuit.ts';
import {
  branchesAskedFor,
  type ControlState,
  isContactor,
  type Outputs,
  type Root,
  type VoltageLevel,
} from './controlState.ts';
import { beginToClose, isBlocked, withControl } from './settle.ts';

const BUTTONS = {
  forward: 'forwardButton',
  reverse: 'reverseButton',
  stop: 'stopButton',
  reset: 'resetButton',
} as const;

/** A hand acts on a device. */
export function operate(state: StarterState, action: ButtonAction): Transition {
  const { control } = state;
  if (control === null) return { state, events: [] };
  const { button, do: what, at: t } = action;
  switch (button) {
    case 'emergencyStop':
      return place(state, t, 'emergencyStop', what === 'press', {
        kind: what === 'press' ? 'emergencyStopPressed' : 'emergencyStopReleased',
        text: what === 'press' ? 'emergency stop pressed' : 'emergency stop released',
      });
    case 'overloadTest':
      if (what === 'release') return { state, events: [] };
      return tripOverload(state, t, 'overload relay trips: its test button is pressed');
    case 'overloadReset':
      return what === 'release' ? { state, events: [] } : resetOverload(state, t);
    default:
      return pressed(state, t, button, what === 'press');
  }
}

function pressed(
  state: StarterState,
  t: number,
  button: Exclude<ButtonName, 'emergencyStop' | 'overloadTest' | 'overloadReset'>,
  down: boolean,
): Transition {
  return place(state, t, BUTTONS[button], down, {
    kind: down ? 'buttonPressed' : 'buttonReleased',
    text: `${button} button ${down ? 'pressed' : 'released'}`,
  });
}

/** The overload relay's break contact opens and stays open until it is reset. */
export function tripOverload(state: StarterState, t: number, text: string): Transition {
  return place(state, t, 'overload', true, { kind: 'overloadTrips', text }, 'overload');
}

function resetOverload(state: StarterState, t: number): Transition {
  const { control } = state;
  if (control?.positions.overload !== true) return { state, events: [] };
  if (!control.mayReset) {
    const text = 'overload relay cannot be reset yet: it is still too warm';
    return { state, events: [{ t, kind: 'resetRefused', device: 'overload', text }] };
  }
  return place(state, t, 'overload', false, { kind: 'overloadResets', text: 'overload relay is reset' });
}

/** An input takes a position; nothing happens where it has it already. */
function place(
  state: StarterState,
  t: number,
  device: Device,
  actuated: boolean,
  event: Pick<StarterEvent, 'kind' | 'text'>,
  root: Root['kind'] = 'hand',
): Transition {
  const control = state.control!;
  if ((control.positions[device] === true) === actuated) return { state, events: [] };
  const moved = withRoot(moveDevice(control, device, actuated), t, root);
  return { state: withControl(state, moved), events: [{ t, device, ...event }] };
}

/** The zero-speed switch's contact has moved; the circuit sees it. */
export function showSpeed(
  state: StarterState,
  t: number,
  direction: Direction,
  actuated: boolean,
): StarterState {
  const { control } = state;
  if (control === null) return state;
  const device = direction === 'forward' ? 'switchForward' : 'switchReverse';
  return withControl(state, withRoot(moveDevice(control, device, actuated), t, 'switch'));
}

/**
 * The voltage at the coils is another; settling decides what that does.
 *
 * @param root supply: phases are lost or back; voltage: it dips or recovers
 */
export function setVoltage(
  state: StarterState,
  t: number,
  level: VoltageLevel,
  root: 'supply' | 'voltage',
): Transition {
  const { control } = state;
  if (control === null || control.voltage === level) return { state, events: [] };
  const next = withControl(
    state,
    withRoot(
      { ...control, voltage: level, dipped: level === 'low' || (control.dipped && level !== 'high') },
      t,
      root,
    ),
  );
  if (level === 'low')
    return {
      state: next,
      events: [{ t, kind: 'voltageDips', text: 'control voltage falls below drop-out' }],
    };
  if (level === 'high' && control.dipped)
    return { state: next, events: [{ t, kind: 'voltageRecovers', text: 'control voltage is back' }] };
  return { state: next, events: [] };
}

/** A relay, timer, solenoid or armature moves. */
export function moveCoilDevice(
  state: StarterState,
  t: number,
  device: CoilDevice,
  actuated: boolean,
): Transition {
  const control = state.control!;
  if (isContactor(device)) return moveArmature(state, t, device, actuated);
  const circuit = control.circuit.coils.find(({ coil }) => coil === device);
  const moved = withControl(state, moveDevice(control, device, actuated));
  const event = deviceEvent(t, device, actuated, circuit);
  if (device !== 'lockout' || !actuated) return { state: moved, events: [event] };
  return { state: releaseHeldSwitch(moved, t), events: [event] };
}

function deviceEvent(
  t: number,
  device: CoilDevice,
  actuated: boolean,
  circuit: CoilCircuit | undefined,
): StarterEvent {
  const words = DEVICE_WORDS[device];
  const ranOut = circuit?.delay !== undefined && (circuit.delay.kind === 'onDelay') === actuated;
  if (ranOut) return { t, kind: 'timerElapses', device, text: `${words} has run out` };
  const kind = actuated ? 'relayPicksUp' : 'relayDropsOut';
  return { t, kind, device, text: `${words} ${actuated ? 'picks up' : 'drops out'}` };
}

function moveArmature(
  state: StarterState,
  t: number,
  device: 'forwardContactor' | 'reverseContactor',
  actuated: boolean,
): Transition {
  const control = state.control!;
  const contactor = device === 'forwardContactor' ? 'forward' : 'reverse';
  if (actuated && isBlocked(state, contactor)) return beginToClose(state, t, contactor);
  if (!actuated && isWelded(state, contactor)) {
    const text = `${contactor} contactor stays in: a pole is welded`;
    return { state, events: [{ t, kind: 'contactorSticks', contactor, device, text }] };
  }
  const moved = withControl(state, moveDevice(control, device, actuated));
  const event: StarterEvent = {
    t,
    kind: actuated ? 'relayPicksUp' : 'relayDropsOut',
    contactor,
    device,
    text: `${contactor} contactor ${actuated ? 'is in' : 'is out'}`,
  };
  const other = contactor === 'forward' ? 'reverse' : 'forward';
  const waits = !actuated && moved.coil[other] && control.positions[`${other}Contactor`] !== true;
  const isMoving = moved.agenda.some((entry) => entry.kind === 'touch' && entry.contactor === other);
  if (!waits || isMoving) return { state: moved, events: [event] };
  const freed = beginToClose(moved, t, other);
  return { state: freed.state, events: [event, ...freed.events] };
}

function isWelded(state: StarterState, contactor: 'forward' | 'reverse'): boolean {
  return (state.data.faults ?? []).some(
    (fault) =>
      (fault.kind === 'weldedContactor' || fault.kind === 'weldedPole') && fault.contactor === contactor,
  );
}

/** With the lockout pulled in, a contact that the speed already asks for moves after the switch's own delay. */
function releaseHeldSwitch(state: StarterState, t: number): StarterState {
  const delay = state.data.zeroSpeedSwitch?.delay ?? 0;
  return (['forward', 'reverse'] as const).reduce((next, direction) => {
    if (!next.pickedUp[direction] || next.contact[direction]) return next;
    const free = cancel(next, (entry) => entry.kind === 'contact' && entry.direction === direction);
    return schedule(free, { t: t + delay, kind: 'contact', direction, closed: true });
  }, state);
}

/** How causes begin that have passed through a program. */
const BY_PROGRAM = 'the program has seen this: ';

/** The program reads its inputs; what it makes of them reaches the outputs a scan later. */
export function readScan(state: StarterState, t: number, cause: string, root: Root): StarterState {
  const control = state.control!;
  return schedule(state, {
    t: t + control.data.scanTime,
    kind: 'scanWrites',
    outputs: branchesAskedFor(control.circuit, control.positions, control.stuck),
    // What a program makes of its own outputs has the cause of those.
    cause: cause.startsWith(BY_PROGRAM) ? cause : `${BY_PROGRAM}${cause}`,
    root,
  });
}

/** The program writes its outputs. */
export function writeScan(state: StarterState, outputs: Outputs, root: Root): StarterState {
  return withControl(state, { ...state.control!, outputs, root });
}

function moveDevice(control: ControlState, device: Device, actuated: boolean): ControlState {
  return { ...control, positions: { ...control.positions, [device]: actuated } };
}

function withRoot(control: ControlState, t: number, kind: Root['kind']): ControlState {
  return { ...control, root: { t, kind } };
}
