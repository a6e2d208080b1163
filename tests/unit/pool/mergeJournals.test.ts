import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { fingerprint } from '../../../src/pool/fingerprint.ts';
import { JOURNAL_NAME, openJournal } from '../../../src/pool/journal.ts';
import type { JournalHeader } from '../../../src/pool/journalHeader.ts';
import { lineOfHeader } from '../../../src/pool/journalHeader.ts';
import { mergeJournals } from '../../../src/pool/mergeJournals.ts';
import { lineOfRow } from '../../../src/recording/journalLine.ts';
import type { Survey, SurveyRow } from '../../../src/survey/spec/survey.ts';
import { headerOf, rowsOf } from '../../support/pool/testJournal.ts';
import { testSurvey } from '../../support/pool/testSurvey.ts';
import { workFolder } from '../../support/workFolder.ts';

const survey = testSurvey(7);

/** Journals of the shards of a survey, finished but for some runs. */
function partsOf(
  folder: string,
  of: number,
  { asked = survey, without = [] as readonly number[], program = '9.9.9' } = {},
): string[] {
  return Array.from({ length: of }, (_, index) => {
    const name = path.join(folder, `${program}-${asked.seed}-${index + 1}-of-${of}`, JOURNAL_NAME);
    const journal = openJournal(name, { ...headerOf(asked, { index, of }), program });
    const runs = Array.from({ length: asked === survey ? 7 : 9 }, (_unused, run) => run);
    journal.add(rowsOf(asked, runs.filter((run) => run % of === index && !without.includes(run)).reverse()));
    journal.close();
    return name;
  });
}

const all = [0, 1, 2, 3, 4, 5, 6];

it.each([1, 2, 3, 7])('%i parts in any order become one journal that can be gone on with', (of) => {
  const folder = workFolder();
  const target = path.join(folder, 'whole', JOURNAL_NAME);
  const parts = partsOf(folder, of).reverse();
  for (const round of [1, 2]) {
    const merged = mergeJournals(parts, target);
    expect(merged.total, `round ${round}`).toBe(7);
    expect(merged.survey).toEqual(survey);
    expect([...merged.rows()]).toStrictEqual(rowsOf(survey, all));
  }
  const journal = openJournal(target, headerOf(survey));
  expect(journal.done).toBe(7);
  journal.close();
});

it('what is no complete set of parts is refused with everything that is wrong', () => {
  const folder = workFolder();
  const target = path.join(folder, 'whole', JOURNAL_NAME);
  const parts = partsOf(folder, 3);
  const merging = (names: readonly string[]) => () => mergeJournals(names, target);
  expect(merging([parts[0]!, parts[2]!])).toThrow(/^shard 2\/3 of 7 runs is missing/u);
  expect(merging([parts[1]!])).toThrow(/^shard 1\/3, 3\/3 of 7 runs are missing/u);
  expect(merging([...parts, parts[1]!])).toThrow(/shard 2\/3 is in .* already/u);
  expect(merging([...parts, partsOf(folder, 2)[0]!])).toThrow(/one of 2 parts, not of 3/u);
  const changed: Survey = { ...testSurvey(9), seed: 5 };
  expect(merging([parts[0]!, partsOf(folder, 3, { asked: changed })[1]!])).toThrow(
    /another survey: the fields or their values, the seed changed; expected a part of the same survey/u,
  );
  expect(merging([parts[0]!, partsOf(folder, 3, { program: '9.9.8' })[1]!])).toThrow(
    /it is of version 9\.9\.8 of the program, not 9\.9\.9/u,
  );
  expect(merging([])).toThrow(/nothing to merge/u);
  expect(merging([path.join(folder, 'none')])).toThrow(/there is no such file/u);
});

it('a part that is not finished is refused with the first run it lacks', () => {
  const folder = workFolder();
  const parts = partsOf(folder, 2, { without: [3, 5] });
  expect(() => mergeJournals(parts, path.join(folder, 'whole', JOURNAL_NAME))).toThrow(
    /2 of 3 runs of shard 2\/2 are missing, run 3 the first/u,
  );
});

