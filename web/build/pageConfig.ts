/** How the page is built and served, for vite.config.ts and for tests with demos of their own. */
import { join } from 'node:path';
import type { UserConfig } from 'vite';
import { demosPlugin, type WithRunner } from './demosPlugin.ts';
import { eagerPlugin } from './eagerPlugin.ts';
import { offlinePlugin } from './offlinePlugin.ts';
import { developmentPlugin, HEADERS, policyPlugin } from './policyPlugin.ts';

export interface PageOptions {
  /** Root of the project. */
  root: string;
  /** Demo scenario files, the opening one first. */
  demos: string[];
  /** Where the built page goes; `dist/page` where absent. */
  outDir?: string;
  /** Lends a runner for the demos' answers. */
  withRunner?: WithRunner;
}

/** On this machine only, and nothing for pages of other places. */
const LOOPBACK = { host: '127.0.0.1', strictPort: false, cors: false } as const;

export function pageConfig(options: PageOptions): UserConfig {
  const { root, demos, outDir = join(root, 'dist/page'), withRunner } = options;
  return {
    root: join(root, 'web'),
    base: './',
    plugins: [
      demosPlugin({ files: demos, root, ...(withRunner && { withRunner }) }),
      eagerPlugin(),
      policyPlugin(),
      offlinePlugin(),
      developmentPlugin(),
    ],
    worker: { format: 'es' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    server: LOOPBACK,
    preview: { ...LOOPBACK, headers: HEADERS },
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2023',
      modulePreload: { polyfill: false },
      chunkSizeWarningLimit: 1600,
      license: true,
    },
  };
}
