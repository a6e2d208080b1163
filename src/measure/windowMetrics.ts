import { squared } from '../numeric/raised.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import { largest } from './extremum.ts';
import {
  found,
  type Measurement,
  type MetricGroup,
  missing,
  overPhases,
  PHASE_NAMES,
  ratedCrest,
} from './measurement.ts';
import type { Metric } from './metric.ts';
import { cellAt, integral, NODES_PER_CELL, type Quadrature } from './quadrature.ts';
import { worstCycle } from './worstCycle.ts';

type Prefix = 'start' | 'plug';

/** Peak and worst-cycle current of a window [ta, tb], s. */
export function currentMetrics(m: Measurement, prefix: Prefix, ta: number, tb: number): MetricGroup {
  const first = phaseOfHighestSample(m.quadrature, ta, tb);
  const crest = overPhases(
    (phase, floor) => largest(m.quadrature, `i${phase}`, 'magnitude', ta, tb, floor),
    first,
  );
  const cycle = overPhases((phase, floor) => worstCycle(m.quadrature, phase, ta, tb, floor), first);
  const peakKey = `${prefix}PeakCurrent` as const;
  const cycleKey = `${prefix}WorstCycleCurrent` as const;
  const base = ratedCrest(m.rated);
  return {
    [peakKey]:
      crest === null || crest.value === 0
        ? missing(peakKey, 'no current flows')
        : found(peakKey, crest.value, {
            time: crest.time,
            phase: crest.phase,
            multiple: { value: crest.value / base, of: 'crest current at rated output' },
          }),
    [cycleKey]:
      cycle === null || cycle.value === 0
        ? missing(cycleKey, cycle === null ? 'shorter than one supply period' : 'no current flows')
        : found(cycleKey, cycle.value, {
            time: cycle.time,
            phase: cycle.phase,
            multiple: { value: cycle.value / m.rated.current, of: 'r.m.s. current at rated output' },
          }),
  };
}

/** The phase whose samples reach highest in [ta, tb]; only the order of the searches depends on it. */
function phaseOfHighestSample(quadrature: Quadrature, ta: number, tb: number): PhaseName {
  const from = cellAt(quadrature, ta) * NODES_PER_CELL;
  const to = (cellAt(quadrature, tb) + 1) * NODES_PER_CELL;
  let highest = 0;
  let found: PhaseName = 'A';
  for (const phase of PHASE_NAMES) {
    const column = quadrature.samples[`i${phase}`];
    for (let node = from; node < to; node++)
      if (Math.abs(column[node]!) > highest) {
        highest = Math.abs(column[node]!);
        found = phase;
      }
  }
  return found;
}

/** Most negative and most positive torque of a window. */
export function torqueMetrics(m: Measurement, prefix: Prefix, ta: number, tb: number): MetricGroup {
  const extreme = (key: `${Prefix}${'Minimum' | 'Maximum'}Torque`, sign: 1 | -1): Metric => {
    const peak = largest(m.quadrature, 'torque', sign === 1 ? 'largest' : 'smallest', ta, tb);
    if (peak === null) return missing(key, 'the window is empty');
    const value = sign * peak.value;
    return found(key, value, {
      time: peak.time,
      multiple: { value: value / m.rated.torque, of: 'torque at rated output' },
    });
  };
  return {
    [`${prefix}MinimumTorque`]: extreme(`${prefix}MinimumTorque`, -1),
    [`${prefix}MaximumTorque`]: extreme(`${prefix}MaximumTorque`, 1),
  };
}

/** I²t per phase, stator and rotor heat of a window. */
export function heatMetrics(m: Measurement, prefix: Prefix, ta: number, tb: number): MetricGroup {
  const group: MetricGroup = {};
  for (const phase of PHASE_NAMES) {
    const key = `${prefix}I2t${phase}` as const;
    group[key] = found(key, integral(m.quadrature, `i${phase}2`, ta, tb));
  }
  group[`${prefix}StatorHeat`] = found(`${prefix}StatorHeat`, integral(m.quadrature, 'statorLoss', ta, tb));
  group[`${prefix}RotorHeat`] = found(`${prefix}RotorHeat`, rotorHeat(m, ta, tb));
  return group;
}

/** Heat in all cages over [ta, tb], J. */
export function rotorHeat(m: Measurement, ta: number, tb: number): number {
  return integral(m.quadrature, 'cage1Loss', ta, tb) + integral(m.quadrature, 'cage2Loss', ta, tb);
}

/** Kinetic energy of rotor and load at time t, J. */
export function kineticEnergy(m: Measurement, t: number): number {
  const { trajectory } = m.quadrature;
  const { shaft } = trajectory;
  const { speed, loadSpeed } = trajectory.at(t, 'left');
  if (shaft.coupling === null) return 0.5 * shaft.inertia * squared(speed);
  return 0.5 * (shaft.motorInertia * squared(speed) + shaft.loadInertia * squared(loadSpeed));
}
