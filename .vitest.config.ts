import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // One for each core; left alone, one core is spared, which is half of two.
    maxWorkers: '100%',
  },
});
