import type { Criterion } from '../../assess/criterion.ts';
import type { Suitability } from '../../assess/suitability.ts';
import { cutToWidth } from '../displayWidth.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { countText, judgedQuantity } from '../judgedQuantity.ts';
import { CRITERION_LABELS } from '../judgementWords.ts';
import { leftText } from './judgedText.ts';
import { type LabelledCell, labelledTable } from './labelledTable.ts';
import { outcomeText } from './outcomeMark.ts';

/** Longest source on the first page, columns, which takes two lines: the whole text stands with the remarks. */
const SOURCE_COLUMNS = 74;

/**
 * Every criterion with value, limit, what is left between them, outcome in words and by form, and where its limit comes from.
 * Their short names leave room for one page; the remarks give the full ones.
 */
export function printedCriteria(suitability: Suitability, units: UnitSystem): string {
  return labelledTable({
    caption: 'Criteria',
    className: 'criteria',
    head: [
      { text: 'Criterion', width: 22 },
      { text: 'Value', number: true, width: 12 },
      { text: 'Limit', number: true, width: 12 },
      { text: 'Left', number: true, width: 11 },
      { text: 'Outcome', width: 11 },
      { text: 'Source of the limit', width: 32 },
    ],
    rows: suitability.criteria.map((criterion) => row(criterion, suitability, units)),
  });
}

function row(criterion: Criterion, suitability: Suitability, units: UnitSystem): LabelledCell[] {
  const { form, words } = outcomeText(criterion);
  const range = rangeOf(criterion, suitability);
  const numbers: LabelledCell[] = [
    {
      text: judgedQuantity(criterion, criterion.value, units),
      number: true,
      ...(range === '' ? {} : { note: range }),
    },
    { text: limitText(criterion, units), number: true },
    { text: leftText(criterion, units), number: true },
  ];
  const name = { text: CRITERION_LABELS[criterion.key] };
  // Without a limit there is no source to name: the reason takes its place.
  return form === 'open' || form === 'none'
    ? [name, ...numbers, { text: words, mark: form, span: 2 }]
    : [name, ...numbers, { text: words, mark: form }, { text: briefSource(criterion.source) }];
}

function limitText(criterion: Criterion, units: UnitSystem): string {
  const { limit, limitIs } = criterion;
  if (limit === null) return '—';
  return `${limitIs === 'most' ? '≤' : '≥'} ${judgedQuantity(criterion, limit, units)}`;
}

/** The range of a value that has one. */
function rangeOf({ key, value }: Criterion, { wear }: Suitability): string {
  if (key !== 'contactLife' || value === null || wear === null || wear.governing === null) return '';
  const { operations } = wear[wear.governing];
  return operations === null ? '' : `${countText(operations.low)} … ${countText(operations.high)}`;
}

const FROM_MEMORY = '(from memory)';

/** A source cut to what the first page has room for; that it is from memory is not cut off. */
export function briefSource(source: string): string {
  const brief = cutToWidth(source, SOURCE_COLUMNS);
  if (brief === source || !source.includes(FROM_MEMORY)) return brief;
  return `${cutToWidth(source, SOURCE_COLUMNS - FROM_MEMORY.length - 1)} ${FROM_MEMORY}`;
}
