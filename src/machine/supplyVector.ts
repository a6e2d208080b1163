import { euclideanNorm } from '../numeric/hypotenuse.ts';
import { cosine, sine } from '../numeric/sineCosine.ts';
import type { Supply } from '../scenario/scenario.ts';

/** Supply phase (0 = A, 1 = B, 2 = C) that each motor terminal A, B, C is connected to; −1: not connected. */
export type Connection = readonly [number, number, number];

/**
 * Supply voltage space vector of a connection in stationary axes: u(t) = U₊·e^{jωt} + U₋·e^{−jωt}.
 * A forward connection has U₋ = 0, one with two phases exchanged has U₊ = 0; with two terminals on the same
 * supply phase both are present. V, crest of phase voltage.
 */
export interface SupplyVector {
  /** Angular frequency, rad/s. */
  readonly omega: number;
  readonly positive: readonly [number, number];
  readonly negative: readonly [number, number];
  /** +1 or −1 for a pure sequence, 0 otherwise. */
  readonly sequence: -1 | 0 | 1;
}

const THIRD_TURN = (2 * Math.PI) / 3;
/** Components below this fraction of the crest are rounding of cos and sin, not voltage. */
const ROUNDING = 1e-12;

/**
 * Space vector of the three terminal voltages when every terminal is connected as given.
 * Source: u = (2/3)(u_A + a·u_B + a²·u_C) with u_k = Û·cos(ωt + φ − 2πs_k/3), written as two rotating phasors.
 */
export function supplyVector(
  supply: Pick<Supply, 'lineVoltage' | 'frequency' | 'angle'>,
  connection: Connection,
): SupplyVector {
  const crest = supply.lineVoltage * Math.sqrt(2 / 3);
  const positive: [number, number] = [0, 0];
  const negative: [number, number] = [0, 0];
  for (const [terminal, phase] of connection.entries()) {
    const axis = terminal * THIRD_TURN;
    const supplyAngle = supply.angle - phase * THIRD_TURN;
    positive[0] += (crest / 3) * cosine(axis + supplyAngle);
    positive[1] += (crest / 3) * sine(axis + supplyAngle);
    negative[0] += (crest / 3) * cosine(axis - supplyAngle);
    negative[1] += (crest / 3) * sine(axis - supplyAngle);
  }
  const hasPositive = euclideanNorm(positive) > ROUNDING * crest;
  const hasNegative = euclideanNorm(negative) > ROUNDING * crest;
  return {
    omega: 2 * Math.PI * supply.frequency,
    positive: hasPositive ? positive : [0, 0],
    negative: hasNegative ? negative : [0, 0],
    sequence: hasPositive === hasNegative ? 0 : hasPositive ? 1 : -1,
  };
}
