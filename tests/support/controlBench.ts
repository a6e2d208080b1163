import type { ButtonName } from '../../src/scenario/starterData.ts';
import type {
  CoilDevice,
  ControlCircuit,
  Device,
  InputDevice,
} from '../../src/starter/control/controlCircuit.ts';
import { conductingBranches, type StuckContact, wiringConducts } from '../../src/starter/control/evaluate.ts';

type Button = Exclude<ButtonName, 'overloadTest' | 'overloadReset'>;

/** What can be done to a control circuit on the bench. `turns` and `stands` are what the zero-speed switch sees. */
export type BenchAction =
  | `press ${Button}`
  | `release ${Button}`
  | 'overload trips'
  | 'overload is reset'
  | 'supply is lost'
  | 'supply returns'
  | 'turns forward'
  | 'turns reverse'
  | 'stands'
  | 'change-over time passes'
  | 'limit passes';

/** Which contactors, by their coils or by their armatures. */
export type Contactors = 'none' | 'forward' | 'reverse' | 'both';

/** How the bench is set up; absent: in order. */
export interface BenchSetUp {
  /** Absent: there is one. */
  readonly mechanicalInterlock?: boolean;
  /** Contactors whose armature does not drop any more once it has been in. */
  readonly welded?: readonly ('forward' | 'reverse')[];
  readonly stuck?: readonly StuckContact[];
  /** Which of several armatures that are free to move goes first; absent: the first in the circuit. */
  readonly first?: 'firstInCircuit' | 'lastInCircuit';
}

/** A control circuit with its devices, settled after everything that is done to it. */
export interface ControlBench {
  /** Does all of it at one instant and lets every armature follow its coil. */
  act(...actions: readonly BenchAction[]): void;
  /** Contactor coils energised now. */
  coils(): Contactors;
  /** Contactor armatures in now. */
  armatures(): Contactors;
  /** Devices that moved in the last act, in order, such as "forwardContactor out". */
  moves(): readonly string[];
  /** True when both armatures were in at any moment since the set-up. */
  bothWereIn(): boolean;
}

const BUTTONS: Readonly<Record<Button, InputDevice>> = {
  forward: 'forwardButton',
  reverse: 'reverseButton',
  stop: 'stopButton',
  reset: 'resetButton',
  emergencyStop: 'emergencyStop',
};

/** No sound circuit takes as many; a buzzing one never ends. */
const MOST_MOVES = 60;

/**
 * Sets up a circuit at rest that has had its supply for long: timers have elapsed, nothing is pressed. Time passes only where an
 * action says so: timers wait, everything else follows at once, one device after the other.
 */
export function controlBench(circuit: ControlCircuit, setUp: BenchSetUp = {}): ControlBench {
  const { mechanicalInterlock = true, welded = [], stuck = [] } = setUp;
  const coils = setUp.first === 'lastInCircuit' ? [...circuit.coils].reverse() : circuit.coils;
  const hasLockout = circuit.coils.some(({ coil }) => coil === 'lockout');
  const positions: Partial<Record<Device, boolean>> = {};
  let supply = true;
  let turning: 'forward' | 'reverse' | null = null;
  let log: string[] = [];
  let everBoth = false;

  const isIn = (device: Device) => positions[device] === true;

  function energised(device: CoilDevice): boolean {
    const coil = circuit.coils.find((one) => one.coil === device);
    if (coil === undefined || !supply) return false;
    return (
      wiringConducts(circuit, coil, positions, stuck) && conductingBranches(coil, positions, stuck).length > 0
    );
  }

  function mayMove(device: CoilDevice, goesIn: boolean): boolean {
    if (device === 'forwardContactor' || device === 'reverseContactor') {
      const other = device === 'forwardContactor' ? 'reverseContactor' : 'forwardContactor';
      const isWelded = welded.includes(device === 'forwardContactor' ? 'forward' : 'reverse');
      if (!goesIn && isWelded) return false;
      if (goesIn && mechanicalInterlock && isIn(other)) return false;
    }
    return true;
  }

  /** A timer's contacts go over at once in one direction and wait in the other. */
  function waits(device: CoilDevice, goesIn: boolean): boolean {
    const delay = circuit.coils.find((one) => one.coil === device)?.delay;
    return delay !== undefined && goesIn === (delay.kind === 'onDelay');
  }

  function move(device: Device, goesIn: boolean): void {
    positions[device] = goesIn;
    log.push(`${device} ${goesIn ? 'in' : 'out'}`);
    everBoth ||= isIn('forwardContactor') && isIn('reverseContactor');
  }

  /** The switch lets go at low speed whatever holds it; it takes hold only while no solenoid locks it. */
  function switchMoves(): boolean {
    for (const direction of ['forward', 'reverse'] as const) {
      const device = direction === 'forward' ? 'switchForward' : 'switchReverse';
      const shows = turning === direction;
      const free = !shows || !hasLockout || isIn('lockout');
      if (isIn(device) !== shows && free) {
        move(device, shows);
        return true;
      }
    }
    return false;
  }

  function armatureMoves(): boolean {
    for (const { coil } of coils) {
      const goesIn = energised(coil);
      if (isIn(coil) === goesIn || waits(coil, goesIn) || !mayMove(coil, goesIn)) continue;
      move(coil, goesIn);
      return true;
    }
    return false;
  }

  function settle(): void {
    while (switchMoves() || armatureMoves())
      if (log.length > MOST_MOVES) throw new Error(`does not settle: ${log.slice(-8).join(', ')}`);
  }

  function elapse(device: CoilDevice): void {
    const goesIn = energised(device);
    if (isIn(device) !== goesIn) move(device, goesIn);
  }

  function apply(action: BenchAction): void {
    if (action === 'overload trips') positions.overload = true;
    else if (action === 'overload is reset') positions.overload = false;
    else if (action === 'supply is lost') supply = false;
    else if (action === 'supply returns') supply = true;
    else if (action === 'turns forward') turning = 'forward';
    else if (action === 'turns reverse') turning = 'reverse';
    else if (action === 'stands') turning = null;
    else if (action === 'change-over time passes') {
      elapse('forwardTimer');
      elapse('reverseTimer');
    } else if (action === 'limit passes') elapse('limitTimer');
    else {
      const [verb, button] = action.split(' ') as ['press' | 'release', Button];
      positions[BUTTONS[button]] = verb === 'press';
    }
  }

  function named(has: (device: CoilDevice) => boolean): Contactors {
    const forward = has('forwardContactor');
    if (forward && has('reverseContactor')) return 'both';
    if (forward) return 'forward';
    return has('reverseContactor') ? 'reverse' : 'none';
  }

  settle();
  for (const { coil } of circuit.coils) elapse(coil);
  settle();

  return {
    act(...actions) {
      log = [];
      for (const action of actions) apply(action);
      settle();
    },
    coils: () => named(energised),
    armatures: () => named(isIn),
    moves: () => log,
    bothWereIn: () => everBoth,
  };
}
