/** The program built into a folder of its own, so that it starts at once, many times. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { demoText } from '../toy.ts';

/** Inside node_modules, where the bundle finds the package of the thread pool. */
const CACHE = 'node_modules/.cache';

let program: string | undefined;

/** Builds the program as it is shipped, once for all tests of this process; gives the file to run. */
export function bundledProgram(): string {
  if (program) return program;
  mkdirSync(CACHE, { recursive: true });
  const folder = resolve(mkdtempSync(join(CACHE, 'program-')));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  execFileSync(process.execPath, ['sim/cli/build.mjs', folder]);
  program = join(folder, 'trumpetry.mjs');
  return program;
}

/** Starts the program; its output is left alone. */
export function startProgram(program: string, words: readonly string[]): ChildProcess {
  return spawn(process.execPath, [program, ...words], { stdio: 'ignore' });
}

/** How it ended. */
export function endOf(
  child: ChildProcess,
): Promise<{ code: number | null; signal: string | null }> {
  return new Promise((resolve) => {
    child.once('close', (code, signal) => resolve({ code, signal }));
  });
}

export const LENGTHS = 9;
export const SPEEDS = 4;

/** A quarter-litre single on the coarsest mesh: a score of points of a few hundredths of a second. */
export function quickScenario(): string {
  const file = join(mkdtempSync(join(tmpdir(), 'trumpetry-sweep-')), 'single.yaml');
  const text = demoText('sprint-single')
    .replace(
      'from: 6000 rpm\n  to: 13000 rpm\n  step: 500 rpm',
      'from: 8500 rpm\n  to: 13000 rpm\n  step: 1500 rpm',
    )
    .replace(
      'from: 1.5 in\n    to: 8 in\n    step: 0.5 in',
      'from: 2 in\n    to: 6 in\n    step: 0.5 in',
    )
    .replace(
      'intakeCell: 12 mm\n  exhaustCell: 24 mm\n',
      'intakeCell: 25 mm\n  exhaustCell: 60 mm\n  settle: 0.02\n',
    );
  writeFileSync(file, text);
  return file;
}
