/**
 * Has Node load packages as they are. tsx reads every module through, and the compiler of the lanes is one of
 * 13 MB: seven seconds in each worker.
 */
import { readFile } from 'node:fs/promises';
import { register } from 'node:module';
import { isMainThread } from 'node:worker_threads';

// Hooks run in a thread of their own, which loads this file again.
if (isMainThread) register(import.meta.url);

export async function load(url, context, next) {
  if (context.format !== 'module' || !url.includes('/node_modules/')) return next(url, context);
  return { format: 'module', source: await readFile(new URL(url)), shortCircuit: true };
}
