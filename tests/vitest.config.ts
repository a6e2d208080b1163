import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // As with snapshots: -u (`npm run pages`) writes the generated pages, any other run compares them.
    provide: { updatePages: ['-u', '--update'].some((flag) => process.argv.includes(flag)) },
    // Whole runs take a second; on a busy machine many times that. Nothing measures speed by a timeout.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Both cores of a small machine. The modules keep no state, so files may share them: that spares loading them anew.
    maxWorkers: 2,
    isolate: false,
  },
});
