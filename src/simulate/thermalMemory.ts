import { GAUSS_POINTS } from '../numeric/gaussPoints.ts';
import type { OverloadData } from '../scenario/scenario.ts';
import { heatAfter, overloadConstants, TRIP_LEVEL, weightedSquares } from '../starter/overloadRelay.ts';
import type { Step } from './step.ts';

/** Heat of the overload relay's three phases, shares of the trip level. */
export type Heat = readonly [number, number, number];

/** Reads the three squared line currents at an instant inside a step, A². */
export type SquaredCurrents = (step: Step, t: number, out: [number, number, number]) => void;

/**
 * Cells per supply period in which the squared current, which swings at twice the supply frequency, is read at five points:
 * 180° a cell.
 */
const CELLS_PER_PERIOD = 4;

/** Follows the relay's heat through the steps of a segment. */
export interface ThermalMemory {
  /** Heat at `t` inside a step that begins with the heat of `begin`. */
  readonly at: (step: Step, t: number) => Heat;
  /** The step ends at `t`; the next one begins there. */
  readonly advance: (step: Step, t: number) => Heat;
}

/**
 * The relay's memory over one segment.
 *
 * @param begin heat at the segment's start
 * @param read null: no current flows, the relay only cools
 * @param period of the supply, s
 */
export function thermalMemory(
  overload: OverloadData,
  begin: Heat,
  read: SquaredCurrents | null,
  period: number,
): ThermalMemory {
  const constants = overloadConstants(overload.tripClass);
  const squares: [number, number, number] = [0, 0, 0];
  const columns = [0, 1, 2].map(() => new Float64Array(GAUSS_POINTS.length));
  let start = begin;
  // The last instant asked for inside the step: probes ascend, so each goes on from the one before.
  let known: { readonly step: Step; readonly t: number; readonly heat: Heat } | null = null;

  function over(step: Step, from: Heat, t0: number, t1: number): Heat {
    if (read === null) return map(from, (heat) => heatAfter(heat, t1 - t0, 0, constants, overload.setting));
    let heat = from;
    const cells = Math.max(1, Math.ceil(((t1 - t0) / period) * CELLS_PER_PERIOD));
    const width = (t1 - t0) / cells;
    for (let cell = 0; cell < cells; cell++) {
      for (const [j, { x }] of GAUSS_POINTS.entries()) {
        read(step, t0 + (cell + x) * width, squares);
        for (const phase of [0, 1, 2] as const) columns[phase]![j] = squares[phase];
      }
      heat = map(heat, (before, phase) => {
        const weighted = weightedSquares(width, columns[phase]!, constants.tau);
        return heatAfter(before, width, weighted, constants, overload.setting);
      });
    }
    return heat;
  }

  function at(step: Step, t: number): Heat {
    const goesOn = known !== null && known.step === step && known.t <= t;
    const from = goesOn ? known! : { t: step.t0, heat: start };
    const heat = t > from.t ? over(step, from.heat, from.t, t) : from.heat;
    known = { step, t, heat };
    return heat;
  }

  return {
    at,
    advance: (step, t) => {
      start = at(step, t);
      known = null;
      return start;
    },
  };
}

/** The hottest phase, less the trip level: rises through zero when the relay trips. */
export function aboveTripLevel(heat: Heat): number {
  return Math.max(...heat) - TRIP_LEVEL;
}

function map([a, b, c]: Heat, change: (heat: number, phase: number) => number): Heat {
  return [change(a, 0), change(b, 1), change(c, 2)];
}
