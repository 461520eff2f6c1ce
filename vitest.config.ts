import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Modules by Node's own import: under Vite's each use of an imported name is a look-up, and a step,
    // which is nothing but such names, takes twenty times as long.
    experimental: { viteModuleRunner: false, nodeLoader: false },
    execArgv: ['--import', 'tsx', '--import', './tests/packages.mjs'],
    // Files of one worker share the modules they load: a minute less, and no file changes them.
    isolate: false,
  },
});
