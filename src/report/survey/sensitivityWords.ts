import type { VariedField } from '../../survey/spec/survey.ts';
import type { FieldSensitivity, SensitivityIndex } from '../../survey/spread/sensitivity.ts';
import type { Tornado, TornadoBar } from '../../survey/spread/tornado.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { formatFieldValue } from './fieldUnit.ts';
import { fieldWords } from './fieldWords.ts';
import { indexText, percentText } from './percentText.ts';

/** A field with a total index. */
interface Ranked {
  readonly field: string;
  readonly total: SensitivityIndex;
}

/** Fields by their total index, the largest first; those without one are left out. */
export function rankedFields(fields: readonly FieldSensitivity[]): Ranked[] {
  return fields
    .flatMap(({ field, total }) => (total === null ? [] : [{ field, total }]))
    .sort((a, b) => b.total.value - a.total.value);
}

/** Which fields lead: the one with the largest total index and all whose intervals overlap its own. */
export function leadingFields(fields: readonly FieldSensitivity[]): Ranked[] {
  const ranked = rankedFields(fields);
  const [top] = ranked;
  return top === undefined ? [] : ranked.filter(({ total }) => total.high >= top.total.low);
}

/** "most of its variance hangs on supply angle at t = 0": never more than the intervals bear out. */
export function leadWords(fields: readonly FieldSensitivity[]): string {
  const leading = leadingFields(fields);
  const [top] = leading;
  if (top === undefined) return 'where its variance comes from';
  if (leading.length > 1)
    return `these runs do not tell which field matters most: ${leading.map(({ field }) => fieldWords(field)).join(', ')}`;
  const share = top.total.value < 1 ? `${percentText(top.total.value)} of its variance hangs` : 'most hangs';
  return `${share} on ${fieldWords(top.field)}`;
}

/** How totals are read that together, or alone, pass 100 %, and intervals that overlap. */
export const TOTALS_NOTE =
  'What fields do together counts in the total index of each of them, so that totals may add up to more than 100 %; ' +
  'one that is itself above 100 % is so by chance of the draws. Where intervals overlap, these runs do not tell ' +
  'which of the fields matters more.';

/** What the sum of the first-order indices says, as far as its interval goes. */
export function sumWords(sum: SensitivityIndex): string {
  const start = `The first-order indices add up to ${indexText(sum)}`;
  if (sum.high < 1)
    return `${start}: the rest, also at the upper end of the interval, comes from fields acting together, which the total indices count for each field concerned.`;
  if (sum.low > 1)
    return `${start}: more than the whole, which only the chance of the draws can give; take more samples.`;
  return `${start}. The interval holds 100 %: these runs do not tell whether fields act together or each by itself.`;
}

/** Degrees and radians of a supply angle after which torques and the magnitudes of currents repeat. */
const HALF_PERIOD: Readonly<Record<string, number>> = { deg: 180, rad: Math.PI };

/** Whether a field goes round at least once as far as torques are concerned. */
export function goesRound({ path, unit, spread }: VariedField): boolean {
  const half = HALF_PERIOD[unit];
  if (path !== 'supply.angle' || half === undefined || !('from' in spread)) return false;
  return spread.to - spread.from >= half;
}

/** What bars of a tornado do not show, a sentence per field concerned. */
export function tornadoWarnings(
  { base, bars }: Tornado,
  fields: readonly VariedField[],
  units: UnitSystem,
): string[] {
  return bars.flatMap((bar) => {
    const field = fields.find(({ path }) => path === bar.field);
    if (field === undefined) return [];
    const name = fieldWords(bar.field);
    if (goesRound(field))
      return [
        `The ${name} comes round: its two ends, ${endsText(bar, field, units)}, say little of what lies between them, where it may move the figure far more. See how the figure follows it, and its indices.`,
      ];
    return isOneSided(base, bar)
      ? [
          `Both ends of ${name}, ${endsText(bar, field, units)}, lie on one side of the run with all fields at their medians: the figure turns back in between, and its bars are not all that the field does.`,
        ]
      : [];
  });
}

function endsText({ from, to }: TornadoBar, { unit }: VariedField, units: UnitSystem): string {
  const text = (value: number | null) => (value === null ? '—' : formatFieldValue(value, unit, units));
  return `${text(from)} and ${text(to)}`;
}

function isOneSided(base: number | null, { atFrom, atTo }: TornadoBar): boolean {
  if (base === null || atFrom === null || atTo === null) return false;
  return (atFrom - base) * (atTo - base) > 0;
}
