import { box, circle, filled, linkage, stroke } from './strokes.ts';

/** What a coil moves, as far as its symbol shows it. */
export type CoilKind = 'relay' | 'onDelay' | 'offDelay' | 'solenoid';

/** Half the height of a coil's rectangle, px. */
const COIL = 9;

/**
 * A coil after IEC 60617 (from memory) in a conductor that runs downwards: crossed box for a late pick-up, filled one for a
 * late release, a blocked link for a solenoid.
 */
export function iecCoil(kind: CoilKind, half: number): string {
  const body = stroke(`M0,${-half} L0,${-COIL}`) + stroke(`M0,${half} L0,${COIL}`) + box(0, 0, 30, 2 * COIL);
  switch (kind) {
    case 'relay':
      return body;
    case 'onDelay':
      return `${body}${box(-20, 0, 10, 2 * COIL)}${stroke('M-25,-9 L-15,9')}${stroke('M-25,9 L-15,-9')}`;
    case 'offDelay':
      return body + filled('M-25,-9 L-15,-9 L-15,9 L-25,9 Z');
    case 'solenoid':
      return body + linkage('M15,0 L26,0') + stroke('M26,-5 L34,0 L26,5 Z');
  }
}

/** A fuse: a rectangle with the conductor running through it. */
export function iecFuse(half: number): string {
  return stroke(`M0,${-half} L0,${half}`) + box(0, 0, 10, 24);
}

/** A resistor. */
export function resistorArt(half: number): string {
  return stroke(`M0,${-half} L0,-14`) + stroke(`M0,${half} L0,14`) + box(0, 0, 11, 28);
}

/** The part of a thermal overload relay that one conductor heats. */
export function iecHeater(half: number): string {
  return stroke(`M0,${-half} L0,-7 L7,-7 L7,7 L0,7 L0,${half}`);
}

/**
 * Transformer with its windings beside each other: primary connections at (−half, ∓20), secondary ones at (half, ∓20).
 *
 * @param cores lines between the windings
 */
export function transformerArt(half: number, cores: 1 | 2): string {
  const winding = (x: number, sweep: 0 | 1) =>
    [-20, -10, 0, 10].map((y) => `M${x},${y} A 5 5 0 0 ${sweep} ${x},${y + 10}`).join(' ');
  const leads = [-20, 20].map((y) => stroke(`M${-half},${y} L-12,${y}`) + stroke(`M${half},${y} L12,${y}`));
  const core = cores === 1 ? stroke('M0,-20 L0,20') : stroke('M-2,-20 L-2,20') + stroke('M2,-20 L2,20');
  return leads.join('') + stroke(winding(-12, 1)) + stroke(winding(12, 0)) + core;
}

/** Earth at the end of a conductor that comes from above; with a ring it is the protective earth of IEC 60617. */
export function earthArt(ringed: boolean): string {
  const bars =
    stroke('M0,0 L0,10') + stroke('M-8,10 L8,10') + stroke('M-5,13.5 L5,13.5') + stroke('M-2,17 L2,17');
  return ringed ? `${bars}${circle(0, 11.5, 12)}` : bars;
}
