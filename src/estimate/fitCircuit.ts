import { leastSquares } from '../numeric/leastSquares.ts';
import { logarithm } from '../numeric/logarithm.ts';
import { squared } from '../numeric/raised.ts';
import { coreXOverR } from '../scenario/defaults.ts';
import { AT, candidateOf, type Unknowns, unknownsOf } from './parameters.ts';
import { breakdownSlip, perUnitState } from './perUnitCircuit.ts';
import { LIMIT_SCATTER, type Target, type Targets } from './targets.ts';
import { TIE_WIDTH, type Ties } from './ties.ts';

/** Best circuit found, and the cost left. */
export interface Fit {
  readonly x: Unknowns;
  readonly cost: number;
}

/** Ratios of the cages from which the search sets out, beside stator shares of the leakage. */
const START_RATIOS = [1.7, 4, 12] as const;
const START_SHARES = [0.25, 0.5] as const;
/** Trial steps from every start, starts that are then followed to the end, and trial steps there; most end after 15 to 40. */
const FIRST_STEPS = 10;
const PROMISING = 3;
const MOST_STEPS = 100;
/** Slip while plugging begins; the torque there is not to exceed the breakdown torque. */
const REVERSED = 2;
/** Best step of a central difference in a logarithm. */
const DIFFERENCE = 1e-5;

/** What saturation leaves of the leakages at standstill, from which the search sets out. */
const START_LEFT = 0.75;

/** Adds the saturation of leakage to the unknowns of a linear circuit. */
export function withSaturation(x: Unknowns): Unknowns {
  const unsaturated = x
    .slice(0, AT.z)
    .with(AT.Xls, x[AT.Xls]! - logarithm(START_LEFT))
    .with(AT.Xouter, x[AT.Xouter]! - logarithm(START_LEFT));
  return [...unsaturated, 0];
}

/**
 * The double-cage circuit that comes nearest to the targets, as far as they leave it open to the ties: weighted least squares
 * from a fixed set of starts, the same answer every time.
 *
 * @param from starts to use instead of the fixed set, when a similar circuit is known
 */
export function fitCircuit(targets: Targets, ties: Ties, from?: readonly Unknowns[]): Fit {
  const problem = {
    residuals: (x: Unknowns) => residualsAt(x, targets, ties, breakdownOf(x, targets.knee)),
    jacobian: (x: Unknowns) => jacobianAt(x, targets, ties),
  };
  const search = (start: Unknowns, maxIterations: number): Fit => {
    const { x, cost } = leastSquares(problem, start, { maxIterations, costTolerance: 1e-9 });
    return { x, cost };
  };
  const best = (fits: readonly Fit[]) => fits.toSorted((a, b) => a.cost - b.cost);
  const starts = from ?? startsFor(targets);
  const promising = best(starts.map((start) => search(start, FIRST_STEPS))).slice(0, PROMISING);
  return best(promising.map(({ x }) => search(x, MOST_STEPS)))[0]!;
}

function breakdownOf(x: Unknowns, knee: number): number {
  const { circuit } = candidateOf(x, knee);
  return breakdownSlip((slip) => perUnitState(circuit, slip).airGapPower);
}

/** At its crest the torque does not change with the slip, so that the crest's slip may stand still in the differences. */
function jacobianAt(x: Unknowns, targets: Targets, ties: Ties): readonly (readonly number[])[] {
  const slip = breakdownOf(x, targets.knee);
  const columns = x.map((value, i) => {
    const up = residualsAt(x.with(i, value + DIFFERENCE), targets, ties, slip);
    const down = residualsAt(x.with(i, value - DIFFERENCE), targets, ties, slip);
    return up.map((r, row) => (r - down[row]!) / (2 * DIFFERENCE));
  });
  return columns[0]!.map((_, row) => columns.map((column) => column[row]!));
}

