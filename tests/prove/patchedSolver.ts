/** The solver with a piece of its source replaced, to see what that piece moves; nothing on disk changes. */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { build, type Plugin } from 'esbuild';
import type { solo } from '../../sim/engine/driver.ts';
import type { runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';

const ROOT = join(import.meta.dirname, '..', '..');

/** In a file of the house, what stands there once and what stands in its place. */
export interface Edit {
  file: string;
  from: string;
  to: string;
}

/** Volumetric efficiency [-] of an engine at some speeds [rpm]; NaN where a point failed. */
export type Curve = (engine: EngineSpecification, speeds: readonly number[]) => number[];

interface Solver {
  runSpeeds: typeof runSpeeds;
  solo: typeof solo;
}

const ENTRY = `export { runSpeeds } from './sim/engine/point.ts';
export { solo } from './sim/engine/driver.ts';`;

/** Curves by the solver with edits. Lanes are compiled beforehand, so what changes a step needs it in TypeScript. */
export async function patchedCurve(edits: readonly Edit[] = []): Promise<Curve> {
  const { runSpeeds, solo } = await patchedSolver(edits);
  const drive = edits.some(({ file }) => file.startsWith('sim/step/')) ? solo : undefined;
  return (engine, speeds) =>
    runSpeeds(engine, speeds, drive).map((point) =>
      point instanceof Error ? Number.NaN : point.volumetricEfficiency,
    );
}

async function patchedSolver(edits: readonly Edit[]): Promise<Solver> {
  const { outputFiles } = await build({
    stdin: { contents: ENTRY, resolveDir: ROOT, loader: 'ts' },
    bundle: true,
    platform: 'browser',
    format: 'esm',
    write: false,
    logLevel: 'error',
    plugins: [replacing(edits)],
  });
  const source = Buffer.from(outputFiles[0]!.contents).toString('base64');
  return (await import(`data:text/javascript;base64,${source}`)) as Solver;
}

function replacing(edits: readonly Edit[]): Plugin {
  return {
    name: 'replacing',
    setup({ onLoad }) {
      onLoad({ filter: /\/sim\/.*\.ts$/ }, ({ path }) => {
        const file = relative(ROOT, path);
        const ours = edits.filter((edit) => edit.file === file);
        if (ours.length === 0) return undefined;
        return { contents: ours.reduce(replaced, readFileSync(path, 'utf8')), loader: 'ts' };
      });
    },
  };
}

function replaced(text: string, { file, from, to }: Edit): string {
  const parts = text.split(from);
  if (parts.length !== 2) throw new Error(`${file}: ${parts.length - 1} times: ${from}`);
  return parts.join(to);
}
