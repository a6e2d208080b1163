import type { Scenario } from '../../scenario/scenario.ts';
import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';
import { keptPause, TIME_STEP } from '../../survey/laboratory/leastTime.ts';
import { type Pause, SHARE_USED } from '../../survey/laboratory/pause.ts';
import type { Tolerance } from '../../survey/laboratory/tolerances.ts';
import { CAUTIONS } from '../cautions.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { inputFormat } from '../inputRow.ts';
import { loadRows } from '../loadRows.ts';
import { machineRows } from '../machineRows.ts';
import { starterRows } from '../starterRows.ts';

const SECONDS_PER_HOUR = 3600;

/** What must be read before anything is touched; on blank sheets too, so that times are rounded up and give no prediction away. */
export function laboratoryCautions(sheet: LaboratorySheet): readonly string[] {
  return [
    'Local rules and licensed practice decide who may do this, and how. An instructor is present the whole time.',
    'The emergency stop is within everybody’s reach and is tried first. The supply is locked off and proved dead before a lead is moved.',
    `Everybody reckons with an emergency stop that only takes the supply away and does not brake: ${turnsOn(sheet)}.`,
    'Flywheel: the guard is closed and nobody touches shaft, disc or coupling until they stand. No loose clothing, no loose hair.',
    'Locked rotor: only with the mechanical clamp, at reduced voltage, for seconds.',
    `Many plug stops heat winding and rotor, where nobody sees it: keep the pause${pauseSetBy(sheet)}.`,
    'The zero-speed switch is not a protective device.',
    ...CAUTIONS,
  ];
}

/** Times of the run-down above this are not counted out, s. */
const LONG = 3600;

/** The upper end of the run-down: whoever waits must not wait too short. */
function turnsOn({ turnsOn: time }: LaboratorySheet): string {
  if (time === null) return 'how long the disc then turns on is not predicted here';
  if (time.most > LONG) return 'the disc may then turn on for longer than an hour';
  const seconds = Math.ceil(time.most / TIME_STEP) * TIME_STEP;
  return `the disc then turns on for up to ${seconds} s or so${time.isOpen ? ', or longer' : ''}, as in the run-down`;
}

/** Which body or rate it is, as the pause was worked out. */
function pauseSetBy({ pauses, steps }: LaboratorySheet): string {
  const pause = steps.some(({ key }) => key === 'plugStop') ? pauses.plugStop : pauses.reversal;
  return typeof pause === 'string' ? ' that the instructor sets' : `, which is set here by ${pause.bound}`;
}

/** The pauses of the sheet, a sentence or two each. */
export function pauseSentences({ pauses, steps }: LaboratorySheet, units: UnitSystem): readonly string[] {
  const has = (key: string) => steps.some((step) => step.key === key);
  return [
    ...(has('plugStop') || !has('reversal')
      ? [sentenceOf('start and plug stop', pauses.plugStop, units)]
      : []),
    ...(has('reversal') ? [sentenceOf('start and full reversal', pauses.reversal, units)] : []),
  ];
}

function sentenceOf(trial: string, pause: Pause | string, units: UnitSystem): string {
  if (typeof pause === 'string')
    return `Pause after a ${trial}: not worked out, because ${pause}. The instructor decides.`;
  const seconds = keptPause(pause);
  // Of the pause as it is kept, which is rounded up.
  const perHour = Math.floor(SECONDS_PER_HOUR / (SECONDS_PER_HOUR / pause.perHour - pause.time + seconds));
  const without = [
    ...(pause.untilTrip === null ? [] : [`the overload relay trips after ${pause.untilTrip} trials`]),
    ...(pause.untilHot === null ? [] : [`winding or cage passes its limit after ${pause.untilHot}`]),
  ];
  return (
    `Pause after a ${trial}: at least ${seconds} s from standstill to the next start, at most ${perHour} trials an hour. ` +
    `That is ${100 * SHARE_USED} % of what ${pause.bound} permits, with ${formatQuantity(pause.running, 's', { system: units })} of running in between.` +
    (without.length === 0 ? '' : ` Without any pause, from cold, ${without.join(', and ')}.`) +
    (pause.untilTripWithPause === null
      ? ''
      : ` With this pause the overload relay still trips after ${pause.untilTripWithPause} trials: make it longer, or the trials fewer.`)
  );
}

/** The set's data: lines of label and value. */
export function setRows({ supply, machine, load, starter }: Scenario, units: UnitSystem): readonly string[] {
  const format = inputFormat(units);
  const rows = [
    { label: 'Line voltage', value: format.show(supply.lineVoltage, 'V') },
    { label: 'Frequency', value: format.show(supply.frequency, 'Hz') },
    ...machineRows(machine, format),
    ...loadRows(load, format),
    ...starterRows(starter, format),
  ];
  return rows.map(({ label, value }) => `${label}: ${value}`);
}

/** Instruments with what each must reach. */
export function instrumentLines({ instruments }: LaboratorySheet, units: UnitSystem): readonly string[] {
  return instruments.map(({ words, reaches }) => {
    const ranges = reaches.map((reach) => {
      const { value, unit } = reach;
      const text = unit === 'W' ? `${formatNumber(value)} W` : formatQuantity(value, unit, { system: units });
      return `${reach.words} ${text}`;
    });
    const head = `${words[0]?.toUpperCase()}${words.slice(1)}`;
    return ranges.length === 0 ? head : `${head}: ${ranges.join(', ')}`;
  });
}

/** "stator resistance ±5.00 %" */
export function toleranceWords({ words, size, unit }: Tolerance): string {
  const amount =
    unit === 's' ? formatQuantity(size, 's', { system: 'SI', milli: true }) : formatPercent(size);
  return `${words} ±${amount}`;
}

/** How the ranges were made, for those who judge a reading. */
export function methodSentences(sheet: LaboratorySheet): readonly string[] {
  return [
    `Expected: mean of the same run over ${sheet.closingAngles} closing instants, all data as stated.`,
    `Range: the scatter over those instants, widened by each tolerance taken to both its ends by itself, and by the accuracy of the instrument. All are added, not joined as root of the sum of squares: they are limits, and a reading outside shall mean that something is not as stated.`,
    `Tolerances (common practice, no source): ${sheet.tolerances.map(toleranceWords).join('; ')}.`,
    'A set whose data were measured on itself is nearer than that. The circuit is what the scenario says: where it has no saturation of the leakage paths, real crests are higher by tens of per cent.',
  ];
}
