import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { STANDARD_LIMITS } from '../../../src/assess/standardLimits.ts';
import { PROJECT } from '../../support/commandLine.ts';
import { expectPage } from '../../support/generatedPages.ts';
import { sourceNotes } from '../../support/reference/sourceRegister.ts';
import { standardValuesPage } from '../../support/reference/standardValuesPage.ts';

const SRC = path.join(PROJECT, 'src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.tsx?$/u.test(name) && !name.endsWith('.d.ts'))
  .sort()
  .map((name) => ({ path: name, text: readFileSync(path.join(SRC, name), 'utf8') }));
const page = standardValuesPage(files);
const rows = page.split('\n').filter((line) => line.startsWith('| '));

it('every limit of the judgement is on the page with its value, its source and a file that uses it', () => {
  for (const [name, { value, source }] of Object.entries(STANDARD_LIMITS)) {
    const row = rows.find((line) => line.startsWith(`| \`${name}\` | ${value} |`));
    expect(row, name).toContain(source);
    expect(row, `${name} is used nowhere`).toMatch(/\.ts` \|$/u);
  }
});

it('every file whose comments name a standard or common practice is on the page', () => {
  // Told by lines, not by comments as the register is: what that overlooks shows here.
  const naming = files.filter(({ text }) =>
    text
      .split('\n')
      .some(
        (line) =>
          /^\s*(?:\*|\/\*\*|\/\/)/u.test(line) &&
          /common practice|from memory|\bNEMA\b|\bIEC \d|\bIEEE \d/iu.test(line),
      ),
  );
  expect(naming.length).toBeGreaterThan(40);
  const missing = naming.filter(({ path: file }) => {
    const [room = '', ...rest] = file.split('/');
    const section = page.split(`\n### ${room}\n`)[1]?.split('\n#')[0] ?? '';
    return !section.includes(`| \`${rest.join('/')}\` |`);
  });
  expect(missing.map(({ path: file }) => file)).toEqual([]);
});

it('the words of a source are found beside the name and the number they are about', () => {
  const text =
    '/** s; how long. Common practice, no source. */\nexport const pause = 0.25;\n// by hand\nlet a = 1;\n';
  expect(sourceNotes([{ path: 'assess/x.ts', text }])).toEqual([
    { file: 'assess/x.ts', name: 'pause', value: '0.25', words: 's; how long. Common practice, no source.' },
  ]);
});

it('the page of standard values is what the code says', () => {
  expectPage('examples/guides/standard-values.md', page);
});
