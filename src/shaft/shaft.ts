import { raised, squared } from '../numeric/raised.ts';
import type { CouplingData, Scenario } from '../scenario/scenario.ts';
import { type SpeedPieces, speedPieces } from './speedPieces.ts';

/**
 * Constants of rotor and load: one mass, or two joined by an elastic coupling. Load quantities are referred to the motor's
 * speed (inertia by ratio², torque by ratio), the loss of the gear left out.
 */
export interface Shaft {
  /** Rotor plus load, kg·m². */
  readonly inertia: number;
  /** Rotor alone, kg·m². */
  readonly motorInertia: number;
  /** Load alone, kg·m². */
  readonly loadInertia: number;
  /** Motor speed over load speed; 1 without a gear. */
  readonly ratio: number;
  /** Null: no gear, or one without loss. */
  readonly gear: GearEfficiencies | null;
  /** Null: load and motor are one mass. */
  readonly coupling: CouplingData | null;
  /** Loss torques of the motor itself, and of its brake while that is set. */
  readonly motor: MotorLoss;
  /** Of the load, N·m·s/rad. */
  readonly viscous: number;
  /** Of the load, N·m·s²/rad². */
  readonly fan: number;
  /** Of the load, N·m, positive against forward rotation in either direction. */
  readonly gravity: number;
  /** Dry friction of the load while turning, N·m. */
  readonly friction: number;
  /** Dry friction that holds the load at rest, N·m. */
  readonly breakaway: number;
  /** Loads that are smooth in pieces of speed: tables and constant power. */
  readonly pieces: readonly SpeedPieces[];
  /** A mechanical brake is set. */
  readonly isBraked?: true;
  /** Torque that is nothing beside those of this machine, N·m. */
  readonly negligibleTorque: number;
}

/** Efficiencies of a gear with loss, while the motor drives and while the load drives. */
export interface GearEfficiencies {
  /** Efficiency while the motor drives the load, 0 < η ≤ 1. */
  readonly forward: number;
  /** Efficiency while the load drives the motor, 0 < η ≤ 1. */
  readonly backward: number;
}

/** Bearings and windage of the motor. */
export interface MotorLoss {
  /** Dry, N·m; holds as much at rest. */
  readonly friction: number;
  /** N·m·s²/rad² */
  readonly windage: number;
}

/**
 * Which way dry friction acts: against forward rotation (+1), against reverse rotation (−1), or holding the shaft at
 * rest (0). Fixed within a segment, so that the right-hand side stays smooth.
 */
export type FrictionDirection = -1 | 0 | 1;

/**
 * Part of the machine's own torque scale below which the direction of power in a gear is left as it is. Well above what the
 * integration leaves of a torque that has died away, so that a gear does not turn over and over at no load, and too little to
 * be seen in any result.
 */
const NEGLIGIBLE = 1e-7;

/** Refers a scenario's load to the motor and sums its torques by kind. */
export function shaftOf(scenario: Pick<Scenario, 'machine' | 'load' | 'supply'>): Shaft {
  const { machine, load } = scenario;
  const ratio = load.gear?.ratio ?? 1;
  const sum = { viscous: 0, fan: 0, gravity: 0, friction: 0, breakaway: 0 };
  const pieces: SpeedPieces[] = [];
  for (const part of load.torques)
    switch (part.kind) {
      case 'friction':
        sum.friction += part.torque / ratio;
        sum.breakaway += part.breakaway / ratio;
        break;
      case 'gravity':
        sum.gravity += part.torque / ratio;
        break;
      case 'viscous':
        sum.viscous += part.coefficient / squared(ratio);
        break;
      case 'fan':
        sum.fan += part.coefficient / raised(ratio, 3);
        break;
      case 'constantPower':
      case 'table':
        pieces.push(speedPieces(part, ratio));
        break;
      default:
        part satisfies never;
    }
  const loadInertia = load.inertia / squared(ratio);
  return {
    inertia: machine.inertia + loadInertia,
    motorInertia: machine.inertia,
    loadInertia,
    ratio,
    gear: gearEfficiencies(scenario),
    coupling: load.coupling ?? null,
    motor: {
      friction: machine.mechanicalLoss?.friction ?? 0,
      windage: machine.mechanicalLoss?.windage ?? 0,
    },
    ...sum,
    pieces,
    negligibleTorque: NEGLIGIBLE * torqueScale(scenario),
  };
}

/** Number of states: speed and position; with a coupling the speed of the load and the twist as well. */
export function shaftSize(shaft: Shaft): 2 | 4 {
  return shaft.coupling === null ? 2 : 4;
}

function gearEfficiencies({ load }: Pick<Scenario, 'load'>): GearEfficiencies | null {
  const { gear } = load;
  if (gear === undefined || (gear.efficiency === 1 && gear.backwardEfficiency === 1)) return null;
  return { forward: gear.efficiency, backward: gear.backwardEfficiency };
}

/** Torque of the magnetising current at right angles to the rated flux, N·m: of the order of rated torque. */
function torqueScale({ machine, supply }: Pick<Scenario, 'machine' | 'supply'>): number {
  const flux = (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency);
  return (1.5 * machine.polePairs * squared(flux)) / machine.Lm;
}
