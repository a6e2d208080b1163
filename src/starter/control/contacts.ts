import type { ControlData } from '../../scenario/scenario.ts';
import type { Branch, CoilCircuit, CoilDevice, Contact, Network } from './controlCircuit.ts';

/** One contact. */
export function contact(
  device: Contact['device'],
  kind: Contact['kind'],
  terminals: string,
  role?: Contact['role'],
): Contact {
  return role === undefined ? { device, kind, terminals } : { device, kind, terminals, role };
}

/** A make contact. */
export function make(device: Contact['device'], terminals: string): Contact {
  return contact(device, 'make', terminals);
}

/** Stop button, break contact. */
export const stop = contact('stopButton', 'break', '11-12');
/** Forward button, make contact. */
export const forwardMake = make('forwardButton', '13-14');
/** Forward button, break contact: drops the other direction. */
export const forwardBreak = contact('forwardButton', 'break', '21-22');
/** Reverse button, make contact. */
export const reverseMake = make('reverseButton', '13-14');
/** Reverse button, break contact: drops the other direction. */
export const reverseBreak = contact('reverseButton', 'break', '21-22');
/** The forward contactor holds itself in. */
export const forwardHolds = contact('forwardContactor', 'make', '13-14', 'holdIn');
/** The reverse contactor holds itself in. */
export const reverseHolds = contact('reverseContactor', 'make', '13-14', 'holdIn');
/** The other contactor's break contact: the electrical interlock. */
export const forwardOut = contact('forwardContactor', 'break', '21-22', 'interlock');
/** The reverse contactor's break contact in the forward contactor's circuit. */
export const reverseOut = contact('reverseContactor', 'break', '21-22', 'interlock');

/** A relay holds itself in. */
export function holds(device: CoilDevice): Contact {
  return contact(device, 'make', '13-14', 'holdIn');
}

/** The zero-speed switch shows forward rotation. */
export function turnsForward(terminals: string): Contact {
  return make('switchForward', terminals);
}

/** The zero-speed switch shows reverse rotation. */
export function turnsReverse(terminals: string): Contact {
  return make('switchReverse', terminals);
}

/** Parallel ways. */
export function either(...parallel: readonly Network[]): Network {
  return { parallel };
}

/** The circuit of one coil. */
export function coil(name: CoilDevice, guard: readonly Network[], branches: readonly Branch[]): CoilCircuit {
  return { coil: name, guard: { series: guard }, branches };
}

/** A way to run: past what lets the machine start at all. */
export function command(control: ControlData, ...series: readonly Network[]): Branch {
  return { purpose: 'command', network: { series: [...mayStart(control), ...series] } };
}

/** A run relay keeps a contactor in. */
export function run(relay: CoilDevice): Branch {
  return { purpose: 'command', network: { series: [make(relay, '33-34')] } };
}

/** What follows other devices. */
export function follow(...series: readonly Network[]): Branch {
  return { purpose: 'follow', network: { series } };
}

/** With category 1 the emergency stop ends running here and leaves the braking branches alone. */
function mayStart(control: ControlData): readonly Network[] {
  if (control.readyRelay) return [make('ready', '23-24')];
  return control.emergencyStop.category === 1 ? [contact('emergencyStop', 'break', '21-22')] : [];
}
