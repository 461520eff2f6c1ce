/** Readings off the reader's own engine, opened as a file and worked out at once. */
import { effect, type Signal, signal } from '@preact/signals';
import {
  askedScrews,
  InputError,
  mixtureTrims,
  readTrims,
  ScenarioError,
  type ScenarioIssue,
  screwsStudy,
} from '../../sim/index.ts';
import { picture } from './picture.ts';
import { source } from './scenario.ts';

/** A file that was opened: what came of it, or what is wrong. */
export interface OpenedFile<T> {
  file: string;
  result?: T;
  issues: readonly ScenarioIssue[];
  /** Why the engine of the scenario cannot be asked this. */
  problem?: string;
}

export interface Readings<T> {
  state: Signal<OpenedFile<T> | undefined>;
  open(file: string, text: string): void;
}

type Engine = Parameters<typeof readTrims>[0];

function readingsOf<T>(work: (engine: Engine, text: string, file: string) => T): Readings<T> {
  const state = signal<OpenedFile<T> | undefined>(undefined);
  // Readings belong to the engine that they were opened beside.
  effect(() => {
    source.value;
    state.value = undefined;
  });
  return {
    state,
    open(file, text) {
      const now = picture.peek();
      if (!now) return;
      try {
        state.value = { file, result: work(now.scenario.engine, text, file), issues: [] };
      } catch (error) {
        state.value = { file, ...refusal(error) };
      }
    },
  };
}

function refusal(error: unknown): Pick<OpenedFile<never>, 'issues' | 'problem'> {
  if (error instanceof ScenarioError) return { issues: error.issues };
  if (error instanceof InputError) return { issues: [], problem: error.message };
  throw error;
}

export const bodies = readingsOf((engine, text, file) =>
  screwsStudy(askedScrews(engine, text, file)),
);

export const lambdas = readingsOf((engine, text, file) =>
  mixtureTrims(readTrims(engine, text, file)),
);
