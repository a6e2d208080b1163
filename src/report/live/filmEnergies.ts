import { type Quadrature, quadratureOf } from '../../measure/quadrature.ts';
import { observeAt, stateBuffer } from '../../simulate/segment.ts';
import { newInstant, type Trajectory } from '../../simulate/trajectory.ts';
import { displayUnit, type UnitSystem } from '../formatQuantity.ts';
import type { FilmEnergies, FilmEnergy } from './film.ts';

/** More instants than this are not posted: every n-th of a long run. */
export const MOST_INSTANTS = 20_000;

/**
 * Where the energy has gone up to each instant: in = all other rows together. Heats and works are integrals; magnetic, kinetic
 * and twist energy are read at the instants, so that none is a remainder. Rows that are zero throughout are left out.
 */
export function filmEnergies(
  trajectory: Trajectory,
  units: UnitSystem,
  mostInstants = MOST_INSTANTS,
): FilmEnergies {
  const quadrature = quadratureOf(trajectory);
  const kept = keptInstants(quadrature.cellEdge.length, mostInstants);
  const stored = storedEnergies(quadrature, kept);
  const { cumulative } = quadrature;
  const perSi = displayUnit('J', { system: units }).perSi;
  const row = (
    key: FilmEnergy['key'],
    label: string,
    quantity: FilmEnergy['quantity'],
    ...parts: readonly Float64Array[]
  ): FilmEnergy => ({
    key,
    label,
    quantity,
    values: Float64Array.from(kept, (k) => perSi * parts.reduce((sum, part) => sum + part[k]!, 0)),
  });
  const c = cumulative;
  const rows = [
    row('in', 'Electrical energy in', 'electrical', c.sourcePower),
    row('source', 'Heat in the source', 'heat', c.sourceLoss),
    row('lines', linesLabel(quadrature), 'heat', c.cableLoss, c.lineResistorLoss, stored.released),
    row('stator', 'Stator heat', 'heat', c.statorLoss),
    row('cage', 'Rotor heat', 'heat', c.cage1Loss, c.cage2Loss),
    row('rotorResistors', 'Heat in the slip-ring resistors', 'heat', c.rotorResistorLoss),
    row('iron', 'Iron loss', 'heat', c.ironLoss),
    row('magnetic', 'Change of magnetic energy', 'stored', stored.magnetic),
    row('shaft', shaftLabel(trajectory), 'stored', stored.shaft),
    row(
      'load',
      'Load, friction and windage',
      'work',
      c.frictionPower,
      c.windagePower,
      c.loadPower,
      c.gearLoss,
      c.couplingLoss,
    ),
  ];
  return {
    t: Float64Array.from(kept, (k) => quadrature.cellEdge[k]!),
    rows: rows.filter(({ values }) => values.some((value) => value !== 0)),
  };
}

/** Changes since the start of the run at the cell edges that are kept, J. */
interface StoredEnergies {
  readonly magnetic: Float64Array;
  /** Kinetic energy and the twist of a coupling. */
  readonly shaft: Float64Array;
  /** Magnetic energy that ideal poles have set free: what is missing after a change of the conducting set. */
  readonly released: Float64Array;
}

function storedEnergies(
  { trajectory, cellCount, cellEdge, cellSegment, cellStep }: Quadrature,
  kept: readonly number[],
): StoredEnergies {
  const magnetic = new Float64Array(cellCount + 1);
  const shaft = new Float64Array(cellCount + 1);
  const released = new Float64Array(cellCount + 1);
  const chops = trajectory.interruptionLoss > 0;
  const y = stateBuffer();
  const at = newInstant();
  const read = (cell: number, t: number) => observeAt(cellSegment[cell]!, cellStep[cell]!, t, y, at);
  read(0, cellEdge[0]!);
  const magnetic0 = at.magneticEnergy;
  const shaft0 = at.kinetic + at.twistEnergy;
  // What ideal poles set free adds up over all instants; nothing else does.
  const instants = chops ? cellEdge.keys() : kept;
  for (const k of instants) {
    const t = cellEdge[k]!;
    // Kinetic energy is continuous; magnetic energy too, but where ideal poles chop a current.
    let jump = 0;
    if (chops && k > 0 && k < cellCount && cellSegment[k] !== cellSegment[k - 1]) {
      read(k - 1, t);
      jump = at.magneticEnergy;
      read(k, t);
      jump -= at.magneticEnergy;
    } else read(Math.min(k, cellCount - 1), t);
    magnetic[k] = at.magneticEnergy - magnetic0;
    shaft[k] = at.kinetic + at.twistEnergy - shaft0;
    released[k] = (released[k - 1] ?? 0) + jump;
  }
  return { magnetic, shaft, released };
}

function linesLabel({ trajectory }: Quadrature): string {
  const { supply, starter } = trajectory.scenario;
  const places = [
    ...(supply.cable === undefined ? [] : ['cable']),
    ...(starter.lineResistors === undefined ? [] : ['line resistors']),
    ...(trajectory.interruptionLoss > 0 ? ['chopped arcs'] : []),
  ];
  return `Heat in ${places.join(' and ')}`;
}

function shaftLabel({ shaft }: Trajectory): string {
  return shaft.coupling === null ? 'Change of kinetic energy' : 'Change of kinetic and twist energy';
}

/** Indices of the instants that are kept: evenly chosen, the last always. */
function keptInstants(count: number, most: number): number[] {
  const stride = Math.ceil(count / most);
  const kept = Array.from({ length: Math.ceil(count / stride) }, (_, i) => i * stride);
  if (kept.at(-1) !== count - 1) kept.push(count - 1);
  return kept;
}
