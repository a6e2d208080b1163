import { normaliseUnit } from '../../scenario/normaliseUnit.ts';
import type { Path } from '../../scenario/place.ts';
import type { Fault } from '../../scenario/problem.ts';
import { type Amount, TIMES } from './amountInput.ts';
import { type FieldKey, fieldForm } from './fieldForms.ts';
import type { Report } from './report.ts';
import { type Numbers, spreadOf } from './spreadOf.ts';
import type { Spread } from './survey.ts';
import type { AskWord } from './surveyInput.ts';
import { multiple, standingAmount } from './times.ts';

/** The valid parts of a field as written. */
export interface WrittenField {
  readonly field?: string | undefined;
  readonly values?: readonly (Amount | undefined)[] | undefined;
  readonly distribution?: 'uniform' | 'log uniform' | 'normal' | 'triangular' | undefined;
  readonly from?: Amount | undefined;
  readonly to?: Amount | undefined;
  readonly mean?: Amount | undefined;
  readonly deviation?: Amount | undefined;
  readonly peak?: Amount | undefined;
  readonly count?: number | undefined;
  readonly spacing?: 'linear' | 'logarithmic' | undefined;
}

/** Which values a field takes, as read. */
export interface ReadSpread {
  readonly unit: string;
  readonly spread: Spread;
  /** Lower and upper end, with the key that states each; null where it was chosen here. */
  readonly ends: readonly [End, End];
}

/** An end of the values a field takes. */
export interface End {
  readonly number: number;
  /** Path within the field of what is to blame for it. */
  readonly path: Path;
  /** Nobody stated it: the tails of a normal distribution are cut there. */
  readonly automatic: boolean;
}

/**
 * Reads which values a field takes and reports all that is wrong with them by themselves.
 *
 * @param ask what the survey asks
 * @param isStated true where a key of the field stands in the file, valid or not
 * @param standing what stands in the scenario at the field's path; null where that is not known
 * @param report paths within the field
 * @returns null where something is wrong
 */
export function readSpread(
  written: WrittenField,
  ask: AskWord,
  isStated: (key: FieldKey) => boolean,
  standing: { readonly value: unknown } | null,
  report: Report,
): ReadSpread | null {
  let whole = true;
  const noting: Report = (path, fault) => {
    whole = false;
    report(path, fault);
  };
  const form = fieldForm(ask, written.distribution, isStated, noting);
  const amounts = amountsOf(written);
  const [first] = amounts;
  if (first === undefined) return null;
  const { unit } = first.amount;
  for (const { path, amount } of amounts) {
    const fault = otherUnit(amount.unit, unit);
    if (fault !== null) noting(path, fault);
  }
  let base: Amount = { number: 1, unit };
  if (unit === TIMES && standing !== null) {
    const found = standingAmount(standing.value);
    if ('code' in found) noting(first.path, found);
    else base = found;
  }
  if (form === null || !whole) return null;
  const numbers = numbersOf(written, unit === TIMES ? base.number : null);
  const read = spreadOf(form.kind, numbers, noting);
  return read === null || !whole ? null : { unit: base.unit, ...read };
}

interface PlacedAmount {
  readonly path: Path;
  readonly amount: Amount;
}

function amountsOf(written: WrittenField): PlacedAmount[] {
  const listed = (written.values ?? []).map((amount, at) => placed(['values', at], amount));
  const single = (['from', 'peak', 'mean', 'deviation', 'to'] as const).map((key) =>
    placed([key], written[key]),
  );
  return [...listed, ...single].flat();
}

function placed(path: Path, amount: Amount | undefined): PlacedAmount[] {
  return amount === undefined ? [] : [{ path, amount }];
}

function otherUnit(unit: string, first: string): Fault | null {
  if (normaliseUnit(unit) === normaliseUnit(first)) return null;
  const name = (one: string) => (one === '' ? 'without a unit' : `in \`${one}\``);
  const message = `is ${name(unit)}, and the number before it ${name(first)}`;
  return { code: 'wrongUnit', message, expected: 'one unit for all numbers of a field' };
}

/** In the scenario's unit; `base` is what stands there where multiples of it were written. */
function numbersOf(written: WrittenField, base: number | null): Numbers {
  const to = (amount: Amount | undefined) => {
    if (amount === undefined) return undefined;
    return base === null ? amount.number : multiple(amount.number, base);
  };
  // Multiples of a negative number descend where the factors ascend.
  const turned = base !== null && base < 0;
  return {
    values: written.values?.map(to),
    from: to(turned ? written.to : written.from),
    to: to(turned ? written.from : written.to),
    mean: to(written.mean),
    deviation: turned ? negative(to(written.deviation)) : to(written.deviation),
    peak: to(written.peak),
    count: written.count,
    logarithmic: written.spacing === 'logarithmic',
    turned,
  };
}

function negative(number: number | undefined): number | undefined {
  return number === undefined ? undefined : 0 - number;
}
