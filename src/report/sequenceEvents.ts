import type { RunResult } from '../measure/result.ts';
import type { RunEvent, RunEventKind } from '../simulate/trajectory.ts';
import type { Device } from '../starter/control/controlCircuit.ts';
import { speedWords } from './eventSentence.ts';
import { formatInstant, type UnitSystem } from './formatQuantity.ts';
import { deviceLabel, poleLabel } from './sequenceRows.ts';

/** One event as a row of a table. */
export interface EventRow {
  /** s */
  readonly t: number;
  /** To a tenth of a millisecond, with its unit. */
  readonly at: string;
  /** Designation and name of the device or pole; empty where the event belongs to none. */
  readonly device: string;
  readonly what: string;
  /** Empty where the text gives none. */
  readonly cause: string;
  /** Of the motor shaft, with its unit. */
  readonly speed: string;
}

/** Every event of a run with its device, its cause and the speed at that instant. */
export function eventRows({ trajectory }: RunResult, units: UnitSystem): EventRow[] {
  return trajectory.events.map((event) => ({
    t: event.t,
    at: formatInstant(event.t),
    device: deviceOf(event),
    ...whatAndCause(event.text),
    speed: speedWords(event.speed, units),
  }));
}

/** The two sides of the colon; a command is its own cause. */
function whatAndCause(text: string): Pick<EventRow, 'what' | 'cause'> {
  const colon = text.indexOf(': ');
  if (colon < 0) return { what: text, cause: '' };
  const before = text.slice(0, colon);
  const after = text.slice(colon + 2);
  return before === 'command' ? { what: after, cause: before } : { what: before, cause: after };
}

/** Devices of events that do not name theirs. */
const DEVICE_OF_KIND: Partial<Record<RunEventKind, string>> = {
  switchCloses: 'zero-speed switch',
  switchOpens: 'zero-speed switch',
  bypassCloses: 'bypass contactor',
  bypassOpens: 'bypass contactor',
};
const CONTACTOR = { forward: 'forwardContactor', reverse: 'reverseContactor' } as const satisfies Record<
  string,
  Device
>;

function deviceOf(event: RunEvent): string {
  if (event.device !== undefined) return deviceLabel(event.device);
  if (event.contactor !== undefined)
    return event.phase === undefined
      ? deviceLabel(CONTACTOR[event.contactor])
      : poleLabel(event.contactor, event.phase);
  return DEVICE_OF_KIND[event.kind] ?? '';
}
