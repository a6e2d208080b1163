import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TypeDocOptions } from 'typedoc';
import { ROOM_ORDER } from './byRoom.ts';

/** The project's folder; asked for here so that the command line is not loaded for it. */
export const PROJECT_FOLDER = fileURLToPath(new URL('../../../', import.meta.url));

const inProject = (file: string) => path.join(PROJECT_FOLDER, file);

/** Where `npm run api` puts the pages. */
export const API_FOLDER = inProject('build/api');

/**
 * How the documentation of the public names is read and written: nothing in it leads to the network, and nothing says where or when
 * it was made.
 */
export const API_SETTINGS: TypeDocOptions = {
  name: 'countertorque',
  entryPoints: [inProject('src/index.ts'), inProject('src/pool/index.ts')],
  tsconfig: inProject('tsconfig.json'),
  readme: inProject('tests/docs/api/start.md'),
  // The check of types comes before, in `npm run check`.
  skipErrorChecking: true,
  excludeInternal: true,
  // What every error has from the language is explained elsewhere, with addresses of the network.
  excludeExternals: true,
  disableSources: true,
  disableGit: true,
  hideGenerator: true,
  githubPages: false,
  categorizeByGroup: false,
  categoryOrder: [...ROOM_ORDER],
  navigation: { includeCategories: true, includeGroups: false },
  // Functions first, as a reader looks for what to call; members stay in the order in which they were written.
  sort: ['kind', 'source-order'],
  kindSortOrder: ['Module', 'Function', 'Variable', 'Class', 'Interface', 'TypeAlias'],
  sortEntryPoints: false,
  searchInComments: true,
  validation: { notExported: true, invalidLink: true, notDocumented: false },
};
