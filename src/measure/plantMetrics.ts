import { torsionalFrequency } from '../shaft/torsionalFrequency.ts';
import { largest } from './extremum.ts';
import { found, type Measurement, type MetricGroup, missing } from './measurement.ts';
import type { Metric } from './metric.ts';
import { integral, type Quadrature } from './quadrature.ts';

/** Figures of what stands around the machine, over the whole run: supply and coupling. */
export function plantMetrics(m: Measurement): MetricGroup {
  const frequency = torsionalFrequency(m.quadrature.trajectory.shaft);
  return {
    lowestTerminalVoltage: lowestTerminalVoltage(m.quadrature),
    torsionalFrequency:
      frequency === null
        ? missing('torsionalFrequency', NO_COUPLING)
        : found('torsionalFrequency', frequency / (2 * Math.PI)),
  };
}

/** Why a run without an elastic coupling has none of its figures. */
const NO_COUPLING = 'motor and load are joined rigidly';

/** Peak torque of the coupling and deepest dip of the terminal voltage in a window [ta, tb], s. */
export function stressMetrics(m: Measurement, prefix: 'start' | 'plug', ta: number, tb: number): MetricGroup {
  const torqueKey = `${prefix}CouplingTorque` as const;
  const dipKey = `${prefix}VoltageDip` as const;
  return {
    [torqueKey]: couplingTorque(m, torqueKey, ta, tb),
    [dipKey]: voltageDip(m, dipKey, ta, tb),
  };
}

function couplingTorque(
  m: Measurement,
  key: 'startCouplingTorque' | 'plugCouplingTorque',
  ta: number,
  tb: number,
): Metric {
  const { trajectory } = m.quadrature;
  if (trajectory.shaft.coupling === null) return missing(key, NO_COUPLING);
  const peak = largest(m.quadrature, 'couplingTorque', 'magnitude', ta, tb);
  if (peak === null) return missing(key, 'the window is empty');
  const value = Math.sign(trajectory.at(peak.time).couplingTorque) * peak.value;
  const multiple = { value: value / m.rated.torque, of: 'torque at rated output' };
  return found(key, value, { time: peak.time, multiple });
}

function voltageDip(
  m: Measurement,
  key: 'startVoltageDip' | 'plugVoltageDip',
  ta: number,
  tb: number,
): Metric {
  const lowest = lowestVoltage(m.quadrature, ta, tb);
  if (lowest === null) return missing(key, 'the three terminals are not connected');
  if (lowest.time === null) return found(key, 0);
  const { lineVoltage } = m.quadrature.trajectory.scenario.supply;
  return found(key, 1 - lowest.value / lineVoltage, { time: lowest.time });
}

/** Relative difference from the supply voltage that is rounding, not a dip. */
const VOLTAGE_ROUNDING = 1e-9;

/** Lowest voltage at the connected terminals in [ta, tb], V; a stiff source has no lowest instant. */
function lowestVoltage(
  quadrature: Quadrature,
  ta: number,
  tb: number,
): { readonly value: number; readonly time: number | null } | null {
  const { lineVoltage } = quadrature.trajectory.scenario.supply;
  const lowest = largest(quadrature, 'terminalVoltage', 'smallest', ta, tb);
  if (lowest === null) return null;
  // A stiff source holds its voltage but for rounding.
  if (Math.abs(lowest.value + lineVoltage) <= VOLTAGE_ROUNDING * lineVoltage)
    return { value: lineVoltage, time: null };
  return { value: -lowest.value, time: lowest.time };
}

function lowestTerminalVoltage(quadrature: Quadrature): Metric {
  const { tStart, tEnd, scenario } = quadrature.trajectory;
  const lowest = lowestVoltage(quadrature, tStart, tEnd);
  if (lowest === null) return missing('lowestTerminalVoltage', 'the three terminals are never connected');
  return found('lowestTerminalVoltage', lowest.value, {
    ...(lowest.time !== null && { time: lowest.time }),
    multiple: { value: lowest.value / scenario.supply.lineVoltage, of: 'supply voltage' },
  });
}

/** Heat in the resistors of lines and slip rings over [ta, tb], s. */
export function resistorHeatMetrics(m: Measurement, ta: number, tb: number): MetricGroup {
  const { scenario } = m.quadrature.trajectory;
  return {
    plugLineResistorHeat:
      scenario.starter.lineResistors === undefined
        ? missing('plugLineResistorHeat', 'there are no line resistors')
        : found('plugLineResistorHeat', integral(m.quadrature, 'lineResistorLoss', ta, tb)),
    plugRotorResistorHeat:
      scenario.machine.rotorResistors === undefined
        ? missing('plugRotorResistorHeat', 'there are no resistors at slip rings')
        : found('plugRotorResistorHeat', integral(m.quadrature, 'rotorResistorLoss', ta, tb)),
  };
}
