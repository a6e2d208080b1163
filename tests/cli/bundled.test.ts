import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, realpathSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { PROJECT } from '../support/commandLine.ts';
import { workFolder } from '../support/workFolder.ts';

const START =
  "import('./src/pool/bundled.js').then(({ bundled }) => bundled('cli/tell.ts')).then(({ tell }) => tell())";

/** A package as small as can be that starts like this one: two modules in TypeScript, what translates them, and no cache. */
function smallPackage() {
  // Where the system's folder for work files is a link, modules know themselves by its target.
  const folder = realpathSync(workFolder());
  const at = (...names: string[]) => path.join(folder, ...names);
  for (const name of ['src/pool', 'src/cli', 'node_modules']) mkdirSync(at(name), { recursive: true });
  copyFileSync(path.join(PROJECT, 'src', 'pool', 'bundled.js'), at('src', 'pool', 'bundled.js'));
  for (const name of ['esbuild', 'tsx'])
    symlinkSync(path.join(PROJECT, 'node_modules', name), at('node_modules', name), 'junction');
  writeFileSync(at('package.json'), '{ "type": "module" }');
  writeFileSync(at('src', 'cli', 'word.ts'), "export const word: string = 'first';\n");
  writeFileSync(
    at('src', 'cli', 'tell.ts'),
    "import { word } from './word.ts';\nexport const tell = (): void => console.log(word, import.meta.url);\n",
  );
  const cache = at('node_modules', '.cache', 'countertorque');
  return { folder, at, cache, cached: () => readdirSync(cache) };
}

/** What the package says when it starts. */
function started(folder: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['-e', START], { cwd: folder });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (text: string) => {
        said += text;
      });
    child.on('error', reject);
    child.on('close', () => resolve(said));
  });
}

it('a start makes one file, the next takes it as it is, and a changed source makes another', async () => {
  const { folder, at, cache, cached } = smallPackage();
  const first = await started(folder);
  expect(first).toMatch(/^first file:.*\/src\/cli\/tell\.ts\n$/u);
  const [file] = cached();
  expect(cached()).toEqual([expect.stringMatching(/^tell-[0-9a-f]{16}\.mjs$/u)]);
  writeFileSync(path.join(cache, file!), "export const tell = () => console.log('as it is');\n");
  expect(await started(folder)).toBe('as it is\n');
  // Not the module that was asked for but one it imports.
  writeFileSync(at('src', 'cli', 'word.ts'), "export const word: string = 'changed';\n");
  expect(await started(folder)).toBe(first.replace('first', 'changed'));
  expect(cached()).toHaveLength(2);
});

it('where nothing can be kept it starts all the same', async () => {
  const { folder, at } = smallPackage();
  // A file where the folder should be: that also keeps out a person who may write everywhere.
  writeFileSync(at('node_modules', '.cache'), '');
  expect(await started(folder)).toMatch(/^first file:.*\/src\/cli\/tell\.ts\n$/u);
});

it('two starts at once both work and leave one file', async () => {
  const { folder, cached } = smallPackage();
  const [one, other] = await Promise.all([started(folder), started(folder)]);
  expect(one).toMatch(/^first file:/u);
  expect(other).toBe(one);
  expect(cached()).toHaveLength(1);
});
