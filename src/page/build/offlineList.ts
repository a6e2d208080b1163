import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';
import type { OfflineFiles } from './offlineFiles.ts';

/** What stands in the service worker's source where the list belongs. */
const PLACE = '__OFFLINE_FILES__';
const WORKER = 'serviceWorker.js';
const PAGE = 'index.html';
/** Hexadecimal digits of the version: 64 bits, enough to tell any two builds apart. */
const VERSION_DIGITS = 16;

interface BuiltFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * List of everything the page may ask for, with a version that changes when any name or byte of it does. The page itself
 * goes by the folder's address: servers like to redirect from `index.html`, and a redirected answer cannot be kept.
 */
export function offlineFilesOf(built: readonly BuiltFile[]): OfflineFiles {
  const kept = built.filter(({ name }) => name !== WORKER).sort((a, b) => (a.name < b.name ? -1 : 1));
  const hash = createHash('sha256');
  for (const { name, content } of kept) hash.update(`${name}\0`).update(content).update('\0');
  return {
    version: hash.digest('hex').slice(0, VERSION_DIGITS),
    files: kept.map(({ name }) => (name === PAGE ? './' : `./${name}`)),
  };
}

/** Tells the service worker which files were built; a build without its place for the list is refused. */
export function offlineList(): Plugin {
  return {
    name: 'offline-list',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== 'chunk' || !worker.code.includes(PLACE))
          return this.error(`${WORKER} was not built or has no ${PLACE} in it`);
        if (worker.imports.length > 0)
          return this.error(`${WORKER} must stand alone, and imports ${worker.imports}`);
        const built = Object.values(bundle).map((file) => ({
          name: file.fileName,
          content: file.type === 'chunk' ? file.code : file.source,
        }));
        worker.code = worker.code.replace(PLACE, JSON.stringify(offlineFilesOf(built)));
      },
    },
  };
}
