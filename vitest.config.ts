import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Files of one worker share the modules they load: a minute less, and no file changes them.
    isolate: false,
  },
});
