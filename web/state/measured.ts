/** A run off the dyno, held against the prediction when asked. */
import { effect, signal } from '@preact/signals';
import {
  type MeasuredRun,
  type MeasuredStudy,
  measuredStudy,
  readMeasuredRun,
  ScenarioError,
  type ScenarioIssue,
  type UnknownName,
} from '../../sim/index.ts';
import { askedStudy } from './asked.ts';
import { source } from './scenario.ts';

export interface RunFile {
  file: string;
  run?: MeasuredRun;
  issues: readonly ScenarioIssue[];
}

export const runFile = signal<RunFile | undefined>(undefined);

/** Trumpet length of the run [m]; the one fitted now where undefined. */
export const runLength = signal<number | undefined>(undefined);

/** Most unknowns that one run can be asked for. */
export const MOST_UNKNOWNS = 3;

export const fitted = signal<readonly UnknownName[]>([]);

export const measured = askedStudy<MeasuredStudy>(async ({ scenario, source }, runner, seen) => {
  const { run } = runFile.peek() ?? {};
  if (!run) throw new Error('no run is open');
  const length = runLength.peek() ?? scenario.engine.intake.trumpet.length;
  const question = { text: source.text, name: source.file, run, length, fit: fitted.peek() };
  const study = await measuredStudy(question, runner, seen);
  if ('problem' in study) throw new Error(study.problem);
  return study;
});

/** Takes the text of a run; what is wrong with it is shown in place of a result. */
export function openRun(file: string, text: string): void {
  measured.clear();
  try {
    runFile.value = { file, run: readMeasuredRun(text, file), issues: [] };
    measured.start();
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    runFile.value = { file, issues: error.issues };
  }
}

/** Fits an unknown or leaves it as the scenario has it. */
export function fitUnknown(name: UnknownName, on: boolean): void {
  const others = fitted.value.filter((one) => one !== name);
  fitted.value = on ? [...others, name] : others;
}

// Another engine has other trumpets.
effect(() => {
  source.value.file;
  runLength.value = undefined;
});
