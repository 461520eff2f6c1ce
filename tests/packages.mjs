/**
 * Has Node load packages as they are, after `--import tsx`: tsx reads every module through, and the compiler of the
 * lanes is one of 13 MB, seven seconds of each process. And mathjs, of which units alone are used, comes from 1500
 * files, two seconds; one file of what is used is made of them once and kept.
 */
import { existsSync, readFileSync, renameSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { register } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isMainThread } from 'node:worker_threads';

const PACKAGES = join(import.meta.dirname, '../node_modules');
/** What sim/scenario/dimension.ts takes of mathjs. */
const UNITS = ['create', 'createUnitDependencies', 'unitDependencies'];

// Hooks run in a thread of their own, which loads this file again.
if (isMainThread) register(import.meta.url);

let units;

export async function resolve(specifier, context, next) {
  if (specifier !== 'mathjs') return next(specifier, context);
  // All of it, slowly, where nothing may be kept.
  units ??= unitsAlone().catch(() => undefined);
  const url = await units;
  return url ? { url, format: 'module', shortCircuit: true } : next(specifier, context);
}

export async function load(url, context, next) {
  if (context.format !== 'module' || !url.includes('/node_modules/')) return next(url, context);
  return { format: 'module', source: await readFile(new URL(url)), shortCircuit: true };
}

/** Address of the one file. */
async function unitsAlone() {
  const { version } = JSON.parse(readFileSync(join(PACKAGES, 'mathjs/package.json'), 'utf8'));
  const file = join(PACKAGES, '.cache/trumpetry', `mathjs-${version}-${UNITS.join('-')}.mjs`);
  if (!existsSync(file)) {
    const { build } = await import('esbuild');
    const contents = `export { ${UNITS.join(', ')} } from 'mathjs';`;
    const own = `${file}.${process.pid}`;
    const stdin = { contents, resolveDir: PACKAGES };
    await build({ stdin, bundle: true, format: 'esm', outfile: own, logLevel: 'error' });
    // Whoever makes it at the same time makes the same.
    renameSync(own, file);
  }
  return pathToFileURL(file).href;
}
