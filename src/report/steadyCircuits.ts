import { type Inserted, NOTHING_INSERTED } from '../machine/inserted.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { findClosings } from './closings.ts';
import { formatNumber } from './formatQuantity.ts';

/** A circuit in which a run could settle: a phase sequence and what stands in the circuit with it. */
export interface SteadyCircuit {
  /** 1 forward, −1 reverse. */
  readonly sequence: 1 | -1;
  readonly inserted: Inserted;
}

/** More curves of one sequence than this cannot be told apart. */
const MOST_OF_A_SEQUENCE = 5;

/**
 * The circuits with which each contactor was in, in the order of the run, forward ones first. A sequence that the run does
 * not contain is there as built.
 */
export function steadyCircuits(trajectory: Trajectory): SteadyCircuit[] {
  const closings = findClosings(trajectory);
  const { initial } = trajectory.scenario;
  const found: SteadyCircuit[] = [];
  for (const segment of trajectory.segments) {
    if (segment.kind !== 'three') continue;
    const closed = closings.findLast((closing) => closing.touch <= segment.t0)?.contactor;
    const reverse = closed === undefined ? initial === 'runningReverse' : closed === 'reverse';
    const sequence = reverse ? -1 : 1;
    const { inserted } = segment;
    if (!found.some((other) => other.sequence === sequence && sameInserted(other.inserted, inserted)))
      found.push({ sequence, inserted });
  }
  return ([1, -1] as const).flatMap((sequence): SteadyCircuit[] => {
    const own = found.filter((circuit) => circuit.sequence === sequence).slice(0, MOST_OF_A_SEQUENCE);
    return own.length > 0 ? own : [{ sequence, inserted: NOTHING_INSERTED }];
  });
}

/** ", star, 0.5 Ω lines": what stands in the circuit, for the label of a curve; '' for the circuit as built. */
export function insertedWords({ star, lineResistance, rotorResistance }: Inserted): string {
  return [
    ...(star ? [', star'] : []),
    ...(lineResistance > 0 ? [`, ${formatNumber(lineResistance)} Ω lines`] : []),
    ...(rotorResistance > 0 ? [`, ${formatNumber(rotorResistance)} Ω rotor`] : []),
  ].join('');
}

function sameInserted(a: Inserted, b: Inserted): boolean {
  return (
    a.star === b.star && a.lineResistance === b.lineResistance && a.rotorResistance === b.rotorResistance
  );
}
