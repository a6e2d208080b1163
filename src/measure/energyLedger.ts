import { observeAt } from '../simulate/segment.ts';
import { newInstant } from '../simulate/trajectory.ts';
import { integral, type Quadrature } from './quadrature.ts';

/**
 * Energy over the whole run, J. Every term is integrated on its own, none is a remainder.
 *
 * electricalIn = sourceLoss + statorLoss + rotorLoss + magneticChange + interruptionLoss + airGapWork
 * airGapWork   = kineticChange + frictionLoss + loadWork
 */
export interface EnergyLedger {
  /** From the ideal source behind the source impedance. */
  readonly electricalIn: number;
  readonly sourceLoss: number;
  readonly statorLoss: number;
  /** One entry per cage. */
  readonly rotorLoss: readonly number[];
  /** Stored in leakage, main and source inductances. */
  readonly magneticChange: number;
  /** Leakage energy released when ideal poles chop the current; 0 with arcing poles. */
  readonly interruptionLoss: number;
  readonly airGapWork: number;
  readonly kineticChange: number;
  readonly frictionLoss: number;
  /** Viscous, fan and gravity work. */
  readonly loadWork: number;
  /** Sum of the magnitudes of all terms of both balances' right-hand sides. */
  readonly throughput: number;
  /** Larger of the two balances' magnitudes of error, divided by the throughput. */
  readonly residual: number;
}

/** Closes the books over a whole run. */
export function energyLedger(quadrature: Quadrature): EnergyLedger {
  const { trajectory } = quadrature;
  const { tStart, tEnd, scenario, shaft, interruptionLoss } = trajectory;
  const total = (name: Parameters<typeof integral>[1]) => integral(quadrature, name, tStart, tEnd);
  const first = stored(quadrature, 'first');
  const last = stored(quadrature, 'last');
  const electricalIn = total('sourcePower');
  const sourceLoss = total('sourceLoss');
  const statorLoss = total('statorLoss');
  const rotorLoss = scenario.machine.cages.map((_, j) => total(j === 0 ? 'cage1Loss' : 'cage2Loss'));
  const magneticChange = last.magnetic - first.magnetic;
  const airGapWork = total('airGapPower');
  const kineticChange = 0.5 * shaft.inertia * (last.omegaM ** 2 - first.omegaM ** 2);
  const frictionLoss = total('frictionPower');
  const loadWork = total('loadPower');
  const electricalOut = [sourceLoss, statorLoss, ...rotorLoss, magneticChange, interruptionLoss, airGapWork];
  const mechanicalOut = [kineticChange, frictionLoss, loadWork];
  const sum = (terms: readonly number[]) => terms.reduce((a, b) => a + b, 0);
  const throughput = sum([...electricalOut, ...mechanicalOut].map(Math.abs));
  const error = Math.max(
    Math.abs(electricalIn - sum(electricalOut)),
    Math.abs(airGapWork - sum(mechanicalOut)),
  );
  return {
    electricalIn,
    sourceLoss,
    statorLoss,
    rotorLoss,
    magneticChange,
    interruptionLoss,
    airGapWork,
    kineticChange,
    frictionLoss,
    loadWork,
    throughput,
    residual: throughput > 0 ? error / throughput : 0,
  };
}

function stored(quadrature: Quadrature, end: 'first' | 'last'): { magnetic: number; omegaM: number } {
  const cell = end === 'first' ? 0 : quadrature.cellCount - 1;
  const at = newInstant();
  const t = end === 'first' ? quadrature.trajectory.tStart : quadrature.trajectory.tEnd;
  observeAt(quadrature.cellSegment[cell]!, quadrature.cellStep[cell]!, t, [], at);
  return { magnetic: at.magneticEnergy, omegaM: at.omegaM };
}
