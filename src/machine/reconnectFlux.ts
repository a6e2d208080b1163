import type { FluxVector } from './electricalModel.ts';
import { rotate } from './rotate.ts';

/** Angle between a delta machine's winding quantities and those of its equivalent star, rad. */
const WINDING_ANGLE = Math.PI / 6;

/**
 * Carries the fluxes of a delta machine's windings across a change between delta and star. A winding between terminals A
 * and B shows x_A − x_B, which as a space vector is √3·e^{+j30°} times that of the equivalent star's phases (A and C:
 * e^{−j30°}); in star the winding is the phase. All pairs turn and scale alike: what is referred to the stator is
 * referred to its windings. At the change the stator is without current, so that its flux is the main flux.
 *
 * @param flux of the equivalent star before the change, stationary axes, Wb
 * @param star true: from delta to star; false: back
 * @param order terminals that winding A of the delta lies between
 * @returns flux of the equivalent star after the change, stationary axes, Wb
 */
export function reconnectFlux(flux: FluxVector, star: boolean, order: 'AB' | 'AC'): FluxVector {
  const angle = order === 'AB' ? WINDING_ANGLE : -WINDING_ANGLE;
  const scale = star ? Math.sqrt(3) : 1 / Math.sqrt(3);
  return rotate(flux, star ? angle : -angle).map((x) => scale * x);
}
