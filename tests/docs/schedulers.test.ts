import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Job } from 'kubernetes-models/batch/v1';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { PROJECT, runCommand } from '../support/commandLine.ts';
import { shortRun } from '../support/shortRun.ts';
import { workFolder, writeInto } from '../support/workFolder.ts';

const RECIPES = path.join(PROJECT, 'examples', 'schedulers');
const NAMES = readdirSync(RECIPES);
const recipe = (name: string) => readFileSync(path.join(RECIPES, name), 'utf8');
const MANIFEST = parse(recipe('kubernetes-indexed-job.yaml'));

/** Command lines of a recipe that run the program, comments too, each in one line. */
function commandsOf(name: string): string[] {
  const lines = recipe(name)
    .replaceAll(/\\\n\s*|\n\s*(?=--)/gu, ' ')
    .split('\n');
  return lines.flatMap((line) =>
    [...line.matchAll(/(?:npm start(?: --silent)? --|node src\/cli\/start\.js) (.*)$/gu)].map(
      ([, rest]) => rest!,
    ),
  );
}

it('every recipe runs the program, in a way that --help knows', async () => {
  const verbs = NAMES.flatMap((name) => {
    const commands = commandsOf(name);
    expect(commands, name).not.toEqual([]);
    return commands.map((command) => {
      const [verb = '', ...words] = command.replace(/ ::: .*$/u, '').split(/\s+/u);
      return { name, verb, options: words.filter((word) => word.startsWith('--')) };
    });
  });
  for (const { name, verb, options } of verbs) {
    if (verb === 'survey`') continue; // the word of a sentence
    const { exit, out } = await runCommand(workFolder(), [verb, '--help']);
    expect(exit, `${name}: ${verb}`).toBe(0);
    for (const option of options) expect(out, `${name}: ${verb}`).toContain(`  ${option} `);
  }
  expect(new Set(verbs.map(({ verb }) => verb))).toContain('merge');
});

it('every file that a recipe names exists', () => {
  const named = NAMES.flatMap((name) =>
    [...recipe(name).matchAll(/examples\/[\w./-]+\w/gu)].map(([file]) => file),
  );
  expect(named.length).toBeGreaterThanOrEqual(4);
  expect(named.filter((file) => !existsSync(path.join(PROJECT, file)))).toEqual([]);
});

it('the shards of each recipe are those that it joins', () => {
  const shards = (count: number) => Array.from({ length: count }, (_, i) => String(i + 1));
  const joined = (name: string) => [...recipe(name).matchAll(/out\.(\d+)"?(?= )/gu)].map(([, part]) => part);
  const [, of, list] = /--shard \{\}\/(\d+) .*::: ([\d ]+)$/mu.exec(recipe('gnu-parallel.sh'))!;
  expect(list!.trim().split(' ')).toEqual(shards(Number(of)));
  expect(joined('gnu-parallel.sh')).toEqual(shards(Number(of)));
  const [, last] = /^#SBATCH --array=1-(\d+)$/mu.exec(recipe('slurm-array.sh'))!;
  expect(joined('slurm-merge.sh')).toEqual(shards(Number(last)));
  const { completions, template } = MANIFEST.spec;
  const command: string = template.spec.containers[0].command[2];
  expect(command).toContain(`--shard "$((JOB_COMPLETION_INDEX + 1))/${completions}"`);
  expect(joined('kubernetes-indexed-job.yaml')).toEqual(shards(completions));
});

/** Plain data whose objects note which of their keys are read. */
function noting<T>(value: T, place: string, unread: Set<string>): T {
  if (typeof value !== 'object' || value === null) return value;
  const copy = Array.isArray(value) ? [] : {};
  for (const [key, inner] of Object.entries(value)) {
    const at = `${place}/${key}`;
    if (!Array.isArray(value)) unread.add(at);
    const noted = noting(inner, at, unread);
    Object.defineProperty(copy, key, {
      enumerable: true,
      get: () => {
        unread.delete(at);
        return noted;
      },
    });
  }
  return copy as T;
}

/** What is wrong with a Job: what the schema does not allow, else keys that it does not have and a cluster would drop. */
function faultsOf(job: object): string[] {
  const unread = new Set<string>();
  try {
    Job.prototype.validate.call(noting(job, '', unread));
  } catch (error) {
    return [String(error)];
  }
  return [...unread];
}

// The schema is that of Kubernetes' own OpenAPI description, from the package kubernetes-models.
it('the manifest is a Job as the schema of batch/v1 has it', () => {
  expect(faultsOf(MANIFEST)).toEqual([]);
});

it('a wrong value and an unknown key of a manifest are found', () => {
  const { spec } = MANIFEST;
  expect(faultsOf({ ...MANIFEST, spec: { ...spec, completions: '4' } })).toEqual([
    expect.stringContaining('spec/completions must be integer'),
  ]);
  expect(faultsOf({ ...MANIFEST, spec: { ...spec, completionmode: 'Indexed' } })).toEqual([
    '/spec/completionmode',
  ]);
});

// "When value is Indexed, .spec.completions must be specified": reference of JobSpec, completionMode. Of the restart policies a Job
// allows Never and OnFailure: Kubernetes documentation, Jobs, "Pod template".
it('the manifest keeps the rules that a schema does not state', () => {
  const { completionMode, completions, parallelism, template } = MANIFEST.spec;
  expect(completionMode).toBe('Indexed');
  expect(parallelism).toBeLessThanOrEqual(completions);
  expect(['Never', 'OnFailure']).toContain(template.spec.restartPolicy);
  const [container] = template.spec.containers;
  const volumes = template.spec.volumes.map(({ name }: { name: string }) => name);
  for (const { name } of container.volumeMounts) expect(volumes).toContain(name);
});

/** The recipe's line of `parallel` as the commands that it starts, of which each is run here as it stands. */
function startedByParallel(survey: string, out: string): string[][] {
  const [, command, list] = /^parallel --halt \S+ npm start --silent -- (.*) ::: ([\d ]+)$/mu.exec(
    recipe('gnu-parallel.sh'),
  )!;
  const filled = command!.replaceAll('"$survey"', survey).replaceAll('"$out"', out);
  return list!
    .trim()
    .split(' ')
    .map((part) => filled.replaceAll('{}', part).split(' '));
}

it('what the recipe for GNU parallel starts makes the parts of a survey, and they join to the whole', async () => {
  const folder = workFolder();
  writeInto(folder, 'belt.yaml', shortRun());
  const text = `title: Angles\nscenario: belt.yaml\nask: sweep\nvary: [{ field: supply.angle, from: 0 deg, to: 300 deg, count: 6 }]\n`;
  const survey = writeInto(folder, 'angles.yaml', text);
  const table = (name: string) => readFileSync(path.join(folder, name, 'survey.csv'), 'utf8');
  const made = async (args: readonly string[]) =>
    expect(await runCommand(folder, args), args.join(' ')).toMatchObject({ exit: 0, err: '' });
  await made(['survey', survey, '--out', 'whole', '--workers', '1']);
  for (const args of startedByParallel(survey, 'part')) await made(args);
  await made(['merge', 'part.1', 'part.2', 'part.3', 'part.4', '--out', 'joined']);
  expect(table('joined')).toBe(table('whole'));
  expect(table('part.1').split('\n').length).toBeLessThan(table('whole').split('\n').length);
});
