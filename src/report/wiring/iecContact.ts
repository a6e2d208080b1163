import type { Operation } from './contactTraits.ts';
import { box, filled, linkage, stroke } from './strokes.ts';

/** Half the opening of a contact, px. */
const GAP = 11;
/** Where what moves the contact is drawn, px left of the conductor. */
const ACTUATOR = -21;

/**
 * A contact after IEC 60617 (from memory) in a conductor that runs downwards from (0, −half) to (0, half), drawn at rest; what
 * moves it stands on the left.
 *
 * @param half half the length with its conductors, px
 */
export function iecContact(kind: 'make' | 'break', operation: Operation, half: number): string {
  const blade =
    kind === 'make'
      ? stroke(`M0,${-half} L0,${-GAP}`) + stroke(`M0,${half} L0,${GAP} L-11,-10`)
      : stroke(`M0,${-half} L0,${-GAP} L9,${-GAP}`) + stroke(`M0,${half} L0,${GAP} L8,-14`);
  return blade + actuator(operation, kind === 'make' ? -5 : 4);
}

/** @param blade x of the middle of the moving part */
function actuator(operation: Operation, blade: number): string {
  const link = linkage(`M${blade},0.5 L${ACTUATOR},0.5`);
  switch (operation) {
    case 'coil':
      return '';
    case 'pushButton':
      return link + stroke(`M${ACTUATOR + 4},-6 L${ACTUATOR},-6 L${ACTUATOR},7 L${ACTUATOR + 4},7`);
    case 'emergencyStop':
      // mushroom head; the notch in the link is the latch
      return (
        linkage(`M${blade},0.5 L-8,0.5`) +
        stroke(`M-8,0.5 L-11,5 L-14,0.5 L${ACTUATOR},0.5`) +
        stroke(`M${ACTUATOR},-6.5 A 7 7 0 0 0 ${ACTUATOR},7.5 Z`)
      );
    case 'overload':
      return (
        linkage(`M${blade},0.5 L-14,0.5`) +
        box(ACTUATOR, 0.5, 14, 14) +
        stroke('M-28,4 L-24,4 L-24,-3 L-18,-3 L-18,4 L-14,4')
      );
    case 'speed':
      return linkage(`M${blade},0.5 L-14,0.5`) + box(ACTUATOR - 1, 0.5, 16, 14);
    // The arc drags like a parachute: late when its hollow side faces the way the blade closes.
    case 'onDelay':
      return delayLines(blade, -20) + stroke('M-15,-7 A 10 10 0 0 0 -15,8');
    case 'offDelay':
      return delayLines(blade, -17) + stroke('M-21,-7 A 10 10 0 0 1 -21,8');
  }
}

function delayLines(blade: number, end: number): string {
  return stroke(`M${blade},-1.5 L${end},-1.5`) + stroke(`M${blade - 1},2.5 L${end},2.5`);
}

/** Main contact of a contactor or (with `isolating`) of a disconnector, in a conductor that runs downwards. */
export function iecPole(half: number, isolating: boolean): string {
  const fixed = isolating
    ? stroke(`M-5,${-GAP} L5,${-GAP}`)
    : stroke(`M0,${-GAP} A 3.2 3.2 0 0 1 0,${-GAP - 6.4}`);
  return stroke(`M0,${-half} L0,${-GAP}`) + stroke(`M0,${half} L0,${GAP} L-11,-10`) + fixed;
}

/** Handle of a hand-operated switch, left of a pole at the origin; both symbol sets use it. */
export function handleArt(): string {
  return linkage('M-5,0.5 L-21,0.5') + stroke('M-21,-6 L-21,7');
}

/** Thing that keeps two contactors from being in at once: a triangle on the mechanical connection, centred on the origin. */
export function mechanicalInterlockArt(): string {
  return filled('M-6,-5 L6,-5 L0,6 Z');
}
