import { readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vite';
import { onOrphaned } from './sim/cli/signals.ts';
import { withWorkers } from './sim/cli/workers.ts';
import { pageConfig } from './web/build/pageConfig.ts';

const root = import.meta.dirname;
const OPENING = 'hill-climb.yaml';
const others = readdirSync(`${root}/scenarios`)
  .filter((file) => file.endsWith('.yaml') && file !== OPENING)
  .sort();

/** A server ends with the npm that ran it. */
const endWithNpm = () => void onOrphaned(() => process.exit());

const config = defineConfig(
  pageConfig({
    root,
    demos: [OPENING, ...others].map((file) => `${root}/scenarios/${file}`),
    withRunner: (work) => withWorkers(availableParallelism(), work),
  }),
);

export default {
  ...config,
  plugins: [
    ...config.plugins!,
    { name: 'trumpetry-end', configureServer: endWithNpm, configurePreviewServer: endWithNpm },
  ],
};
