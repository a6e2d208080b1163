import type { CoilKind } from './iecDevice.ts';
import { box, ring, stroke } from './strokes.ts';

/** Radius of a coil's circle, px. */
const COIL = 14;

/** A coil as commonly drawn in North America (from memory), in a conductor from (−half, 0) to (half, 0): a circle; a solenoid in zigzag. */
export function usCoil(kind: CoilKind, half: number): string {
  const leads = stroke(`M${-half},0 L${-COIL},0`) + stroke(`M${half},0 L${COIL},0`);
  if (kind === 'solenoid') return leads + stroke('M-14,0 L-10.5,-8 L-3.5,8 L3.5,-8 L10.5,8 L14,0');
  return leads + ring(0, 0, COIL);
}

/** A fuse in a conductor that runs downwards: a rectangle with the conductor ending at it. */
export function usFuse(half: number): string {
  return (
    stroke(`M0,${-half} L0,-12`) +
    stroke(`M0,${half} L0,12`) +
    box(0, 0, 10, 24) +
    stroke('M-5,-8 L5,-8') +
    stroke('M-5,8 L5,8')
  );
}

/** The heater of an overload relay in a conductor that runs downwards. */
export function usHeater(half: number): string {
  return stroke(`M0,${-half} L0,-12 A 6 6 0 0 0 0,0`) + stroke(`M0,${half} L0,12 A 6 6 0 0 0 0,0`);
}
