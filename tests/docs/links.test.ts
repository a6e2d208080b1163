import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { PROJECT } from '../support/commandLine.ts';
import { headingAnchors, linkTargets, markdownPages } from '../support/markdown.ts';

const PAGES = markdownPages();

const read = (page: string) => readFileSync(path.join(PROJECT, page), 'utf8');

function folders(below: string): string[] {
  return readdirSync(path.join(PROJECT, below), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
}

it('the pages for each kind of reader are among those read', () => {
  const some = ['README.md', 'DEVELOPERS.md', 'tests/bench/README.md', 'examples/engineer/README.md'];
  expect(PAGES).toEqual(expect.arrayContaining(some));
});

it.each(PAGES)('every internal link of %s leads somewhere', (page) => {
  const broken = linkTargets(read(page))
    .filter((target) => !/^[a-z]+:/u.test(target))
    .filter((target) => {
      const [file = '', anchor] = target.split('#');
      const full = file === '' ? page : path.join(path.dirname(page), file);
      if (!existsSync(path.join(PROJECT, full))) return true;
      return anchor !== undefined && !headingAnchors(read(full)).includes(anchor);
    });
  expect(broken).toEqual([]);
});

it('every source file named in DEVELOPERS.md exists', () => {
  const named = [...read('DEVELOPERS.md').matchAll(/`((?:\w+\/)+\w+\.ts)`/gu)].map((match) => match[1]!);
  // A file named without its folder stands beside the one named before it; it must be somewhere.
  const everywhere = new Set(
    ['src', 'tests', 'notebooks'].flatMap((root) =>
      readdirSync(path.join(PROJECT, root), { recursive: true, encoding: 'utf8' }).map((file) =>
        path.basename(file),
      ),
    ),
  );
  const bare = [...read('DEVELOPERS.md').matchAll(/`(\w+\.tsx?)`/gu)].map((match) => match[1]!);
  expect(bare.filter((file) => !everywhere.has(file))).toEqual([]);
  expect(named.length).toBeGreaterThan(5);
  const missing = named.filter(
    (file) => !['', 'src'].some((root) => existsSync(path.join(PROJECT, root, file))),
  );
  expect(missing).toEqual([]);
});

it('DEVELOPERS.md names every room, every test folder and every dependency', () => {
  const text = read('DEVELOPERS.md');
  const { dependencies } = JSON.parse(read('package.json'));
  const missing = [
    ...folders('src').filter((room) => !text.includes(`\`${room}/\``)),
    ...folders('tests').filter((folder) => folder !== 'support' && !text.includes(`\`tests/${folder}/\``)),
    ...Object.keys(dependencies).filter((name) => !text.includes(name)),
  ];
  expect(missing).toEqual([]);
});
