/** The digest of the demos as a bundle that any runtime takes, and what it must give. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { cheapText, DEMOS } from './cheap.ts';

export const RECORDED = join(import.meta.dirname, 'bytes.json');

export const texts = () => Object.fromEntries(DEMOS.map((demo) => [demo, cheapText(demo)]));

export const recorded = () => JSON.parse(readFileSync(RECORDED, 'utf8')) as Record<string, string>;

/** A module that exports `digestOf`, as text. */
export async function digestModule(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [join(import.meta.dirname, 'digest.ts')],
    bundle: true,
    platform: 'browser',
    format: 'esm',
    write: false,
    logLevel: 'error',
  });
  return outputFiles[0]!.text;
}
