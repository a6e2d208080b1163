import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'tests/long/**/*.long.ts',
      // Their long forms: every form of every fault, every theme on every screen.
      'tests/browser/page/{faults,accessibility,link,keyboard,files}.test.ts',
    ],
    env: { LONG_FORMS: '1' },
    hookTimeout: 120_000,
    testTimeout: 3_600_000,
  },
});
