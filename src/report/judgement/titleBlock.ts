import type { TitleBlock } from '../../scenario/scenario.ts';
import { escapeMarkup } from '../plainText.ts';

const FIELDS = [
  ['plant', 'Plant'],
  ['tag', 'Tag'],
  ['revision', 'Revision'],
  ['date', 'Date'],
  ['prepared', 'Prepared'],
  ['checked', 'Checked'],
] as const satisfies readonly (readonly [keyof TitleBlock, string])[];

/** Title block as the scenario states it; a field that is not stated is a line to be filled in by hand. */
export function titleBlock(block: TitleBlock | undefined): string {
  const fields = FIELDS.map(([key, label]) => {
    const text = block?.[key] ?? null;
    const value =
      text === null
        ? '<dd class="blank"><span class="unseen">to be filled in by hand</span></dd>'
        : `<dd>${escapeMarkup(text)}</dd>`;
    return `<div><dt>${label}</dt>${value}</div>`;
  });
  return `<dl class="title-block">${fields.join('')}</dl>`;
}

/** Lines to sign on. */
export function signatureLines(): string {
  const lines = [
    'Prepared: signature, date',
    'Checked: signature, date',
    'Accepted by licensed engineer: signature, date',
  ];
  return `<div class="signatures">${lines.map((line) => `<p>${line}</p>`).join('')}</div>`;
}
