import type { ControlData, InitialState, StarterData } from '../../scenario/scenario.ts';
import type { CoilDevice, ControlCircuit } from './controlCircuit.ts';
import { conductingBranches, type Positions, type StuckContact, wiringConducts } from './evaluate.ts';
import { circuitOfStarter } from './schemes.ts';
import { stuckContacts } from './stuckContacts.ts';

/**
 * Voltage at the coils. high: enough to pick up; between: enough to hold what is in; low: coils drop out.
 */
export type VoltageLevel = 'high' | 'between' | 'low';

/** Which coils are energised. */
export type Coils = Readonly<Partial<Record<CoilDevice, boolean>>>;

/** What a program wrote last: per coil the branches that conducted when it read its inputs, by their place. */
export type Outputs = Readonly<Partial<Record<CoilDevice, readonly number[]>>>;

/** The discrete state of the control circuit. Plain data. */
export interface ControlState {
  readonly circuit: ControlCircuit;
  readonly data: ControlData;
  readonly stuck: readonly StuckContact[];
  readonly positions: Positions;
  readonly coils: Coils;
  readonly voltage: VoltageLevel;
  /** The voltage has been low and not yet high again. */
  readonly dipped: boolean;
  /** Outputs that the program wrote last; null: wired. */
  readonly outputs: Outputs | null;
  /** The last thing that happened from outside: what follows is caused by it. */
  readonly root: Root;
  /** The overload relay has cooled enough to be reset. */
  readonly mayReset: boolean;
}

/** What set things off, and when, s. */
export interface Root {
  readonly t: number;
  readonly kind: 'start' | 'hand' | 'switch' | 'overload' | 'supply' | 'voltage';
}

/** Control circuit at t = 0, all relays settled; null where the scenario has none. */
export function initialControl(
  data: StarterData,
  initial: InitialState,
  contact: { readonly forward: boolean; readonly reverse: boolean },
): ControlState | null {
  const circuit = circuitOfStarter(data);
  if (circuit === null || data.control === undefined) return null;
  const stuck = stuckContacts(data.faults ?? []);
  const running = initial === 'rest' ? null : initial === 'runningForward' ? 'forward' : 'reverse';
  const seed: Positions = {
    switchForward: contact.forward,
    switchReverse: contact.reverse,
    ...(running === null
      ? {}
      : {
          [`${running}Contactor`]: true,
          [`${running}Run`]: true,
          [`${running}Memory`]: true,
          lockout: true,
          ready: true,
        }),
  };
  const { positions, coils } = settleAtOnce(circuit, seed, stuck);
  return {
    circuit,
    data: data.control,
    stuck,
    positions,
    coils,
    voltage: 'high',
    dipped: false,
    outputs: data.control.scanTime > 0 ? branchesAskedFor(circuit, positions, stuck) : null,
    root: { t: 0, kind: 'start' },
    mayReset: true,
  };
}

/**
 * Relays and timers take the position that the circuit holds them in for good; contactors stay where they are, because a
 * machine does not run at t = 0 by the mere look of its circuit.
 */
function settleAtOnce(
  circuit: ControlCircuit,
  seed: Positions,
  stuck: readonly StuckContact[],
): { readonly positions: Positions; readonly coils: Coils } {
  let positions = seed;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const before = positions;
    for (const one of circuit.coils) {
      if (isContactor(one.coil)) continue;
      const energised =
        wiringConducts(circuit, one, positions, stuck) &&
        conductingBranches(one, positions, stuck).length > 0;
      if ((positions[one.coil] === true) !== energised) positions = { ...positions, [one.coil]: energised };
    }
    if (before === positions) break;
  }
  const known = new Set<string>(circuit.coils.map((one) => one.coil));
  const coils = Object.fromEntries(circuit.coils.map((one) => [one.coil, positions[one.coil] === true]));
  const kept = Object.fromEntries(
    Object.entries(positions).filter(([device]) => known.has(device) || !(device in COIL_SEEDS)),
  );
  return { positions: kept, coils };
}

/** Relays settle in as many passes as there are relays in a chain. */
const MOST_PASSES = 12;

/** Devices of the seed that a circuit need not have. */
const COIL_SEEDS = {
  forwardRun: 0,
  reverseRun: 0,
  forwardMemory: 0,
  reverseMemory: 0,
  lockout: 0,
  ready: 0,
} as const;

/** Branches of every coil that conduct: what a program that reads its inputs now will write. */
export function branchesAskedFor(
  circuit: ControlCircuit,
  positions: Positions,
  stuck: readonly StuckContact[],
): Outputs {
  return Object.fromEntries(
    circuit.coils.map((one) => {
      const conducting = conductingBranches(one, positions, stuck);
      return [one.coil, one.branches.flatMap((branch, i) => (conducting.includes(branch) ? [i] : []))];
    }),
  );
}

/** True for the two devices whose poles carry the motor's current. */
export function isContactor(device: CoilDevice): device is 'forwardContactor' | 'reverseContactor' {
  return device === 'forwardContactor' || device === 'reverseContactor';
}
