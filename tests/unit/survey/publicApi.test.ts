import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { PROJECT } from '../../support/commandLine.ts';

const { exports } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8')) as {
  exports: Record<string, string>;
};

/** Everything that a file of the project draws in, directly or not: files of the project and names of packages. */
function drawnIn(entry: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const visit = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    const text = readFileSync(path.join(PROJECT, file), 'utf8');
    for (const { fileName } of ts.preProcessFile(text).importedFiles) {
      const target = fileName.startsWith('.') ? path.join(path.dirname(file), fileName) : null;
      if (target === null) seen.add(fileName);
      else if (/\.tsx?$/u.test(target) && existsSync(path.join(PROJECT, target))) visit(target);
    }
  };
  visit(path.normalize(entry));
  return seen;
}

const ofNode = (name: string) =>
  name.startsWith('node:') || name === 'piscina' || /^src\/(?:pool|cli)\//u.test(name);

it('what a browser takes from the package needs nothing of Node, and no worker threads', () => {
  const names = drawnIn(exports['.']!);
  expect(names).toContain('src/survey/runs/runner.ts');
  expect(names).toContain('src/report/survey/buildSurveyFiles.ts');
  expect([...names].filter(ofNode)).toEqual([]);
});

it('the pool is an entry of its own for Node', async () => {
  const entry = exports['./pool']!;
  expect([...drawnIn(entry)].filter(ofNode)).toContain('piscina');
  expect(await import(path.join(PROJECT, entry))).toHaveProperty('runSurvey');
});

it('a survey can be asked and answered with the public names alone', async () => {
  const api = await import('../../../src/index.ts');
  expect(Object.keys(api)).toEqual(
    expect.arrayContaining([
      'buildSurveyFiles',
      'extremeOf',
      'mapOf',
      'readSurvey',
      'runList',
      'runner',
      'scenarioOfRun',
      'sensitivityOf',
      'summaryOf',
      'surveyCsv',
      'surveyJsonSchema',
      'surveyParquet',
      'tornadoOf',
      'worstSearch',
    ]),
  );
});
