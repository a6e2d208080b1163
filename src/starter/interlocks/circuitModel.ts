import type {
  CoilCircuit,
  CoilDevice,
  ControlCircuit,
  Device,
  InputDevice,
} from '../control/controlCircuit.ts';
import { DESIGNATIONS, inputsOf } from '../control/controlCircuit.ts';
import { stuckContacts } from '../control/stuckContacts.ts';
import { type Cubes, cubesOf, inSeries } from './cubes.ts';
import type { ExploreOptions } from './options.ts';

/**
 * A control circuit as arithmetic on one integer: a bit for each device and the supply, three for the speed, the rest for what has
 * to be remembered of the past.
 */
export interface CircuitModel {
  /** Bit of each device; 0 where the circuit has no such device. */
  readonly bitOf: Readonly<Record<Device, number>>;
  /** Devices by the number of their bit. */
  readonly devices: readonly Device[];
  readonly supply: number;
  /** Where the speed level + 2 stands: −2, 2 beyond pick-up; −1, 1 between drop-out and pick-up; 0 below drop-out. */
  readonly levelShift: number;
  /** False: no contact depends on the speed, which stays at 0. */
  readonly shaft: boolean;
  /** First free bit. */
  readonly memoryShift: number;
  /** Bits of coils that are energised, at the bits of their devices. */
  readonly energised: (state: number) => number;
  /** Bits of contactors whose coil is energised through a branch by which a person drives the machine. */
  readonly commanded: (state: number) => number;
  /** True while the feed conducts and the supply is there. */
  readonly fed: (state: number) => boolean;
  /** All coil devices; contactors; those with a braking branch; timers by kind. */
  readonly coils: number;
  readonly contactors: number;
  readonly braking: number;
  readonly onDelay: number;
  readonly offDelay: number;
  /** Push buttons; those that start. */
  readonly buttons: number;
  readonly starts: number;
  /** Contactors that do not drop out once they are in. */
  readonly welded: number;
  readonly switchStuckClosed: boolean;
  readonly switchSeesNothing: boolean;
  readonly overloadTrips: boolean;
  readonly mechanicalInterlock: boolean;
}

const BUTTONS: readonly InputDevice[] = ['stopButton', 'forwardButton', 'reverseButton', 'resetButton'];

/** There, and to be obeyed, whether or not the circuit has a contact of theirs. */
const ALWAYS: readonly InputDevice[] = ['stopButton', 'forwardButton', 'emergencyStop'];

/** Compiles a circuit with its faults. */
export function circuitModel(circuit: ControlCircuit, options: ExploreOptions): CircuitModel {
  const devices: readonly Device[] = [
    ...new Set<Device>([
      ...ALWAYS,
      ...(options.overload ? (['overload'] as const) : []),
      ...inputsOf(circuit),
    ]),
    ...circuit.coils.map(({ coil }) => coil),
  ];
  const bitOf = bits(devices);
  const all = (some: readonly Device[]) => some.reduce((mask, device) => mask | bitOf[device], 0);
  const coilsThat = (is: (coil: CoilCircuit) => boolean) =>
    all(circuit.coils.filter(is).map(({ coil }) => coil));
  const supply = 1 << devices.length;
  const stuck = stuckContacts(options.faults);
  const powered: Cubes = [{ mask: supply, value: supply }];
  const feed = inSeries(powered, cubesOf(circuit.feed, bitOf, stuck));
  const coilCubes = (coil: CoilCircuit, branches: CoilCircuit['branches']): Cubes =>
    inSeries(
      inSeries(coil.aheadOfFeed === true ? powered : feed, cubesOf(coil.guard, bitOf, stuck)),
      branches.flatMap(({ network }) => cubesOf(network, bitOf, stuck)),
    );
  const contactors = bitOf.forwardContactor | bitOf.reverseContactor;
  const commands = (coil: CoilCircuit) => coil.branches.filter(({ purpose }) => purpose === 'command');
  const energised = program(circuit.coils.map((coil) => [bitOf[coil.coil], coilCubes(coil, coil.branches)]));
  const commanded = program(
    circuit.coils
      .filter(({ coil }) => (bitOf[coil] & contactors) !== 0)
      .map((coil) => [bitOf[coil.coil], coilCubes(coil, commands(coil))]),
  );
  const fed = program([[1, feed]]);
  const { faults } = options;
  const mode = (name: string) =>
    faults.some((fault) => fault.kind === 'zeroSpeedSwitch' && fault.mode === name);
  return {
    bitOf,
    devices,
    supply,
    levelShift: devices.length + 1,
    shaft:
      (bitOf.switchForward | bitOf.switchReverse) !== 0 ||
      options.properties.includes('brakeEndsWithSwitch') ||
      options.properties.includes('antiPlugging'),
    memoryShift: devices.length + 4,
    energised: (state) => run(energised, state),
    commanded: (state) => run(commanded, state),
    fed: (state) => run(fed, state) !== 0,
    coils: all(circuit.coils.map(({ coil }) => coil)),
    contactors,
    braking: contactors & coilsThat(({ branches }) => branches.some(({ purpose }) => purpose === 'brake')),
    onDelay: coilsThat(({ delay }) => delay?.kind === 'onDelay'),
    offDelay: coilsThat(({ delay }) => delay?.kind === 'offDelay'),
    buttons: all(BUTTONS),
    starts: bitOf.forwardButton | bitOf.reverseButton,
    welded: all(
      faults.flatMap((fault): CoilDevice[] =>
        fault.kind === 'weldedContactor' || fault.kind === 'weldedPole'
          ? [fault.contactor === 'forward' ? 'forwardContactor' : 'reverseContactor']
          : [],
      ),
    ),
    switchStuckClosed: mode('stuckClosed'),
    switchSeesNothing: mode('doesNotPickUp'),
    overloadTrips: options.overload && !faults.some(({ kind }) => kind === 'overloadNeverTrips'),
    mechanicalInterlock:
      options.mechanicalInterlock && !faults.some(({ kind }) => kind === 'mechanicalInterlockMissing'),
  };
}

function bits(devices: readonly Device[]): Readonly<Record<Device, number>> {
  const none = Object.fromEntries(Object.keys(DESIGNATIONS).map((device) => [device, 0]));
  return { ...none, ...Object.fromEntries(devices.map((device, i) => [device, 1 << i])) } as Record<
    Device,
    number
  >;
}

/** Per circuit: its bit, how many alternatives it has, and these as mask and value. */
function program(circuits: readonly (readonly [number, Cubes])[]): Int32Array {
  return Int32Array.from(
    circuits.flatMap(([bit, cubes]) => [
      bit,
      cubes.length,
      ...cubes.flatMap(({ mask, value }) => [mask, value]),
    ]),
  );
}

function run(code: Int32Array, state: number): number {
  let result = 0;
  for (let at = 0; at < code.length; ) {
    const bit = code[at]!;
    const end = at + 2 + 2 * code[at + 1]!;
    for (at += 2; at < end; at += 2)
      if ((state & code[at]!) === code[at + 1]!) {
        result |= bit;
        break;
      }
    at = end;
  }
  return result;
}
