import { Matrix, solve } from 'ml-matrix';
import type { CyclePhase, DutyCycle } from './dutyCycle.ts';
import { heatPerNode, highestRises, risesAfter, type ThermalModes, thermalModes } from './thermalModes.ts';
import type { Cooling, PerNode, ThermalModel } from './thermalNetwork.ts';

/** What a cycle ends in when it repeats for ever. */
export interface PeriodicState {
  /** Rises at the beginning of the cycle, K. */
  readonly begin: PerNode;
  /** Highest temperature of each node in the cycle, °C; Infinity where the cycle never cools. */
  readonly peaks: PerNode;
  /** The phase in which each node is hottest. */
  readonly peakPhase: readonly CyclePhase['name'][];
}

/** The modes of both kinds of cooling, to be decomposed once. */
export type ModesByCooling = Readonly<Record<Cooling, ThermalModes>>;

/** Decomposes a model for both kinds of cooling. */
export function modesOf(model: ThermalModel): ModesByCooling {
  return { running: thermalModes(model, 'running'), standstill: thermalModes(model, 'standstill') };
}

/** Rises after one cycle from given ones, K. */
export function risesAfterCycle(
  model: ThermalModel,
  modes: ModesByCooling,
  cycle: DutyCycle,
  begin: PerNode,
): PerNode {
  return cycle.reduce(
    (rises, { pulse, cooling }) =>
      risesAfter(modes[cooling], rises, heatPerNode(model, pulse), pulse.duration),
    begin,
  );
}

/** Highest rise of each node over a cycle from given rises, K, and the phase in which it is. */
export function cyclePeaks(
  model: ThermalModel,
  modes: ModesByCooling,
  cycle: DutyCycle,
  begin: PerNode,
): { readonly rises: PerNode; readonly phase: readonly CyclePhase['name'][] } {
  let rises = begin;
  const highest = begin.map(() => Number.NEGATIVE_INFINITY);
  const phase = begin.map((): CyclePhase['name'] => 'rest');
  for (const { name, pulse, cooling } of cycle) {
    const heat = heatPerNode(model, pulse);
    for (const [i, rise] of highestRises(modes[cooling], rises, heat, pulse.duration).entries())
      if (rise > highest[i]!) {
        highest[i] = rise;
        phase[i] = name;
      }
    rises = risesAfter(modes[cooling], rises, heat, pulse.duration);
  }
  return { rises: highest, phase };
}

/**
 * The periodic steady state of a cycle, without simulating it: one cycle takes rises θ to Φ·θ + g, so the state that repeats
 * solves (I − Φ)·θ = g.
 */
export function periodicState(
  model: ThermalModel,
  cycle: DutyCycle,
  modes: ModesByCooling = modesOf(model),
): PeriodicState {
  const n = model.nodes.length;
  const cools = cycle.some(
    ({ pulse, cooling }) =>
      pulse.duration > 0 && model.links.some((link) => link.to === 'ambient' && link[cooling] > 0),
  );
  if (!cools) {
    const never = model.nodes.map(() => Number.POSITIVE_INFINITY);
    return { begin: never, peaks: never, peakPhase: model.nodes.map(() => cycle[0]?.name ?? 'rest') };
  }
  const none = model.nodes.map(() => 0);
  const g = risesAfterCycle(model, modes, cycle, none);
  const columns = none.map((_, j) => {
    const unit = none.map((_zero, i) => (i === j ? 1 : 0));
    return risesAfterCycle(model, modes, withoutHeat(cycle), unit);
  });
  const left = new Matrix(none.map((_, i) => columns.map((column, j) => (i === j ? 1 : 0) - column[i]!)));
  const begin = solve(left, Matrix.columnVector([...g])).getColumn(0);
  const { rises, phase } = cyclePeaks(model, modes, cycle, begin);
  return { begin: begin.slice(0, n), peaks: rises.map((rise) => model.ambient + rise), peakPhase: phase };
}

function withoutHeat(cycle: DutyCycle): DutyCycle {
  const cold = { winding: 0, cage: 0, outerCage: 0, frame: 0 };
  return cycle.map((phase) => ({ ...phase, pulse: { ...cold, duration: phase.pulse.duration } }));
}
