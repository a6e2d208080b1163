import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/long/**/*.long.ts'],
    testTimeout: 3_600_000,
  },
});
