/**
 * A control circuit as a table: which contacts in series and parallel feed which coil. The simulation, the exhaustive check and
 * the drawing all read this one table.
 */
export interface ControlCircuit {
  /** What it does, as a title. */
  readonly title: string;
  /** Contacts in series with everything below, in order from the supply: nothing closes a coil past them. */
  readonly feed: Network;
  /** One circuit per coil, in the order they are drawn. */
  readonly coils: readonly CoilCircuit[];
}

/** What stands between the feed and one coil. The coil is energised while feed, guard and any one branch conduct. */
export interface CoilCircuit {
  readonly coil: CoilDevice;
  /** Series contacts of this coil alone: interlocks, timers. Wired even where a program does the rest. */
  readonly guard: Network;
  /** Parallel ways to energise the coil. */
  readonly branches: readonly Branch[];
  /** True: stands ahead of the feed's contacts, fed by the control supply alone. */
  readonly aheadOfFeed?: true;
  /** A relay whose contacts move late, by `time`, s: onDelay after it is energised, offDelay after it is released. */
  readonly delay?: { readonly kind: 'onDelay' | 'offDelay'; readonly time: number };
}

/** One way to energise a coil. */
export interface Branch {
  /** command: a person wants the machine to run. brake: the machine is being stopped. follow: it follows other devices. */
  readonly purpose: 'command' | 'brake' | 'follow';
  readonly network: Network;
}

/** Contacts in series and parallel. An empty series conducts, an empty parallel does not. */
export type Network =
  | Contact
  | { readonly series: readonly Network[] }
  | { readonly parallel: readonly Network[] };

/** One contact: make contacts conduct while their device is actuated, break contacts while it is not. */
export interface Contact {
  readonly device: Device;
  readonly kind: 'make' | 'break';
  /** Terminal marks of IEC 60947-5-1 and EN 50005, such as 13-14. */
  readonly terminals: string;
  /** What a fault may name it by. */
  readonly role?: 'holdIn' | 'interlock';
}

/** A device whose contacts move because of what happens outside the control circuit. */
export type InputDevice =
  | 'stopButton'
  | 'forwardButton'
  | 'reverseButton'
  | 'resetButton'
  | 'emergencyStop'
  | 'overload'
  | 'switchForward'
  | 'switchReverse';

/** A device with a coil. */
export type CoilDevice =
  | 'forwardContactor'
  | 'reverseContactor'
  | 'forwardMemory'
  | 'reverseMemory'
  | 'forwardRun'
  | 'reverseRun'
  | 'ready'
  | 'forwardTimer'
  | 'reverseTimer'
  | 'limitTimer'
  | 'lockout';

/** Anything with contacts. */
export type Device = InputDevice | CoilDevice;

/** Inputs in their order of bits and rows. */
export const INPUT_DEVICES: readonly InputDevice[] = [
  'stopButton',
  'forwardButton',
  'reverseButton',
  'resetButton',
  'emergencyStop',
  'overload',
  'switchForward',
  'switchReverse',
];

/** Reference designations of IEC 81346 (trade form), for drawings and tables. */
export const DESIGNATIONS: Readonly<Record<Device, string>> = {
  stopButton: 'S0',
  forwardButton: 'S1',
  reverseButton: 'S2',
  resetButton: 'S3',
  emergencyStop: 'S4',
  overload: 'F2',
  switchForward: 'B1',
  switchReverse: 'B1',
  forwardContactor: 'K1',
  reverseContactor: 'K2',
  forwardMemory: 'K3',
  reverseMemory: 'K4',
  forwardRun: 'K5',
  reverseRun: 'K6',
  ready: 'K7',
  forwardTimer: 'K8',
  reverseTimer: 'K11',
  limitTimer: 'K9',
  lockout: 'Y1',
};

/** Names for people. */
export const DEVICE_WORDS: Readonly<Record<Device, string>> = {
  stopButton: 'stop button',
  forwardButton: 'forward button',
  reverseButton: 'reverse button',
  resetButton: 'reset button',
  emergencyStop: 'emergency stop',
  overload: 'overload relay',
  switchForward: 'zero-speed switch (forward)',
  switchReverse: 'zero-speed switch (reverse)',
  forwardContactor: 'forward contactor',
  reverseContactor: 'reverse contactor',
  forwardMemory: 'forward memory relay',
  reverseMemory: 'reverse memory relay',
  forwardRun: 'forward run relay',
  reverseRun: 'reverse run relay',
  ready: 'ready relay',
  forwardTimer: 'change-over timer to forward',
  reverseTimer: 'change-over timer to reverse',
  limitTimer: 'braking time limit',
  lockout: 'lockout solenoid',
};

/** True for a single contact. */
export function isContact(network: Network): network is Contact {
  return 'device' in network;
}

/** Every contact of a network, from the supply on. */
export function contactsOf(network: Network): readonly Contact[] {
  if (isContact(network)) return [network];
  return ('series' in network ? network.series : network.parallel).flatMap(contactsOf);
}

/** Every contact of a circuit: the feed's first, then coil by coil. */
export function allContacts(circuit: ControlCircuit): readonly Contact[] {
  return [
    ...contactsOf(circuit.feed),
    ...circuit.coils.flatMap((coil) => [
      ...contactsOf(coil.guard),
      ...coil.branches.flatMap((branch) => contactsOf(branch.network)),
    ]),
  ];
}

/** Inputs that have a contact in the circuit, in order. */
export function inputsOf(circuit: ControlCircuit): readonly InputDevice[] {
  const used = new Set(allContacts(circuit).map((contact) => contact.device));
  return INPUT_DEVICES.filter((device) => used.has(device));
}
