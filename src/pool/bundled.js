// Loads a TypeScript module of this package, with all that it imports, as one file of plain JavaScript. Loading the modules one by one through a
// translator takes some three seconds of a processor for a command, and as much again for every worker thread; the one file takes a quarter of a
// second. It is made anew whenever a source file has changed, which its name tells. Plain JavaScript, because it runs before any TypeScript can.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const PACKAGE = fileURLToPath(new URL('../../', import.meta.url));
const SOURCES = path.join(PACKAGE, 'src');
/** Where tools keep what they can make again; beside the packages, so that the file finds them. */
const CACHE = path.join(PACKAGE, 'node_modules', '.cache', 'countertorque');

/**
 * @param {string} source path of a module below src, such as `cli/main.ts`
 * @returns {Promise<any>} the module
 */
export async function bundled(source) {
  const entry = path.join(SOURCES, source);
  // A damaged file is thrown away and made once more; its name changes, because Node remembers a module that could not be loaded.
  for (const attempt of [0, 1]) {
    let file;
    try {
      file = await bundleOf(entry, attempt);
      const module = await import(pathToFileURL(file).href);
      if (Object.keys(module).length > 0) return module;
    } catch {
      // A folder that cannot be written, a file system that cannot rename, a file cut short: what follows is slower, but it works.
    }
    if (file !== undefined) rmSync(file, { force: true });
  }
  const { register } = await import('tsx/esm/api');
  register();
  return import(pathToFileURL(entry).href);
}

/**
 * @param {string} source path of a module below src, such as `index.ts`
 * @returns {Promise<string>} path of the one file of that module, which is made if it is not there
 */
export function bundleFile(source) {
  return bundleOf(path.join(SOURCES, source), 0);
}

/** Path of the one file of a module, which is made if it is not there. */
async function bundleOf(entry, attempt) {
  const name = path.basename(entry, '.ts');
  const file = path.join(CACHE, `${name}-${stateOfSources()}${attempt === 0 ? '' : `-${attempt}`}.mjs`);
  if (statSync(file, { throwIfNoEntry: false }) !== undefined) return file;
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    logLevel: 'silent',
    plugins: [OWN_PLACES],
  });
  mkdirSync(CACHE, { recursive: true });
  // Whole or not at all: another process may be making the same file, or be killed while it does.
  const draft = `${file}.${process.pid}.${Math.random().toString(36).slice(2)}`;
  writeFileSync(draft, outputFiles[0].contents);
  renameSync(draft, file);
  forgetOlder(name, path.basename(file));
  return file;
}

/** Modules that look for files beside themselves still find them. */
const OWN_PLACES = {
  name: 'own places',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path: file }) => ({
      contents: readFileSync(file, 'utf8').replaceAll(
        'import.meta.url',
        JSON.stringify(pathToFileURL(file).href),
      ),
      loader: 'ts',
    }));
  },
};

/** A name for what the source files and the versions of their packages are now: sizes and times of change. */
function stateOfSources() {
  const state = createHash('sha256').update(process.version);
  const files = readdirSync(SOURCES, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath ?? entry.path, entry.name));
  for (const file of [path.join(PACKAGE, 'package.json'), ...files].sort()) {
    const { size, mtimeMs } = statSync(file);
    state.update(`${file} ${size} ${mtimeMs}\n`);
  }
  return state.digest('hex').slice(0, 16);
}

/** A day, ms: what is younger may be in use by a process that has just started. */
const DAY = 86_400_000;

function forgetOlder(name, kept) {
  for (const other of readdirSync(CACHE)) {
    const file = path.join(CACHE, other);
    const { mtimeMs } = statSync(file, { throwIfNoEntry: false }) ?? { mtimeMs: Number.NaN };
    if (other.startsWith(`${name}-`) && other !== kept && Date.now() - mtimeMs > DAY)
      rmSync(file, { force: true });
  }
}