it('a journal that stands where the result goes is not lost', () => {
  const folder = workFolder();
  const parts = partsOf(folder, 2);
  const before = readFileSync(parts[0]!);
  expect(() => mergeJournals(parts, parts[0]!)).toThrow(/another journal stands there/u);
  expect(readFileSync(parts[0]!)).toEqual(before);
  const other = path.join(folder, 'other.journal');
  writeFileSync(other, 'mine\n');
  expect(() => mergeJournals(parts, other)).toThrow(/it is no journal/u);
  expect(readFileSync(other, 'utf8')).toBe('mine\n');
});

describe('a part whose first line is right', () => {
  const drawn = (seed: number): Survey => ({
    ...testSurvey(7),
    fields: [{ path: 'load.inertia', unit: 'kg m^2', spread: { kind: 'uniform', from: 0.1, to: 0.7 } }],
    seed,
    task: { kind: 'random', runs: 7, sequence: 'pseudo' },
  });
  const shardsOf = (asked: Survey, of: number) =>
    Array.from({ length: of }, (_, index) => ({
      header: headerOf(asked, { index, of }),
      rows: rowsOf(
        asked,
        all.filter((run) => run % of === index),
      ),
    }));

  /** Merges parts that were put together by hand. */
  function merging(
    parts: readonly { readonly header: JournalHeader; readonly rows: readonly SurveyRow[] }[],
  ) {
    const folder = workFolder();
    const names = parts.map(({ header, rows }, index) => {
      mkdirSync(path.join(folder, `part${index + 1}`));
      const name = path.join(folder, `part${index + 1}`, JOURNAL_NAME);
      writeFileSync(name, [lineOfHeader(header), ...rows.map(lineOfRow), ''].join('\n'));
      return name;
    });
    return () => mergeJournals(names, path.join(folder, 'whole', JOURNAL_NAME));
  }

  it('and whose rows are those of the same shard with another seed is refused with the line', () => {
    const [one, two, three] = shardsOf(drawn(7), 3);
    expect([...merging([one!, two!, three!])().rows()]).toHaveLength(7);
    const foreign = shardsOf(drawn(8), 3)[1]!.rows;
    expect(merging([one!, { ...two!, rows: foreign }, three!])).toThrow(
      /part2.runs\.journal:2: run 1 has values of another survey; expected /u,
    );
    const last = { ...two!, rows: [two!.rows[0]!, foreign[1]!] };
    expect(merging([one!, last, three!])).toThrow(
      /part2.runs\.journal:3: run 4 has values of another survey/u,
    );
  });

  it('and whose rows are those of another shard is refused with the line', () => {
    const [one, two, three] = shardsOf(drawn(7), 3);
    expect(merging([one!, { ...two!, rows: three!.rows }, three!])).toThrow(
      /part2.runs\.journal:2: run 2 is none of this journal's/u,
    );
  });

  it('but for the number of runs is refused', () => {
    const [whole] = shardsOf(drawn(7), 1);
    const short = { header: { ...whole!.header, count: 5 }, rows: whole!.rows.slice(0, 5) };
    expect(merging([short])).toThrow(/:1: it is of 5 runs, and its survey has 7; expected /u);
  });

  it('is merged where a value is −0, whose sign the first line does not keep', () => {
    const spread = { kind: 'values', values: [-0, 1, 2, 3, 4, 5, 6] } as const;
    const asked: Survey = { ...survey, fields: [{ ...survey.fields[0]!, spread }] };
    const [first] = merging(shardsOf(asked, 2))().rows();
    expect(first!.values).toEqual([-0]);
  });

  it('is refused when it is that of a search, also of a finished one', () => {
    const search: Survey = {
      ...drawn(7),
      task: { kind: 'worst', metric: 'plugMinimumTorque', seek: 'largest', runs: 7 },
    };
    const [whole] = shardsOf(drawn(7), 1);
    const header = { ...whole!.header, survey: search, fingerprint: fingerprint(search) };
    expect(merging([{ ...whole!, header }])).toThrow(/a search has no parts to join/u);
  });
});
