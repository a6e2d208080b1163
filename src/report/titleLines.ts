import type { Scenario } from '../scenario/scenario.ts';
import { cleanText } from './plainText.ts';

/** Title block and title of a scenario, a line of the terminal each; without a title block the title alone. */
export function titleLines({ title, titleBlock }: Pick<Scenario, 'title' | 'titleBlock'>): string[] {
  const lines = [cleanText(title)];
  if (titleBlock === undefined) return lines;
  const { plant, tag, revision, prepared, checked, date } = titleBlock;
  const parts = [
    plant,
    tag,
    revision === null ? null : `revision ${revision}`,
    prepared === null ? null : `prepared ${prepared}`,
    checked === null ? null : `checked ${checked}`,
    date,
  ].flatMap((part) => (part === null ? [] : [cleanText(part)]));
  return parts.length === 0 ? lines : [parts.join(' · '), ...lines];
}
