import { WORD_OF_SCHEME } from '../controlWords.ts';
import type { Scenario, SchemeName } from '../scenario.ts';
import { lostWith } from './lostWith.ts';

const SCHEMES: readonly (SchemeName | null)[] = [null, ...(Object.keys(WORD_OF_SCHEME) as SchemeName[])];

/** What each choice of another control circuit takes with it, one sentence for all choices that take the same; empty where none takes anything. */
export function lossWords(scenario: Scenario): readonly string[] {
  const choices = new Map<string, string[]>();
  for (const scheme of SCHEMES) {
    const lost = lostWith(scenario, scheme).join(', ');
    if (lost === '') continue;
    choices.set(lost, [...(choices.get(lost) ?? []), scheme === null ? 'none' : WORD_OF_SCHEME[scheme]]);
  }
  return [...choices].map(
    ([lost, names]) => `Choosing ${names.map((name) => `“${name}”`).join(' or ')} takes with it: ${lost}.`,
  );
}
