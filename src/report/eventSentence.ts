import type { RunEvent, RunEventKind } from '../simulate/trajectory.ts';
import { displayUnit, type UnitSystem } from './formatQuantity.ts';

/** Events whose meaning depends on how fast the shaft turned then, whatever caused them. */
const SPEED_MATTERS: ReadonlySet<RunEventKind> = new Set([
  'switchCloses',
  'switchOpens',
  'overloadTrips',
  'emergencyStopPressed',
  'supplyLost',
  'supplyReturns',
]);
/** What comes of the zero-speed switch says so in its text. */
const BY_SWITCH = /zero-speed switch/u;

/**
 * An event in words, with the speed where it matters: of the zero-speed switch and what follows from it, of trips, emergency
 * stops and losses of the supply. "reverse coil released: zero-speed switch opens (forward) at 41 r/min".
 */
export function eventSentence(event: RunEvent, units: UnitSystem): string {
  if (!speedMatters(event)) return event.text;
  const at = ` at ${speedWords(event.speed, units)}`;
  const colon = event.text.indexOf(': ');
  // What follows from the switch states the speed with the cause; a trip states its own.
  if (colon < 0 || !SPEED_MATTERS.has(event.kind)) return event.text + at;
  return event.text.slice(0, colon) + at + event.text.slice(colon);
}

/** True where the sentence of an event states the speed. */
export function speedMatters(event: RunEvent): boolean {
  return SPEED_MATTERS.has(event.kind) || BY_SWITCH.test(event.text);
}

/**
 * A speed as one reads it from a tachometer: whole r/min, with the true minus sign for reverse rotation.
 *
 * @param speed rad/s
 */
export function speedWords(speed: number, units: UnitSystem): string {
  const { label, perSi } = displayUnit('rad/s', { system: units });
  const shown = Math.round(speed * perSi);
  return `${shown < 0 ? '−' : ''}${Math.abs(shown)} ${label}`;
}
