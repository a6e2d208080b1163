/**
 * The input of the phase-variable model: the fields of a scenario that determine a run, in SI units.
 * Written down again here on purpose: this folder takes nothing from the code it checks.
 */
export interface ScenarioShape {
  readonly schemaVersion: 1;
  readonly title: string;
  readonly description: string;
  readonly supply: {
    readonly lineVoltage: number;
    readonly frequency: number;
    readonly angle: number;
    readonly sourceResistance: number;
    readonly sourceInductance: number;
    readonly cable?: { readonly resistance: number; readonly inductance: number };
  };
  readonly machine: {
    readonly connection: 'star' | 'delta';
    readonly polePairs: number;
    readonly Rs: number;
    readonly Lls: number;
    readonly Lm: number;
    readonly cages: readonly { readonly Rr: number; readonly Llr: number }[];
    readonly inertia: number;
    readonly rated: {
      readonly current: number | null;
      readonly torque: number | null;
      readonly power: number | null;
      readonly speed: number | null;
    };
    readonly mainSaturation?: readonly CurvePoint[];
    readonly leakageSaturation?: {
      readonly stator: LeakageShape | null;
      readonly cages: readonly (LeakageShape | null)[];
    };
    readonly core?: { readonly R: number; readonly L: number };
    readonly mechanicalLoss?: { readonly friction: number; readonly windage: number };
    readonly rotorResistors?: RotorResistorShape;
  };
  readonly load: {
    readonly inertia: number;
    readonly gear?: GearShape;
    readonly coupling?: CouplingShape;
    readonly torques: readonly LoadShape[];
  };
  readonly starter: {
    readonly closingTime: number;
    readonly openingTime: number;
    readonly closingScatter: readonly [number, number, number];
    readonly openingScatter: readonly [number, number, number];
    readonly changeoverDelay: number;
    readonly changeoverGivenAs: 'delay' | 'deadTime' | 'default';
    readonly poles: 'arcing' | 'ideal';
    readonly minimumArcingTime: number;
    readonly exchangedPhases: 'AB' | 'BC' | 'CA';
    readonly zeroSpeedSwitch: {
      readonly dropOutSpeed: number;
      readonly pickUpSpeed: number;
      readonly delay: number;
    } | null;
    readonly lineResistors?: LineResistorShape;
    readonly plugConnection?: 'star';
    readonly windingOrder?: 'AB' | 'AC';
    readonly faults?: readonly FaultShape[];
  };
  readonly initial: 'rest' | 'runningForward' | 'runningReverse';
  readonly actions: readonly { readonly at: number; readonly do: ActionShape }[];
  readonly solver: {
    readonly relativeTolerance: number;
    readonly endTime: number | 'auto';
    readonly maxSteps: number;
    readonly frame: 'auto' | 'stationary';
  };
}

export type ActionShape = 'startForward' | 'startReverse' | 'plug' | 'coast';

export type LoadShape =
  | { readonly kind: 'friction'; readonly torque: number; readonly breakaway: number }
  | { readonly kind: 'viscous'; readonly coefficient: number }
  | { readonly kind: 'fan'; readonly coefficient: number }
  | { readonly kind: 'gravity'; readonly torque: number }
  | { readonly kind: 'constantPower'; readonly power: number; readonly baseSpeed: number }
  | {
      readonly kind: 'table';
      readonly points: readonly { readonly speed: number; readonly torque: number }[];
      readonly mirrored: boolean;
    };

/** A point of the magnetising curve, crest values: A and Wb. */
export interface CurvePoint {
  readonly current: number;
  readonly flux: number;
}

/** Leakage λ(i) = L·[r·i + (1 − r)·i/√(1 + (i/I)²)], r remaining, I current. */
export interface LeakageShape {
  readonly current: number;
  readonly remaining: number;
}

export interface RotorResistorShape {
  readonly starting: readonly { readonly resistance: number; readonly duration: number }[];
  readonly plugging: number;
}

export interface GearShape {
  readonly ratio: number;
  readonly efficiency: number;
  readonly backwardEfficiency: number;
}

export interface CouplingShape {
  readonly stiffness: number;
  readonly damping: number;
  readonly backlash: number;
}

export interface LineResistorShape {
  readonly resistance: number;
  readonly closingTime: number;
  readonly openingTime: number;
  readonly bypassAfter: number | null;
}

export type PhaseLetter = 'A' | 'B' | 'C';

export type FaultShape =
  | { readonly kind: 'lostPhase'; readonly phase: PhaseLetter; readonly from: number }
  | {
      readonly kind: 'weldedPole' | 'deadPole';
      readonly contactor: 'forward' | 'reverse';
      readonly pole: PhaseLetter;
    };
