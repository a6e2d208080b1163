import type { Report } from './report.ts';
import type { AskWord } from './surveyInput.ts';

/** Keys of a field beside its path. */
export const FIELD_KEYS = [
  'values',
  'distribution',
  'from',
  'peak',
  'mean',
  'deviation',
  'to',
  'count',
  'spacing',
] as const;

/** A key of a field beside its path. */
export type FieldKey = (typeof FIELD_KEYS)[number];

/** A way to say which values a field takes. */
export interface FieldForm {
  readonly kind: 'values' | 'grid' | 'range' | 'uniform' | 'log uniform' | 'normal' | 'triangular';
  readonly needs: readonly FieldKey[];
  readonly may: readonly FieldKey[];
}

const FORMS: Readonly<Record<FieldForm['kind'], Omit<FieldForm, 'kind'>>> = {
  values: { needs: ['values'], may: [] },
  grid: { needs: ['from', 'to', 'count'], may: ['spacing'] },
  range: { needs: ['from', 'to'], may: ['spacing'] },
  uniform: { needs: ['from', 'to'], may: ['distribution'] },
  'log uniform': { needs: ['from', 'to'], may: ['distribution'] },
  normal: { needs: ['mean', 'deviation'], may: ['distribution', 'from', 'to'] },
  triangular: { needs: ['from', 'peak', 'to'], may: ['distribution'] },
};

/**
 * Finds the form of a field and reports keys it lacks and keys that mean nothing in it.
 *
 * @param ask what the survey asks
 * @param distribution where a valid one is stated
 * @param isStated true where a key stands in the file, valid or not
 * @param report paths within the field
 * @returns null where the form cannot be told
 */
export function fieldForm(
  ask: AskWord,
  distribution: 'uniform' | 'log uniform' | 'normal' | 'triangular' | undefined,
  isStated: (key: FieldKey) => boolean,
  report: Report,
): FieldForm | null {
  const kind = kindOf(ask, distribution, isStated);
  if (kind === null) {
    if (isStated('distribution')) return null;
    const expected = '`uniform`, `log uniform`, `normal` or `triangular`, or a list `values`';
    report(['distribution'], { code: 'missingKey', message: 'is missing', expected });
    return null;
  }
  const form = { kind, ...FORMS[kind] };
  for (const key of keysOf(ask)) {
    if (form.needs.includes(key) && !isStated(key)) {
      report([key], { code: 'missingKey', message: 'is missing', expected: expectedOf(key, kind) });
    }
    if (!isStated(key) || form.needs.includes(key) || form.may.includes(key)) continue;
    const beside = kind === 'values' ? 'beside `values`' : `with \`distribution: ${kind}\``;
    const expected = `this key left out, or another way to state the values`;
    report([key], { code: 'conflict', message: `has no meaning ${beside}`, expected });
  }
  return form;
}

const LISTED: readonly FieldForm['kind'][] = ['values', 'grid'];
const DRAWN: readonly FieldForm['kind'][] = ['values', 'uniform', 'normal', 'triangular'];

/** Keys that a field of such a survey can have; any other is refused as unknown. */
function keysOf(ask: AskWord): readonly FieldKey[] {
  const isList = ask === 'sweep' || ask === 'limit map';
  const kinds = ask === 'worst case' ? (['range'] as const) : isList ? LISTED : DRAWN;
  const known = new Set(kinds.flatMap((kind) => [...FORMS[kind].needs, ...FORMS[kind].may]));
  return FIELD_KEYS.filter((key) => known.has(key));
}

function kindOf(
  ask: AskWord,
  distribution: 'uniform' | 'log uniform' | 'normal' | 'triangular' | undefined,
  isStated: (key: FieldKey) => boolean,
): FieldForm['kind'] | null {
  if (ask === 'worst case') return 'range';
  if (isStated('values')) return 'values';
  if (ask === 'sweep' || ask === 'limit map') return 'grid';
  return distribution ?? null;
}

function expectedOf(key: FieldKey, kind: FieldForm['kind']): string {
  const instead = kind === 'grid' ? ', or a list `values` in place of from, to and count' : '';
  if (key === 'count') return `a whole number from 2${instead}`;
  return `a number with its unit${instead}`;
}
