import type { LoadTorque, MachineData, Scenario, StarterData } from '../../scenario/scenario.ts';

/** By how much something of the set may differ from what the scenario states. */
export interface Tolerance {
  readonly key: ToleranceKey;
  /** What it is a tolerance of: "stator resistance". */
  readonly words: string;
  /** ± this, as a share or in s. */
  readonly size: number;
  /** What `size` is: a share of what is stated, or seconds. */
  readonly unit: 'share' | 's';
  /**
   * What it is tried on. everything: all runs, where crests are lowest and highest; motion: all runs, at one closing instant, for it hardly
   * moves a crest; changeOver: the plug stop; steady: no run at all.
   */
  readonly moves: 'everything' | 'motion' | 'changeOver' | 'steady';
}

/** What of a set is uncertain. */
export type ToleranceKey =
  | 'statorResistance'
  | 'rotorResistance'
  | 'leakage'
  | 'magnetising'
  | 'ironLoss'
  | 'inertia'
  | 'friction'
  | 'supply'
  | 'closingTime'
  | 'openingTime'
  | 'dropOutSpeed';

/**
 * Tolerances of a set whose circuit comes from tests. Common practice, no source; resistances include that the winding is some 12 K
 * warmer or colder than stated (copper: 0.39 % per kelvin).
 */
export const TOLERANCES: readonly Tolerance[] = [
  share('statorResistance', 'stator resistance, temperature included', 0.05),
  share('rotorResistance', 'rotor resistance, temperature included', 0.05),
  share('leakage', 'leakage inductances', 0.1),
  share('magnetising', 'magnetising inductance', 0.1),
  share('ironLoss', 'iron loss', 0.2, 'steady'),
  share('inertia', 'inertia', 0.05, 'motion'),
  share('friction', 'friction and windage', 0.2, 'motion'),
  share('supply', 'voltage of the supply', 0.02),
  {
    key: 'closingTime',
    words: 'closing time of the contactors',
    size: 0.002,
    unit: 's',
    moves: 'changeOver',
  },
  {
    key: 'openingTime',
    words: 'opening time of the contactors',
    size: 0.001,
    unit: 's',
    moves: 'changeOver',
  },
  {
    key: 'dropOutSpeed',
    words: 'drop-out speed of the switch',
    size: 0.2,
    unit: 'share',
    moves: 'changeOver',
  },
];

function share(
  key: ToleranceKey,
  words: string,
  size: number,
  moves: Tolerance['moves'] = 'everything',
): Tolerance {
  return { key, words, size, unit: 'share', moves };
}

/**
 * The set with one of its data off by part of its tolerance.
 *
 * @param part of the tolerance, −1 … 1
 */
export function offBy(scenario: Scenario, { key, size }: Tolerance, part: number): Scenario {
  const { machine, load, starter, supply } = scenario;
  const by = part * size;
  const k = 1 + by;
  const withMachine = (changes: Partial<MachineData>): Scenario => ({
    ...scenario,
    machine: { ...machine, ...changes },
  });
  const withStarter = (changes: Partial<StarterData>): Scenario => ({
    ...scenario,
    starter: { ...starter, ...changes },
  });
  switch (key) {
    case 'statorResistance':
      return withMachine({ Rs: k * machine.Rs });
    case 'rotorResistance':
      return withMachine({ cages: machine.cages.map((cage) => ({ ...cage, Rr: k * cage.Rr })) });
    case 'leakage':
      return withMachine({
        Lls: k * machine.Lls,
        cages: machine.cages.map((cage) => ({ ...cage, Llr: k * cage.Llr })),
      });
    case 'magnetising':
      return withMachine({
        Lm: k * machine.Lm,
        ...(machine.mainSaturation !== undefined && {
          mainSaturation: machine.mainSaturation.map((point) => ({ ...point, flux: k * point.flux })),
        }),
      });
    case 'ironLoss':
      // The loss goes with the voltage squared over the resistance.
      return machine.core === undefined
        ? scenario
        : withMachine({ core: { R: machine.core.R / k, L: machine.core.L / k } });
    case 'inertia':
      return {
        ...scenario,
        machine: { ...machine, inertia: k * machine.inertia },
        load: { ...load, inertia: k * load.inertia },
      };
    case 'friction':
      return withFriction(scenario, k);
    case 'supply':
      return { ...scenario, supply: { ...supply, lineVoltage: k * supply.lineVoltage } };
    case 'closingTime':
      return withStarter({ closingTime: Math.max(0, starter.closingTime + by) });
    case 'openingTime':
      return withStarter({ openingTime: Math.max(0, starter.openingTime + by) });
    case 'dropOutSpeed': {
      const { zeroSpeedSwitch } = starter;
      if (zeroSpeedSwitch === null) return scenario;
      return withStarter({
        zeroSpeedSwitch: { ...zeroSpeedSwitch, dropOutSpeed: k * zeroSpeedSwitch.dropOutSpeed },
      });
    }
  }
}

function withFriction(scenario: Scenario, k: number): Scenario {
  const { machine, load } = scenario;
  const { mechanicalLoss } = machine;
  return {
    ...scenario,
    machine: {
      ...machine,
      ...(mechanicalLoss !== undefined && {
        mechanicalLoss: { friction: k * mechanicalLoss.friction, windage: k * mechanicalLoss.windage },
      }),
    },
    load: { ...load, torques: load.torques.map((torque) => scaled(torque, k)) },
  };
}

/** Loads that are no friction (a weight, a table, constant power) are what the scenario says. */
function scaled(torque: LoadTorque, k: number): LoadTorque {
  switch (torque.kind) {
    case 'friction':
      return { ...torque, torque: k * torque.torque, breakaway: k * torque.breakaway };
    case 'viscous':
    case 'fan':
      return { ...torque, coefficient: k * torque.coefficient };
    default:
      return torque;
  }
}
