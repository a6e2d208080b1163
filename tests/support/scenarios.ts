import type {
  Action,
  ControlData,
  InitialState,
  LoadData,
  Scenario,
  SolverData,
  StarterData,
  Supply,
} from '../../src/scenario/scenario.ts';
import type { TextbookMachine } from './textbookMachines.ts';

/** Contactors without mechanics: no operating times, poles that interrupt and transfer at once. */
export const IDEAL_STARTER: StarterData = {
  closingTime: 0,
  openingTime: 0,
  closingScatter: [0, 0, 0],
  openingScatter: [0, 0, 0],
  changeoverDelay: 0,
  changeoverGivenAs: 'delay',
  poles: 'ideal',
  minimumArcingTime: 0,
  exchangedPhases: 'BC',
  zeroSpeedSwitch: null,
};

/** Contactors with ordinary operating times, arcs, and enough delay for the arcs to end. */
export const ARCING_STARTER: StarterData = {
  ...IDEAL_STARTER,
  closingTime: 0.022,
  openingTime: 0.012,
  changeoverDelay: 0.03,
  poles: 'arcing',
};

/** The plainest wired control: reversing through stop, nothing beside the contactors. */
export const PLAIN_CONTROL: ControlData = {
  scheme: 'throughStop',
  memoryRelay: false,
  readyRelay: false,
  emergencyStop: { category: 0 },
  changeoverTimer: 0,
  mechanicalInterlock: true,
  relayTime: 0.01,
  scanTime: 0,
  coilVoltage: null,
  overload: null,
};

/** What differs from an unloaded machine on ideal contactors, at rest, integrated to 1e-9. */
export interface Variation {
  readonly supply?: Partial<Supply>;
  readonly load?: Partial<LoadData>;
  readonly starter?: Partial<StarterData>;
  readonly initial?: InitialState;
  readonly actions?: readonly Action[];
  readonly solver?: Partial<SolverData>;
  /** Inertia of rotor and load together, kg·m². */
  readonly inertia?: number;
}

/** A scenario of a textbook machine. */
export function scenarioOf(machine: TextbookMachine, variation: Variation = {}): Scenario {
  return {
    schemaVersion: 1,
    title: 'test',
    description: '',
    supply: { ...machine.supply, ...variation.supply },
    machine: { ...machine.machine, inertia: variation.inertia ?? machine.machine.inertia },
    load: { inertia: 0, torques: [], ...variation.load },
    starter: { ...IDEAL_STARTER, ...variation.starter },
    initial: variation.initial ?? 'rest',
    actions: variation.actions ?? [],
    solver: {
      relativeTolerance: 1e-9,
      endTime: 'auto',
      maxSteps: 1_000_000,
      frame: 'auto',
      ...variation.solver,
    },
  };
}

/** From rest, the forward contactor closes at t = 0. */
export function startAtOnce(machine: TextbookMachine, endTime: number, variation: Variation = {}): Scenario {
  return scenarioOf(machine, {
    ...variation,
    actions: [{ at: 0, do: 'startForward' }],
    solver: { endTime, ...variation.solver },
  });
}

/** From the steady state, two phases are exchanged at t = 0 without dead time; the supply angle is φ there. */
export function exchangeAtOnce(
  machine: TextbookMachine,
  phi: number,
  endTime: number,
  variation: Variation = {},
): Scenario {
  return scenarioOf(machine, {
    ...variation,
    supply: { ...variation.supply, angle: phi },
    initial: 'runningForward',
    actions: [{ at: 0, do: 'startReverse' }],
    solver: { endTime, ...variation.solver },
  });
}
