import type { Operation } from './contactTraits.ts';
import { circle, filled, ring, stroke } from './strokes.ts';

/** Distance of a contact's bars or terminals from its middle, px. */
const BAR = 4;
const TERMINAL = 10;
const RING = 2.6;

/**
 * A contact as commonly drawn in North America (ladder form, from memory), in a conductor from (−half, 0) to (half, 0), at
 * rest: bars, with a slash where it is closed at rest; push buttons and timed contacts with their moving part.
 */
export function usContact(kind: 'make' | 'break', operation: Operation, half: number): string {
  const closed = kind === 'break';
  switch (operation) {
    case 'coil':
    case 'overload':
      return bars(closed, half);
    case 'speed':
      return bars(closed, half) + circle(0, 0, 13);
    case 'pushButton':
      return terminals(half) + button(closed);
    case 'emergencyStop':
      return (
        terminals(half) +
        button(closed) +
        filled(`M-8,${closed ? -10 : -14} A 8.5 8.5 0 0 1 8,${closed ? -10 : -14} Z`)
      );
    case 'onDelay':
      return terminals(half) + timed(closed) + stroke('M0,15 L0,5') + stroke('M-3.5,14.5 L0,10 L3.5,14.5');
    case 'offDelay':
      return terminals(half) + timed(closed) + stroke('M0,15 L0,5') + stroke('M-3.5,10.5 L0,15 L3.5,10.5');
  }
}

function bars(closed: boolean, half: number): string {
  const open =
    stroke(`M${-half},0 L${-BAR},0`) +
    stroke(`M${half},0 L${BAR},0`) +
    stroke(`M${-BAR},-9 L${-BAR},9`) +
    stroke(`M${BAR},-9 L${BAR},9`);
  return closed ? open + stroke('M-9,9 L9,-9') : open;
}

function terminals(half: number): string {
  return (
    stroke(`M${-half},0 L${-TERMINAL - RING},0`) +
    stroke(`M${half},0 L${TERMINAL + RING},0`) +
    ring(-TERMINAL, 0, RING) +
    ring(TERMINAL, 0, RING)
  );
}

/** The bar bridges the terminals from below while closed at rest; it stands above them while open. */
function button(closed: boolean): string {
  const y = closed ? RING : -8;
  return stroke(`M-14,${y} L14,${y}`) + stroke(`M0,${y} L0,${closed ? -11 : -15}`);
}

function timed(closed: boolean): string {
  return stroke(closed ? 'M-10,2.6 L14,2.6' : 'M-8,1.5 L10,9');
}

/** Main contact of a contactor in a conductor that runs downwards. */
export function usPole(half: number): string {
  return (
    stroke(`M0,${-half} L0,-4`) + stroke(`M0,${half} L0,4`) + stroke('M-9,-4 L9,-4') + stroke('M-9,4 L9,4')
  );
}

/** Pole of a disconnect switch in a conductor that runs downwards. */
export function usDisconnect(half: number): string {
  return (
    stroke(`M0,${-half} L0,${-TERMINAL - RING}`) +
    stroke(`M0,${half} L0,${TERMINAL + RING}`) +
    stroke(`M-1,${TERMINAL - RING} L-10,-9`) +
    ring(0, -TERMINAL, RING) +
    ring(0, TERMINAL, RING)
  );
}
