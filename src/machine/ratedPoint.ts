import { bisect } from '../numeric/bisect.ts';
import { largestBetween } from '../numeric/largestBetween.ts';
import { contradiction } from '../scenario/contradiction.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { breakdown, stiff } from './breakdown.ts';
import { steadyState } from './steadyState.ts';

/** Base of all multiples: current and torque at rated output at the shaft, from the nameplate or from the circuit. */
export interface RatedPoint {
  /** Line current at rated output, A r.m.s. */
  readonly current: number;
  /** N·m */
  readonly torque: number;
  /** rad/s; null when neither power nor speed is given. */
  readonly speed: number | null;
  readonly slip: number | null;
  /** Where the two numbers come from. */
  readonly currentOrigin: RatedOrigin;
  readonly torqueOrigin: RatedOrigin;
}

/**
 * given: stated in the scenario; circuitAtRatedPower: the circuit at the slip where it delivers the rated power;
 * circuitAtRatedSpeed: the circuit at the rated speed.
 */
export type RatedOrigin = 'given' | 'circuitAtRatedPower' | 'circuitAtRatedSpeed';

/**
 * Current and torque at rated output. A stated value wins; otherwise the circuit decides, at the slip where it
 * delivers the rated power, or at the rated speed when no power is stated. The supply counts as stiff here, as a
 * nameplate's does, and nothing is inserted; bearings and windage of the motor count as its own losses.
 *
 * @throws ScenarioError when the scenario gives too little, or a power the circuit cannot deliver (the scenario room
 * refuses the first; the second depends on the circuit)
 */
export function ratedPoint(machine: MachineData, supply: Supply): RatedPoint {
  const { lineVoltage, frequency } = supply;
  const before = known.get(machine);
  if (before?.lineVoltage === lineVoltage && before.frequency === frequency) return before.point;
  const point = foundPoint(machine, supply);
  known.set(machine, { lineVoltage, frequency, point });
  return point;
}

/** A machine never changes, and every run of it asks again. */
const known = new WeakMap<MachineData, { lineVoltage: number; frequency: number; point: RatedPoint }>();

function foundPoint(machine: MachineData, supply: Supply): RatedPoint {
  const { rated } = machine;
  const synchronous = synchronousSpeed(machine, supply);
  const nominal = stiff(supply);
  let slip: number | null = null;
  let origin: RatedOrigin = 'given';
  if (rated.power !== null) {
    const needsCircuit = rated.current === null || rated.torque === null;
    slip = slipAtPower(machine, nominal, rated.power);
    if (slip === null && needsCircuit)
      throw contradiction(
        'machine.rated.power',
        `${rated.power} W`,
        `this circuit delivers at most ${mostPower(machine, nominal).toPrecision(4)} W on this supply`,
        'circuit values, connection (star or delta), voltage and rated power of the same machine',
      );
    origin = 'circuitAtRatedPower';
  } else if (rated.speed !== null) {
    slip = 1 - rated.speed / synchronous;
    origin = 'circuitAtRatedSpeed';
  }
  const atSlip = slip === null ? null : steadyState(machine, nominal, slip);
  const current = rated.current ?? atSlip?.current;
  const torque =
    rated.torque ??
    (atSlip === null || slip === null ? undefined : atSlip.torque - lossTorque(machine, supply, slip));
  if (current === undefined || torque === undefined)
    throw contradiction(
      'machine.rated',
      'too little',
      'no current and torque at rated output can be had from it',
      'a power, a speed, or both a current and a torque',
    );
  return {
    current,
    torque,
    speed: slip === null ? null : (1 - slip) * synchronous,
    slip,
    currentOrigin: rated.current === null ? origin : 'given',
    torqueOrigin: rated.torque === null ? origin : 'given',
  };
}

/** Converted power less that of the motor's own bearings and windage, W. */
function shaftPower(machine: MachineData, supply: Supply, slip: number): number {
  const converted = (1 - slip) * steadyState(machine, supply, slip).airGapPower;
  return converted - lossTorque(machine, supply, slip) * (1 - slip) * synchronousSpeed(machine, supply);
}

/** Bearings and windage of the motor while it turns with the supply's sequence, N·m; an exact zero without them. */
function lossTorque(machine: MachineData, supply: Supply, slip: number): number {
  if (!machine.mechanicalLoss) return 0;
  const speed = (1 - slip) * synchronousSpeed(machine, supply);
  return machine.mechanicalLoss.friction + machine.mechanicalLoss.windage * speed * speed;
}

function synchronousSpeed(machine: MachineData, supply: Supply): number {
  return (2 * Math.PI * supply.frequency) / machine.polePairs;
}

/** Smallest slip that delivers the power, or null. Shaft power peaks at a slip below breakdown. */
function slipAtPower(machine: MachineData, supply: Supply, power: number): number | null {
  const peak = slipOfMostPower(machine, supply);
  if (shaftPower(machine, supply, peak) < power) return null;
  return bisect((slip) => shaftPower(machine, supply, slip) - power, 0, peak);
}

function mostPower(machine: MachineData, supply: Supply): number {
  return shaftPower(machine, supply, slipOfMostPower(machine, supply));
}

/** Width at which the search for the slip of most power stops; power is flat there. */
const SLIP_WIDTH = 1e-6;

function slipOfMostPower(machine: MachineData, supply: Supply): number {
  const last = Math.min(1, breakdown(machine, supply).slip);
  return largestBetween((slip) => shaftPower(machine, supply, slip), 0, last, SLIP_WIDTH).x;
}
