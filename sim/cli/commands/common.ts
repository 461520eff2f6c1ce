/** What the commands share. */
import {
  type Scenario,
  type ScenarioStamp,
  type SweepObserver,
  scenarioHash,
} from '../../index.ts';
import { askedWorkers } from '../asked.ts';
import { type Folder, openFolder } from '../files.ts';
import { progressOn } from '../progress.ts';
import { print, remark, type Terminal } from '../terminal.ts';
import { type Workers, withWorkers } from '../workers.ts';

/** Options that every computing command has. */
export interface CommonOptions {
  json?: boolean;
  out?: string;
  workers?: string;
}

export function stampOf(scenario: Scenario): ScenarioStamp {
  return { title: scenario.title, hash: scenarioHash(scenario) };
}

/** The folder for results: as asked; with JSON on stdout none unless asked. */
export function resultFolder({ out, json }: CommonOptions): Folder | undefined {
  if (out === undefined && json) return undefined;
  return openFolder(out ?? 'out');
}

/** Computes at most `points` points at a time, with progress; returns what `work` returns. */
export async function compute<T>(
  terminal: Terminal,
  options: CommonOptions,
  points: number,
  work: (workers: Workers, observer: SweepObserver) => Promise<T>,
): Promise<T> {
  const count = Math.min(askedWorkers(options.workers), points);
  const progress = progressOn(terminal.err);
  try {
    if (terminal.workers) return await work(terminal.workers, progress);
    return await withWorkers(count, (workers) => work(workers, progress));
  } finally {
    progress.stop();
  }
}

/** Writes each file and says so. */
export function writeResults(
  terminal: Terminal,
  folder: Folder | undefined,
  files: Record<string, () => string>,
): void {
  if (!folder) return;
  const written = Object.entries(files).map(([name, text]) => folder.write(name, text()));
  print(terminal, [`Written: ${written.join(', ')}`]);
}

/** Warnings of a scenario beside a JSON result; in text they are part of the result. */
export function remarkWarnings(terminal: Terminal, scenario: Scenario): void {
  if (!terminal.json) return;
  for (const { path, message } of scenario.warnings)
    remark(terminal, `warning: ${path}: ${message}`);
}
