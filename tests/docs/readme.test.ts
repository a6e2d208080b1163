import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { z } from 'zod';
import { EXIT_MEANINGS } from '../../src/cli/exitMeanings.ts';
import { parseScenario, readSurvey, scenarioJsonSchema, simulate } from '../../src/index.ts';
import { SCHEME_WORDS } from '../../src/scenario/controlWords.ts';
import { ASK_WORDS } from '../../src/survey/spec/surveyInput.ts';
import { PROJECT, runCommand } from '../support/commandLine.ts';
import { expectSection } from '../support/generatedPages.ts';
import { type CodeBlock, codeBlocks } from '../support/markdown.ts';
import { workFolder, writeInto } from '../support/workFolder.ts';

const readme = readFileSync(path.join(PROJECT, 'README.md'), 'utf8');
const blocks = codeBlocks(readme);
const SURVEYS = path.join('examples', 'engineer');
const at = (block: CodeBlock) => `line ${block.line}`;

it('two commands install and run the main job and the tests', () => {
  const shell = blocks.filter(({ language }) => language === 'sh').map(({ text }) => text.trim());
  expect(shell.slice(0, 2)).toEqual(['npm ci && npm start', 'npm ci && npm test']);
});

it('every npm script named in the README exists', () => {
  const { scripts } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8'));
  const named = [...readme.matchAll(/npm (?:run ([\w:]+)|(start|test)\b)/gu)].map(
    ([, run, own]) => run ?? own,
  );
  expect(new Set(named).size).toBeGreaterThanOrEqual(3);
  expect(named.filter((name) => scripts[name!] === undefined)).toEqual([]);
});

