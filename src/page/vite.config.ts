import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { offlineList } from './build/offlineList.ts';
import { pageStyle } from './build/pageStyle.ts';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string;
};
const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * The project's modules and these old-style packages do nothing by being loaded: what the page, or its worker, does not use
 * of them is left out.
 */
const TREE_SHAKING = {
  moduleSideEffects: [
    { test: /\.css(?:\?|$)/u, sideEffects: true },
    { test: /\/src\/|\/node_modules\/(?:unitmath|papaparse)\//u, sideEffects: false },
  ],
};

/** Builds the page into `build/page`; every address in it is relative, so that the folder works wherever it is put. */
export default defineConfig({
  root: folder('.'),
  base: './',
  // One page, no routes: an unknown address is an error, not the page again.
  appType: 'mpa',
  publicDir: false,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', rolldownOptions: { treeshake: TREE_SHAKING } },
  define: { PROGRAM_VERSION: JSON.stringify(version) },
  plugins: [pageStyle(), offlineList()],
  build: {
    outDir: folder('../../build/page'),
    emptyOutDir: true,
    // Nothing inline: the policy allows no inline script, and a file that is named can be kept for offline use.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Plotly alone is larger than the size vite warns of; the benchmark states what every chunk weighs.
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      // It says that building the worker takes most of the time, which is so.
      checks: { pluginTimings: false },
      treeshake: TREE_SHAKING,
      input: { page: folder('index.html'), serviceWorker: folder('serviceWorker.ts') },
      output: {
        // The service worker's address must stay the same from build to build, and its folder is what it serves.
        entryFileNames: ({ name }) =>
          name === 'serviceWorker' ? 'serviceWorker.js' : 'assets/[name]-[hash].js',
      },
    },
  },
});
