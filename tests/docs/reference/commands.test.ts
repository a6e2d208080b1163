import { describe, expect, it } from 'vitest';
import { buildProgram } from '../../../src/cli/buildProgram.ts';
import { runCommand } from '../../support/commandLine.ts';
import { expectPage } from '../../support/generatedPages.ts';
import { commandsPage, unmatchedVerbs } from '../../support/reference/commandsPage.ts';
import { VERB_NOTES } from '../../support/reference/verbNotes.ts';
import { folderWithExamples } from '../../support/workFolder.ts';

const io = { out: () => {}, err: () => {}, cwd: '.', colour: false };
const program = buildProgram(io, () => {});

it('the program is built without anything being run or printed', () => {
  const said: string[] = [];
  const say = (text: string) => said.push(text);
  const built = buildProgram({ ...io, out: say, err: say }, (code) => say(String(code)));
  expect(built.commands.length).toBeGreaterThan(10);
  expect(said).toEqual([]);
});

describe('the page of commands', () => {
  it('has words and an example for every verb, and for no other', () => {
    expect(unmatchedVerbs(program, VERB_NOTES)).toEqual([]);
    for (const [verb, { example, does }] of Object.entries(VERB_NOTES)) {
      expect(example[0]).toBe(verb);
      expect(does).toMatch(/^[A-Z].*\.$/u);
    }
  });

  it('is what the program says, with the output of each example that is quick', async () => {
    const outputs: Record<string, string> = {};
    for (const [verb, { example, lines }] of Object.entries(VERB_NOTES)) {
      if (lines === 0) continue;
      const { exit, out } = await runCommand(folderWithExamples(), example);
      expect({ verb, exit }).toEqual({ verb, exit: 0 });
      outputs[verb] = out;
    }
    expectPage('examples/guides/commands.md', commandsPage(program, VERB_NOTES, outputs));
  });
});
