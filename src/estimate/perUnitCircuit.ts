import { exponential } from '../numeric/exponential.ts';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { largestBetween } from '../numeric/largestBetween.ts';
import { logarithm } from '../numeric/logarithm.ts';
import { squared } from '../numeric/raised.ts';
import { coreXOverR } from '../scenario/defaults.ts';

/**
 * The circuit per phase in multiples of the impedance (line voltage)²/(rated power), so that voltage, rated power and angular
 * frequency are 1.
 */
export interface PerUnitCircuit {
  readonly Rs: number;
  readonly Xls: number;
  readonly Xm: number;
  readonly cages: readonly { readonly Rr: number; readonly Xlr: number }[];
  /** Resistance of the iron's winding; null: no iron loss. Its reactance is `coreXOverR` times that. */
  readonly Rc: number | null;
  /**
   * Saturation of the leakage paths of the stator and of the first cage, which at standstill carries most of the rotor's
   * current: X·[r + (1 − r)/√(1 + (i/I)²)], I `current`, r `remaining`; null: linear.
   */
  readonly saturation: { readonly current: number; readonly remaining: number } | null;
}

/** Balanced steady state at one slip, powers of all three phases as multiples of rated power. */
export interface PerUnitState {
  readonly current: number;
  readonly inputPower: number;
  readonly airGapPower: number;
  readonly statorLoss: number;
  readonly ironLoss: number;
}

/** The T-circuit at unit voltage, cages and iron in parallel with the magnetising branch. */
export function perUnitState(circuit: PerUnitCircuit, slip: number): PerUnitState {
  return solved(circuit.saturation === null ? circuit : asSaturated(circuit, circuit.saturation, slip), slip);
}

/** Rounds of the search for the currents that go with the reactances; each gains about a digit. */
const MOST_ROUNDS = 60;
/** Change of a saturation factor that is rounding. */
const STANDS_STILL = 1e-15;

/** The linear circuit with the reactances that the currents at this slip leave. */
function asSaturated(
  circuit: PerUnitCircuit,
  { current, remaining }: NonNullable<PerUnitCircuit['saturation']>,
  slip: number,
): PerUnitCircuit {
  const [first, ...others] = circuit.cages;
  const { Rr, Xlr } = first!;
  const left = (i: number) => remaining + (1 - remaining) / Math.sqrt(1 + squared(i / current));
  let linear = circuit;
  let stator = 1;
  let cage = 1;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    linear = {
      ...circuit,
      Xls: circuit.Xls * stator,
      cages: [{ Rr, Xlr: Xlr * cage }, ...others],
    };
    const state = solved(linear, slip);
    const cageCurrent = (state.airGapVoltage * Math.abs(slip)) / hypotenuse(Rr, slip * Xlr * cage);
    const change = Math.abs(left(state.current) - stator) + Math.abs(left(cageCurrent) - cage);
    stator = left(state.current);
    cage = left(cageCurrent);
    if (change <= STANDS_STILL) break;
  }
  return linear;
}

function solved(circuit: PerUnitCircuit, slip: number): PerUnitState & { readonly airGapVoltage: number } {
  const { Rs, Xls, Xm, cages, Rc } = circuit;
  const coreNorm = Rc === null ? 1 : Rc * Rc * (1 + coreXOverR * coreXOverR);
  const coreG = Rc === null ? 0 : Rc / coreNorm;
  let G = coreG;
  let B = -1 / Xm - (Rc === null ? 0 : (coreXOverR * Rc) / coreNorm);
  let cageG = 0;
  for (const { Rr, Xlr } of cages) {
    const norm = Rr * Rr + slip * slip * Xlr * Xlr;
    cageG += (slip * Rr) / norm;
    B -= (slip * slip * Xlr) / norm;
  }
  G += cageG;
  const norm = G * G + B * B;
  const R = Rs + G / norm;
  const current = 1 / hypotenuse(R, Xls - B / norm);
  const currentSquared = current * current;
  const voltageSquared = currentSquared / norm;
  return {
    current,
    inputPower: currentSquared * R,
    airGapPower: voltageSquared * cageG,
    statorLoss: currentSquared * Rs,
    ironLoss: voltageSquared * coreG,
    airGapVoltage: Math.sqrt(voltageSquared),
  };
}

/** Slips among which the largest torque is looked for: pull-out slips of cage motors lie between 0.5 % and standstill. */
const SCAN = { lowest: 4e-3, points: 24 } as const;
/** Width in the logarithm of slip; torque is flat at its crest, so that its error is rounding. */
const WIDTH = 1e-6;

/** Slip of the largest torque between standstill and synchronous speed. */
export function breakdownSlip(torque: (slip: number) => number): number {
  const low = logarithm(SCAN.lowest);
  const step = -low / SCAN.points;
  let best = 0;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= SCAN.points; i++) {
    const value = torque(exponential(low + i * step));
    if (value > highest) {
      highest = value;
      best = low + i * step;
    }
  }
  return exponential(
    largestBetween((x) => torque(exponential(x)), best - step, Math.min(best + step, 0), WIDTH).x,
  );
}
