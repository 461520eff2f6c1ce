/** The one pool of workers of the page. */
import { signal } from '@preact/signals';
import { WorkerPool } from '../compute/pool.ts';

/** How often a worker stopped and was replaced, and what the last one said. */
export const crashes = signal({ count: 0, message: '' });

const cores = Math.max(1, navigator.hardwareConcurrency ?? 1);

export const pool = new WorkerPool(
  cores,
  () => new Worker(new URL('../compute/worker.ts', import.meta.url), { type: 'module' }),
  (message) => {
    crashes.value = { count: crashes.value.count + 1, message };
  },
);
