import { largestBetween } from '../numeric/largestBetween.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { breakdown } from './breakdown.ts';
import { type Inserted, NOTHING_INSERTED } from './inserted.ts';
import { ratedPoint } from './ratedPoint.ts';
import { type SteadySupply, steadyState } from './steadyState.ts';

/** The machine in balanced steady state at one speed. */
export interface CharacteristicPoint {
  /** rad/s, mechanical, positive in the direction of the supply's sequence. */
  readonly speed: number;
  readonly slip: number;
  /** Line current, A r.m.s. */
  readonly current: number;
  /** Air-gap torque, N·m. */
  readonly torque: number;
  readonly powerFactor: number;
}

/** The points of a torque–speed curve that have names. */
export interface CharacteristicMarks {
  /** Backwards at synchronous speed, slip 2: the hardest instant of plugging. */
  readonly reverseSynchronous: CharacteristicPoint;
  /** Backwards at rated speed: where plugging from rated load begins; null without a rated slip. */
  readonly pluggingFromRated: CharacteristicPoint | null;
  readonly lockedRotor: CharacteristicPoint;
  /**
   * Smallest torque on the way from rest to the last crest before synchronous speed (IEC 60034-12: to breakdown), where the
   * curve sags there; null where it is least at rest.
   */
  readonly pullUp: CharacteristicPoint | null;
  /** Largest torque while it drives; beyond rest only where the curve has no crest before it. */
  readonly breakdown: CharacteristicPoint;
  /** At rated output; null where the scenario fixes no slip. */
  readonly rated: CharacteristicPoint | null;
  readonly synchronous: CharacteristicPoint;
}

/** A whole curve, in ascending order of speed, the named points among it. */
export interface CharacteristicCurve {
  /** rad/s */
  readonly synchronousSpeed: number;
  readonly points: readonly CharacteristicPoint[];
  readonly marks: CharacteristicMarks;
}

/** How finely the curve is drawn, and what stands in the circuit. */
export interface CharacteristicOptions {
  /** Steps of equal width from one end to the other; 240 by default. */
  readonly steps?: number;
  readonly inserted?: Inserted;
}

const DEFAULT_STEPS = 240;
/** Multiple of the breakdown slip down to which the bend before synchronous speed gets steps of its own. */
const BEND = 2;
/** Parts of the slip from 0 to 1 scanned for the bends of the curve before their exact places are sought. */
const SCAN = 200;
/** Accuracy of the slip of crest and sag; torque is flat there. */
const WIDTH = 1e-9;

/**
 * Torque and current of the equivalent circuit from synchronous speed backwards (slip 2) to synchronous speed (slip 0). The
 * bend between breakdown and synchronous speed, narrow in large machines, is drawn as finely as the rest.
 *
 * @param supply as it stands; a maker's curve is that of a stiff supply
 * @throws ScenarioError where the rated power is more than the circuit delivers
 */
export function characteristicCurve(
  machine: MachineData,
  supply: Supply,
  options: CharacteristicOptions = {},
): CharacteristicCurve {
  const { steps = DEFAULT_STEPS, inserted = NOTHING_INSERTED } = options;
  const synchronousSpeed = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const at = (slip: number) => pointAt(machine, supply, slip, synchronousSpeed, inserted);
  const { crest, sag } = bendsOf((slip) => at(slip).torque);
  const largest = breakdown(machine, supply, inserted).slip;
  const peak = largest > 1 ? (crest ?? largest) : largest;
  const ratedSlip = ratedPoint(machine, supply).slip;
  const marks: CharacteristicMarks = {
    reverseSynchronous: at(2),
    pluggingFromRated: ratedSlip === null ? null : at(2 - ratedSlip),
    lockedRotor: at(1),
    pullUp: sag === null ? null : at(sag),
    breakdown: at(peak),
    rated: ratedSlip === null ? null : at(ratedSlip),
    synchronous: at(0),
  };
  const bend = Math.min(BEND * peak, 2);
  const named = Object.values(marks).flatMap((mark) => (mark === null ? [] : [mark.slip]));
  const slips = new Set([
    ...Array.from({ length: steps + 1 }, (_, i) => (2 * i) / steps),
    ...Array.from({ length: steps + 1 }, (_, i) => (bend * i) / steps),
    ...named.filter((slip) => slip <= 2),
  ]);
  const points = [...slips].sort((a, b) => b - a).map(at);
  return { synchronousSpeed, points, marks };
}

function pointAt(
  machine: MachineData,
  supply: SteadySupply,
  slip: number,
  synchronousSpeed: number,
  inserted: Inserted,
): CharacteristicPoint {
  const { current, torque, powerFactor } = steadyState(machine, supply, slip, inserted);
  return { speed: (1 - slip) * synchronousSpeed, slip, current, torque, powerFactor };
}

/** The last crest before synchronous speed and the sag between it and rest, by slip; null where there is none. */
function bendsOf(torqueAt: (slip: number) => number): { crest: number | null; sag: number | null } {
  const torques = Array.from({ length: SCAN + 1 }, (_, i) => torqueAt(i / SCAN));
  const highest = torques.findIndex((torque, i) => torque > (torques[i + 1] ?? Number.POSITIVE_INFINITY));
  if (highest === -1) return { crest: null, sag: null };
  const about = (i: number) => [(i - 1) / SCAN, Math.min((i + 1) / SCAN, 1)] as const;
  const crest = largestBetween(torqueAt, ...about(highest), WIDTH).x;
  const lowest = torques.indexOf(Math.min(...torques.slice(highest)), highest);
  // Next to rest the sag may still lie inside.
  const sag = largestBetween((slip) => -torqueAt(slip), ...about(lowest), WIDTH).x;
  return { crest, sag: sag < 1 - WIDTH && torqueAt(sag) < torques.at(-1)! ? sag : null };
}
