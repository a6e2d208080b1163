import type { Suitability } from '../../assess/suitability.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { formatNumber } from '../formatQuantity.ts';
import { list } from '../markup.ts';
import { SOURCES } from '../reportText.ts';
import { labelledTable } from './labelledTable.ts';
import { usedLimits } from './usedLimits.ts';

/** Limits and constants from standards and practice that were used, each with its source; sources of the method. */
export function sourcesSection(scenario: Scenario, suitability: Suitability): string {
  const rows = usedLimits(scenario, suitability).map(({ value, unit, source }) => [
    { text: source },
    { text: unit === '1' ? valueText(value) : `${valueText(value)} ${unit}`, number: true as const },
  ]);
  return `<section><h2>Sources</h2>
${rows.length === 0 ? '' : labelledTable({ caption: 'Limits and constants from standards and from practice, in SI as their sources print them', head: [{ text: 'Source' }, { text: 'Value', number: true }], rows })}
${list(SOURCES)}
</section>`;
}

/** From here on digits are grouped. */
const GROUPED = 10_000;

/** All digits of a printed value. */
function valueText(value: number): string {
  return value >= GROUPED ? formatNumber(value) : String(value);
}