function residualsAt(x: Unknowns, targets: Targets, ties: Ties, slipOfBreakdown: number): number[] {
  const { circuit, mechanicalLoss } = candidateOf(x, targets.knee);
  const rated = perUnitState(circuit, targets.slip);
  const locked = perUnitState(circuit, 1);
  const shaftPower = (1 - targets.slip) * rated.airGapPower - mechanicalLoss;
  const strongest = perUnitState(circuit, slipOfBreakdown).airGapPower;
  const aims = [
    miss(rated.current, targets.current),
    miss(rated.inputPower / rated.current, targets.powerFactor),
    miss(shaftPower, targets.shaftPower),
    miss(locked.current, targets.lockedRotorCurrent),
    miss(locked.airGapPower, targets.lockedRotorTorque),
    miss(strongest, targets.breakdownTorque),
    beyond(locked.current, targets.lockedRotorCurrent),
    beyond(locked.airGapPower, targets.lockedRotorTorque),
    beyond(strongest, targets.breakdownTorque),
  ];
  if (targets.efficiency !== null) aims.push(miss(shaftPower / rated.inputPower, targets.efficiency));
  const { losses } = targets;
  // What the stator winding has more the others have less.
  const others = 1 + ((1 - ties.statorLossFactor) * losses.stator) / (losses.iron + losses.mechanical);
  const statorShare = circuit.Xls / (circuit.Xls + lockedRotorLeakage(circuit.cages));
  const odds = (share: number) => share / (1 - share);
  const saturates = x.length > AT.z;
  return [
    ...aims,
    logRatio(rated.statorLoss, losses.stator * ties.statorLossFactor) / TIE_WIDTH.losses,
    logRatio(rated.ironLoss, losses.iron * others) / TIE_WIDTH.losses,
    logRatio(mechanicalLoss, losses.mechanical * others) / TIE_WIDTH.losses,
    Math.max(0, logRatio(perUnitState(circuit, REVERSED).airGapPower, strongest)) / TIE_WIDTH.reversed,
    logRatio(circuit.Xm * rated.current, ties.magnetising) / TIE_WIDTH.magnetising,
    logRatio(odds(statorShare), odds(ties.statorShare)) /
      (saturates ? TIE_WIDTH.saturatedShare : TIE_WIDTH.share),
    (x[AT.u]! - logarithm(ties.leakageRatio - 1)) / TIE_WIDTH.cages,
    (x[AT.w]! - logarithm(ties.resistanceRatio - 1)) / TIE_WIDTH.cages,
    ...(saturates ? [x[AT.z]! / TIE_WIDTH.saturation] : []),
  ];
}

function miss(value: number, target: Target): number {
  return logRatio(value, target.value) / target.scatter;
}

/** How far a value lies on the wrong side of a standard's limit. */
function beyond(value: number, { limit }: Target): number {
  if (limit === null) return 0;
  const error = logRatio(value, limit.value);
  return (limit.kind === 'least' ? Math.min(error, 0) : Math.max(error, 0)) / LIMIT_SCATTER;
}

/** Not a number where the value is not positive: the search then keeps away. */
function logRatio(value: number, target: number): number {
  return logarithm(value / target);
}

/** Reactance of the cages in parallel at standstill. */
function lockedRotorLeakage(cages: readonly { readonly Rr: number; readonly Xlr: number }[]): number {
  let G = 0;
  let B = 0;
  for (const { Rr, Xlr } of cages) {
    const norm = Rr * Rr + Xlr * Xlr;
    G += Rr / norm;
    B += Xlr / norm;
  }
  return B / (G * G + B * B);
}

/** Circuits that meet the targets roughly: impedance at standstill, rotor resistance at rated slip, reactive power. */
function startsFor(targets: Targets): readonly Unknowns[] {
  const { slip, losses } = targets;
  const current = targets.current.value;
  const Rs = losses.stator / squared(current);
  const locked = targets.lockedRotorCurrent.value;
  const lockedR = targets.lockedRotorTorque.value / squared(locked);
  const lockedX = Math.sqrt(Math.max(1 / squared(locked) - squared(Rs + lockedR), squared(0.3 / locked)));
  const airGapPower = (1 + losses.mechanical) / (1 - slip);
  const cosine = targets.powerFactor.value;
  const starts: Unknowns[] = [];
  for (const share of START_SHARES) {
    const Xls = share * lockedX;
    const airVoltageSquared =
      squared(1 - current * (Rs * cosine + Xls * Math.sqrt(1 - squared(cosine)))) || 1;
    const runningR = (slip * airVoltageSquared) / airGapPower;
    const reactive = current * Math.sqrt(1 - squared(cosine)) - squared(current) * lockedX;
    const Xm = 1 / Math.max(reactive, 0.1);
    const Rc = airVoltageSquared / (losses.iron * (1 + squared(coreXOverR)));
    for (const leakage of START_RATIOS)
      for (const resistance of START_RATIOS)
        starts.push(
          unknownsOf({
            Rs,
            Xls,
            Xm,
            outer: { Rr: runningR * (1 + resistance), Xlr: (1 - share) * lockedX * 0.8 },
            inner: {
              Rr: runningR * (1 + 1 / resistance),
              Xlr: (1 - share) * lockedX * 0.8 * leakage,
            },
            Rc,
            mechanicalLoss: losses.mechanical,
          }),
        );
  }
  return starts;
}