it('verbs, options and exit codes of the README are those of --help', async () => {
  const { out } = await runCommand(workFolder(), ['--help']);
  const inTable = (pattern: RegExp) =>
    [...readme.matchAll(/^\| `?([^|`]+?)`? \|/gmu)].flatMap(([, cell]) => cell!.match(pattern)?.[1] ?? []);
  const inHelp = (pattern: RegExp) => [...out.matchAll(pattern)].map(([, word]) => word!);
  const verbs = inHelp(/^ {2}([a-z]+)(?: \[| <| {2})/gmu).filter((verb) => verb !== 'help');
  const options = inHelp(/^ {2}(--[a-z]+)/gmu);
  const codes = inHelp(/^ {2}(\d) /gmu);
  expect(verbs.length).toBeGreaterThanOrEqual(3);
  expect(options.length).toBeGreaterThanOrEqual(4);
  expect(inTable(/^([a-z]+)(?: [A-Z]+)*$/u).filter((word) => !['verb', 'option'].includes(word))).toEqual(
    verbs,
  );
  expect(inTable(/^(--[a-z]+)/u)).toEqual(options);
  expect(inTable(/^(\d)$/u)).toEqual(codes);
});

const isSurvey = ({ text }: CodeBlock) => text.startsWith('# a survey');
const files = blocks.filter(({ language }) => language === 'yaml');
const scenarios = files.filter((block) => !isSurvey(block));

/** The first scenario with the sections of a later piece in place of its own. */
function inPlace(piece: string): string {
  return stringify({ ...parse(scenarios[0]!.text), ...parse(piece) });
}

it.each(scenarios.map((block) => ({ block, place: at(block) })))(
  'the scenario at $place is in order and runs to its end',
  ({ block }) => {
    const text = block.text.startsWith('# in place of') ? inPlace(block.text) : block.text;
    expect(simulate(parseScenario(text)).status.code).toBe('finished');
  },
);

it('the survey is in order where the examples of surveys lie', () => {
  const surveys = files.filter(isSurvey);
  expect(surveys).toHaveLength(1);
  const { task, fields } = readSurvey(surveys[0]!.text, {
    fileName: 'README.md',
    scenarioText: (name) => readFileSync(path.join(PROJECT, SURVEYS, name), 'utf8'),
  });
  expect(task).toMatchObject({ kind: 'random', runs: 2000 });
  expect(fields).toHaveLength(4);
});

it('the README names each thing a survey can ask', () => {
  const asked = ASK_WORDS.filter((word) => readme.includes(`\n| **${word}** |`));
  expect(asked).toEqual(ASK_WORDS);
});

describe('the tables written by hand', () => {
  const schema = JSON.stringify(scenarioJsonSchema());
  const rowOf = (start: string) => readme.split('\n').find((line) => line.startsWith(`| ${start}`)) ?? '';
  const keys = (text: string) => [...text.matchAll(/`((?:\w+\.)*\w+)`/gu)].map((match) => match[1]!);

  it('name every scheme', () => {
    expect(SCHEME_WORDS.filter((word) => rowOf(word.split(' (')[0]!) === '')).toEqual([]);
  });

  it('name keys that exist', () => {
    const table = readme.slice(
      readme.indexOf('| what is added | keys |'),
      readme.indexOf('### The control circuit'),
    );
    const named = keys(table).flatMap((key) => key.split('.'));
    expect(named.length).toBeGreaterThan(15);
    expect(named.filter((key) => !schema.includes(`"${key}"`))).toEqual([]);
  });

  it('name every kind of load torque and every fault', () => {
    const kinds = [...schema.matchAll(/"The kind of load: (\w+)\."/gu)].map((match) => match[1]!);
    expect(new Set(kinds).size).toBeGreaterThanOrEqual(6);
    expect(kinds.filter((kind) => !rowOf('more on the shaft').includes(kind))).toEqual([]);
    const { properties } = z
      .object({
        properties: z.object({ starter: z.object({ properties: z.object({ faults: z.unknown() }) }) }),
      })
      .parse(scenarioJsonSchema());
    const faults = JSON.stringify(properties.starter.properties.faults);
    const broken = [...faults.matchAll(/"kind":\{[^}]*?"const":"([^"]+)"/gu)].map((match) => match[1]!);
    expect(broken.length).toBeGreaterThanOrEqual(8);
    expect(broken.filter((word) => !rowOf('what is broken').includes(word))).toEqual([]);
  });

  it('name every guide', () => {
    const guides = readdirSync(path.join(PROJECT, 'examples', 'guides'));
    expect(guides.filter((file) => !readme.includes(`(examples/guides/${file})`))).toEqual([]);
  });

  it('give each exit code the meaning that --help gives it', () => {
    const rows = Object.entries(EXIT_MEANINGS).map(([code, meanings]) => {
      const words = meanings.map(({ verbs, means }) =>
        verbs === 'all' ? means : `${verbs.map((verb) => `\`${verb}\``).join(', ')}: ${means}`,
      );
      return `| ${code} | ${words.join('; ')} |\n`;
    });
    expectSection('README.md', 'exit codes', `\n| exit code | means |\n| --- | --- |\n${rows.join('')}\n`);
  });

  it('name the files of a survey’s folder', () => {
    expect(
      ['survey.html', 'survey.csv', 'survey.parquet', 'runs.journal', 'worst.yaml'].filter(
        (name) => rowOf(name) === '',
      ),
    ).toEqual([]);
  });
});

/** Runs TypeScript as a user of the package would, from the project's folder. */
async function runSnippet(code: string): Promise<string> {
  const folder = workFolder();
  mkdirSync(path.join(folder, 'node_modules'));
  symlinkSync(PROJECT, path.join(folder, 'node_modules', 'countertorque'), 'junction');
  const file = path.join(folder, writeInto(folder, 'snippet.mts', code));
  const tsx = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', tsx, file], { cwd: PROJECT });
  return stdout;
}

const snippets = blocks.flatMap((block, index) => {
  const next = blocks[index + 1];
  return block.language === 'ts' && next?.language === 'text'
    ? [{ code: block.text, shown: next.text, place: at(block) }]
    : [];
});

it('every piece of TypeScript is followed by what it prints', () => {
  expect(snippets.length).toBeGreaterThanOrEqual(1);
  expect(snippets).toHaveLength(blocks.filter(({ language }) => language === 'ts').length);
});

it.each(snippets)('the code at $place prints what is shown', async ({ code, shown }) => {
  expect(await runSnippet(code)).toBe(shown);
});
