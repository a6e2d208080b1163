import type { ClampReading, PhaseReading } from '../measure/clampReading.ts';
import type { CommissioningRow, RowResult } from '../survey/commissioning/commissioningSheet.ts';
import type { FinalState } from '../survey/commissioning/run.ts';
import type { SequenceItem } from '../survey/commissioning/sequence.ts';
import { speedWords } from './eventSentence.ts';
import { displayUnit, formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** Currents below this are none, A: what is left of the integration's rounding. */
const NO_CURRENT = 0.005;
/** Shorter times are written in ms, s: no hand stops them. */
const HAND_TIME = 0.1;
/** A machine that is connected and turns more slowly than this stands, rad/s. */
const STANDS = 1;

/** What a simulation shows, in one sentence with times from the decisive instant. */
export function showsSentence(row: CommissioningRow, shows: RowResult, units: UnitSystem): string {
  const { items, more } = shows.sequence;
  const steps = items.map((item) => stepWords(item, units));
  const rest = more === 0 ? [] : [`${more} more changes`];
  const sequence = [...steps, ...rest].join(', ');
  const end = endWords(shows.end, row.test.mark, units);
  return sentence(sequence === '' ? `No contactor moves; ${end}` : `${sequence}; ${end}`);
}

function stepWords({ words, after, speed }: SequenceItem, units: UnitSystem): string {
  const when = after < 5e-4 ? 'at once' : `after ${briefTime(after)}`;
  return speed === null ? `${words} ${when}` : `${words} ${when} at ${speedWords(speed, units)}`;
}

function endWords(end: FinalState, mark: number, units: UnitSystem): string {
  switch (end.kind) {
    case 'rest':
      return 'stands at the end';
    case 'coasts':
      return `coasts at the end at ${speedWords(end.speed, units)}`;
    case 'connected': {
      if (Math.abs(end.speed) < STANDS) return `stands at the end with the ${end.contactor} contactor in`;
      const direction = end.speed > 0 ? 'forward' : 'reverse';
      const speed = speedWords(Math.abs(end.speed), units);
      return direction === end.contactor
        ? `runs ${direction} at the end at ${speed}`
        : `turns ${direction} at the end at ${speed}, the ${end.contactor} contactor in`;
    }
    case 'shortCircuit': {
      const current =
        end.current === null
          ? 'nothing in the scenario limits the current'
          : `prospective current ${formatQuantity(end.current, 'A', { system: units })} r.m.s.`;
      return `line-to-line short circuit after ${briefTime(end.t - mark)}, ${current}`;
    }
  }
}

/** Whether the simulation agrees, in words. */
export function verdictWords({ verdict }: CommissioningRow): { readonly head: string; readonly why: string } {
  switch (verdict.kind) {
    case 'agrees':
      return { head: 'agrees', why: '' };
    case 'differs':
      return { head: 'differs', why: `not met: ${verdict.unmet.join('; ')}` };
    case 'notSimulated':
      return { head: 'not simulated', why: verdict.reason };
  }
}

/** Clamp-meter readings of a row, A r.m.s., a line each. */
export function clampLines({ readings, end }: RowResult): readonly string[] {
  const { before, operation, cutOff } = readings;
  const first = before === null ? [] : [`${amperes(before.transformer)} before`];
  if (cutOff) return [...first, '–: no current after contactors open'];
  if (operation === null)
    return [...first, end.kind === 'shortCircuit' ? 'not read: short circuit' : 'too short to read'];
  return [...first, ...operationLines(operation)];
}

function operationLines({ transformer, hall }: ClampReading): string[] {
  if (hall.value < NO_CURRENT) return ['0'];
  // The same line need not be named twice.
  const line = hall.phase === transformer.phase ? '' : ` (${hall.phase})`;
  return [`${amperes(transformer)} CT (${transformer.phase})`, `${amperes(hall)} with d.c.${line}`];
}

function amperes({ value }: PhaseReading): string {
  return value < NO_CURRENT ? '0' : formatNumber(value);
}

/** Tachometer readings of a row, r/min, a line each. */
export function tachometerLines({ readings }: RowResult): readonly string[] {
  return readings.tachometer.map(({ words, speed }) => {
    const { perSi } = displayUnit('rad/s', { system: 'SI' });
    const shown = Math.round(speed * perSi);
    return `${shown < 0 ? '−' : ''}${Math.abs(shown)} ${words}`;
  });
}

/** What to time, and how long it takes, a line each. */
export function durationLines({ durations }: RowResult): readonly string[] {
  return durations.map(({ words, value }) =>
    value === null ? `not in this run: ${words}` : `${handTime(value)} ${words}`,
  );
}

/** Whole milliseconds, or seconds with three digits. */
function briefTime(t: number): string {
  return t < 1 ? `${Math.round(t * 1e3)} ms` : formatQuantity(t, 's', { system: 'SI' });
}

function handTime(t: number): string {
  return t < HAND_TIME ? briefTime(t) : formatQuantity(t, 's', { system: 'SI' });
}

/** Parts of a sentence with capital and full stop. */
export function sentence(text: string): string {
  const full = /[.!?]$/u.test(text) ? text : `${text}.`;
  return full.charAt(0).toUpperCase() + full.slice(1);
}
