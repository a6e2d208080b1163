import { expect, it } from 'vitest';
import { fieldWords } from '../../../../src/report/survey/fieldWords.ts';
import { scenarioJsonSchema } from '../../../../src/scenario/scenarioJsonSchema.ts';
import { keysOf } from '../../../support/reference/schemaKeys.ts';

/** Paths of all numbers that a section of a scenario may hold, as a survey names them. */
function numbersOf(section: string): string[] {
  const paths = keysOf({ ...scenarioJsonSchema() }, '')
    .filter(
      ({ path, what, isGroup }) => path.startsWith(`${section}.`) && !isGroup && /\bnumber\b/u.test(what),
    )
    .map(({ path }) => path.replaceAll(/ \([^)]*\)/gu, '').replaceAll('[]', '.0'));
  return [...new Set(paths)];
}

it.each(['limits', 'duty', 'contactors', 'thermal', 'protection', 'alternatives', 'starter'])(
  'every number of %s that a survey may vary has words, each its own',
  (section) => {
    const paths = numbersOf(section);
    expect(paths.length).toBeGreaterThan(2);
    expect(paths.filter((path) => fieldWords(path) === path)).toEqual([]);
    expect(new Set(paths.map(fieldWords)).size).toBe(paths.length);
    for (const path of paths) expect(fieldWords(path)).toMatch(/^[^.{}#]+$/u);
  },
);
