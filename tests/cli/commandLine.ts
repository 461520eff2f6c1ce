/** Runs the command line: in this process for its answers, as a program for what only a program has. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { text as textOf } from 'node:stream/consumers';
import { type AddCommand, runCommandLine } from '../../sim/cli/program.ts';
import { batched } from '../../sim/sweep/batch.ts';
import { type Computer, TASKS } from '../../sim/sweep/tasks.ts';
import { bundledProgram } from '../sweep/program.ts';

export interface Answer {
  code: number | null;
  stdout: string;
  stderr: string;
}

/** A folder of this test run alone. */
export function freshFolder(): string {
  return mkdtempSync(join(tmpdir(), 'trumpetry-test-'));
}

/** A file of that content in a folder of its own; gives its path. */
export function fileOf(content: string | Uint8Array, name = 'engine.yaml'): string {
  const path = join(freshFolder(), name);
  writeFileSync(path, content);
  return path;
}

/** Hill-climb four on a coarse mesh with three lengths and three speeds. */
export function coarseText(): string {
  return readFileSync('scenarios/hill-climb.yaml', 'utf8')
    .replace('from: 3000 rpm', 'from: 6000 rpm')
    .replace('to: 8600 rpm', 'to: 8000 rpm')
    .replace('step: 400 rpm', 'step: 1000 rpm')
    .replace('to: 300 mm', 'to: 260 mm')
    .replace('step: 20 mm', 'step: 100 mm')
    .replace('from: 5400 rpm', 'from: 6000 rpm')
    .replace('to: 7400 rpm', 'to: 7000 rpm')
    .concat('\nnumerics:\n  intakeCell: 20 mm\n  exhaustCell: 50 mm\n  settle: 0.005\n');
}

/** Points computed in this process, which no thread has to be started for. */
const here: Computer = {
  ...batched(1, async (job) => TASKS.speeds(job)),
  task: async (name, input) => (TASKS[name] as (given: typeof input) => never)(input),
};

/** The answer of a command, run in this process. */
export function answer(...words: string[]): Promise<Answer> {
  return answerFrom(here, ...words);
}

/** The same with points from `workers`; undefined: from worker threads, as the program has them. */
export function answerFrom(workers: Computer | undefined, ...words: string[]): Promise<Answer> {
  return answerOn({ workers }, ...words);
}

interface AnswerOptions {
  workers?: Computer | undefined;
  columns?: number | undefined;
  added?: readonly AddCommand[];
}

/** The same on a terminal of so many columns, or with commands added. */
export async function answerOn(
  { workers, columns, added = [] }: AnswerOptions,
  ...words: string[]
): Promise<Answer> {
  const [out, err] = [new PassThrough(), new PassThrough()];
  if (columns !== undefined) Object.assign(out, { isTTY: true, columns });
  const [stdout, stderr] = [textOf(out), textOf(err)];
  const code = await runCommandLine(words, { out, err, ...(workers && { workers }) }, added);
  out.end();
  err.end();
  return { code, stdout: await stdout, stderr: await stderr };
}

/** The command as a program of its own, as it is shipped. */
export function start(...words: string[]): ChildProcess {
  return spawn(process.execPath, [bundledProgram(), ...words]);
}

/** As `npm run trumpetry` has it. */
const SOURCE = ['--import', 'tsx', '--import', './tests/packages.mjs'];

/** The same from its sources. */
export function startSource(...words: string[]): ChildProcess {
  return spawn(process.execPath, [...SOURCE, 'sim/cli/main.ts', ...words]);
}

/** The answer of a program, once it has ended. */
export async function ended(program: ChildProcess): Promise<Answer> {
  const [stdout, stderr, code] = await Promise.all([
    textOf(program.stdout!),
    textOf(program.stderr!),
    new Promise<number | null>((resolve) => program.once('close', resolve)),
  ]);
  return { code, stdout, stderr };
}
