/**
 * Gives the page its demo scenarios as the module `virtual:demos`, each with the full answer computed
 * at build time by the same code that the page and the command line run. An answer is kept under
 * node_modules/.cache by the hash of the question and a digest of the solver's sources, so that it is
 * computed again whenever either changes; serving without a build takes what is there.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Plugin } from 'vite';
import {
  isFailure,
  type LengthStudy,
  lengthStudy,
  type PointRunner,
  PROGRAM,
  readScenario,
  runHere,
  scenarioHash,
} from '../../sim/index.ts';
import { questionOf } from '../compute/question.ts';

export interface DemosOptions {
  /** Scenario files in the order of the list; the first is the one the page opens with. */
  files: string[];
  /** Root of the project. */
  root: string;
  /** Lends a runner for points; this thread computes where absent. */
  withRunner?: WithRunner;
}

/** Lends a runner while some work goes on. */
export type WithRunner = <T>(work: (runner: PointRunner) => Promise<T>) => Promise<T>;

const here: WithRunner = (work) => work(runHere);

const DEMOS = 'virtual:demos';
const ANSWER = 'virtual:answer/';
const inside = (id: string) => `\0${id}`;

export function demosPlugin({ files, root, withRunner = here }: DemosOptions): Plugin {
  const demos = files.map((file) => demoFrom(file, root));
  let building = false;
  return {
    name: 'trumpetry-demos',
    configResolved: ({ command }) => {
      building = command === 'build';
    },
    buildStart: async () => {
      if (!building) return;
      for (const demo of demos) await ensureAnswer(demo, withRunner);
    },
    resolveId: (id) => (id === DEMOS || id.startsWith(ANSWER) ? inside(id) : undefined),
    load: (id) => {
      if (id === inside(DEMOS)) return listModule(demos);
      if (!id.startsWith(inside(ANSWER))) return undefined;
      const demo = demos.find(({ file }) => id === inside(ANSWER + file))!;
      return `export default JSON.parse(${JSON.stringify(JSON.stringify(kept(demo)))});`;
    },
  };
}

interface BuiltDemo {
  file: string;
  text: string;
  hash: string;
  /** Where its answer is kept. */
  cache: string;
}

function demoFrom(path: string, root: string): BuiltDemo {
  const file = basename(path);
  const text = readFileSync(path, 'utf8');
  const hash = scenarioHash(readScenario(text, file));
  const name = `${hash.slice(0, 16)}-${PROGRAM.version}-${solverDigest(root)}.json`;
  return { file, text, hash, cache: join(root, 'node_modules/.cache/trumpetry', name) };
}

/** A digest of all sources that the answer depends on. */
function solverDigest(root: string): string {
  const digest = createHash('sha256');
  const sources = readdirSync(join(root, 'sim'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && !path.startsWith('cli'))
    .map((path) => join('sim', path));
  for (const path of [...sources.sort(), 'web/compute/question.ts']) {
    digest.update(path).update(readFileSync(join(root, path)));
  }
  return digest.digest('hex').slice(0, 16);
}

async function ensureAnswer(demo: BuiltDemo, withRunner: WithRunner): Promise<void> {
  if (kept(demo)) return;
  console.error(`computing the answer to ${demo.file}`);
  const question = questionOf(readScenario(demo.text, demo.file));
  const study = await withRunner((runner) => lengthStudy(question, runner));
  checkWhole(demo.file, study);
  mkdirSync(join(demo.cache, '..'), { recursive: true });
  writeFileSync(demo.cache, JSON.stringify(study));
}

/** JSON has no way to write numbers that are not finite; no demo may need one. */
function checkWhole(file: string, study: LengthStudy): void {
  const curves = [...study.tried, study.baseline, study.recommended];
  const failed = curves.flatMap(({ outcomes }) => outcomes).filter(isFailure);
  if (failed.length > 0) throw new Error(`${file}: ${failed[0]!.failure}`);
}

function kept(demo: BuiltDemo): LengthStudy | undefined {
  try {
    return JSON.parse(readFileSync(demo.cache, 'utf8')) as LengthStudy;
  } catch {
    return undefined;
  }
}

function listModule(demos: BuiltDemo[]): string {
  const items = demos.map((demo) => {
    const load = `() => import(${JSON.stringify(ANSWER + demo.file)}).then((m) => m.default)`;
    const answer = kept(demo)
      ? `{ hash: ${JSON.stringify(demo.hash)}, load: ${load} }`
      : 'undefined';
    const { file, text } = demo;
    return `{ file: ${JSON.stringify(file)}, text: ${JSON.stringify(text)}, answer: ${answer} }`;
  });
  return `export const shipped = [${items.join(',\n')}];`;
}
