import type { KeyNumber } from './keyNumbers.ts';
import { escapeMarkup } from './plainText.ts';

/** The numbers that matter most, in a row. */
export function keyNumberList(numbers: readonly KeyNumber[]): string {
  const items = numbers.map((number) => {
    const range =
      number.range === undefined ? '' : ` <span class="range">${escapeMarkup(number.range)}</span>`;
    return `<div><dt>${escapeMarkup(number.label)}</dt><dd class="value">${escapeMarkup(number.value)}${range}</dd><dd class="detail">${escapeMarkup(number.detail)}</dd></div>`;
  });
  return `<dl class="numbers">${items.join('')}</dl>`;
}
