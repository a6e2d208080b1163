import { squared } from '../numeric/raised.ts';
import type { Shaft } from '../shaft/shaft.ts';
import { type Instant, observeAt, stateBuffer } from '../simulate/segment.ts';
import { newInstant } from '../simulate/trajectory.ts';
import { integral, type Quadrature } from './quadrature.ts';

/**
 * Energy over the whole run, J. Every term is integrated on its own, none is a remainder.
 *
 *     electricalIn = sourceLoss + cableLoss + lineResistorLoss + statorLoss + rotorLoss + rotorResistorLoss + ironLoss
 *                    + magneticChange + interruptionLoss + airGapWork
 *     airGapWork   = kineticChange + twistChange + frictionLoss + windageLoss + loadWork + gearLoss + couplingLoss
 */
export interface EnergyLedger {
  /** From the ideal source behind the source impedance, J. */
  readonly electricalIn: number;
  /** Heat in the source resistance, J. */
  readonly sourceLoss: number;
  /** Heat in the cable, J. */
  readonly cableLoss: number;
  /** Heat in the resistors in the lines, J. */
  readonly lineResistorLoss: number;
  /** Heat in the stator winding, J. */
  readonly statorLoss: number;
  /** Heat in the cages, J, one entry per cage; what the slip rings carry outside is `rotorResistorLoss`. */
  readonly rotorLoss: readonly number[];
  /** Heat in the resistors at the slip rings, J. */
  readonly rotorResistorLoss: number;
  /** Heat in the core, J. */
  readonly ironLoss: number;
  /** Stored in leakage, main and source inductances, J. */
  readonly magneticChange: number;
  /** Leakage energy released when ideal poles chop the current, J; 0 with arcing poles. */
  readonly interruptionLoss: number;
  /** Work of the air-gap torque on the shaft, J. */
  readonly airGapWork: number;
  /** Gained in motion by everything that turns, J. */
  readonly kineticChange: number;
  /** Stored in an elastic coupling, J. */
  readonly twistChange: number;
  /** Dry friction of load and bearings, J. */
  readonly frictionLoss: number;
  /** Windage of the motor itself, J. */
  readonly windageLoss: number;
  /** Work on every load torque but dry friction, J. */
  readonly loadWork: number;
  /** Loss of the gear, J. */
  readonly gearLoss: number;
  /** Heat in the damping of an elastic coupling, J. */
  readonly couplingLoss: number;
  /** Sum of the magnitudes of all terms of both balances' right-hand sides, J. */
  readonly throughput: number;
  /** Larger of the two balances' magnitudes of error, divided by the throughput: a ratio. */
  readonly residual: number;
}

/** Closes the books over a whole run. */
export function energyLedger(quadrature: Quadrature): EnergyLedger {
  const { tStart, tEnd, scenario, interruptionLoss } = quadrature.trajectory;
  const total = (name: Parameters<typeof integral>[1]) => integral(quadrature, name, tStart, tEnd);
  const first = endOf(quadrature, 'first');
  const last = endOf(quadrature, 'last');
  const electrical = {
    sourceLoss: total('sourceLoss'),
    cableLoss: total('cableLoss'),
    lineResistorLoss: total('lineResistorLoss'),
    statorLoss: total('statorLoss'),
    rotorLoss: scenario.machine.cages.map((_, j) => total(j === 0 ? 'cage1Loss' : 'cage2Loss')),
    rotorResistorLoss: total('rotorResistorLoss'),
    ironLoss: total('ironLoss'),
    magneticChange: last.magneticEnergy - first.magneticEnergy,
    interruptionLoss,
  };
  const mechanical = {
    kineticChange: kineticChange(quadrature.trajectory.shaft, first, last),
    twistChange: last.twistEnergy - first.twistEnergy,
    frictionLoss: total('frictionPower'),
    windageLoss: total('windagePower'),
    loadWork: total('loadPower'),
    gearLoss: total('gearLoss'),
    couplingLoss: total('couplingLoss'),
  };
  const electricalIn = total('sourcePower');
  const airGapWork = total('airGapPower');
  const electricalOut = [...Object.values(electrical).flat(), airGapWork];
  const mechanicalOut = Object.values(mechanical);
  const sum = (terms: readonly number[]) => terms.reduce((a, b) => a + b, 0);
  const throughput = sum([...electricalOut, ...mechanicalOut].map(Math.abs));
  const error = Math.max(
    Math.abs(electricalIn - sum(electricalOut)),
    Math.abs(airGapWork - sum(mechanicalOut)),
  );
  return {
    electricalIn,
    ...electrical,
    airGapWork,
    ...mechanical,
    throughput,
    residual: throughput > 0 ? error / throughput : 0,
  };
}

/** Everything about the first or the last instant of a run. */
function endOf(quadrature: Quadrature, end: 'first' | 'last'): Instant {
  const cell = end === 'first' ? 0 : quadrature.cellCount - 1;
  const at = newInstant();
  const t = end === 'first' ? quadrature.trajectory.tStart : quadrature.trajectory.tEnd;
  observeAt(quadrature.cellSegment[cell]!, quadrature.cellStep[cell]!, t, stateBuffer(), at);
  return at;
}

/** Of one mass behind a rigid shaft, or of two with speeds of their own, J. */
function kineticChange(shaft: Shaft, first: Instant, last: Instant): number {
  const rise = (from: number, to: number) => squared(to) - squared(from);
  if (shaft.coupling === null) return 0.5 * shaft.inertia * rise(first.omegaM, last.omegaM);
  return (
    0.5 * shaft.motorInertia * rise(first.omegaM, last.omegaM) +
    0.5 * shaft.loadInertia * rise(first.omegaLoad, last.omegaLoad)
  );
}
