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
  };
  readonly load: { readonly inertia: number; readonly torques: readonly LoadShape[] };
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
  | { readonly kind: 'gravity'; readonly torque: number };
