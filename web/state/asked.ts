/**
 * Studies too long to run unasked: begun by the reader, with progress, stop and go on. What was
 * computed is kept by the name of its job, so going on and asking again compute only what is missing.
 */
import { effect, type Signal, signal } from '@preact/signals';
import {
  type FinishedPoints,
  type PointRunner,
  type Scenario,
  type SweepObserver,
  storedRunner,
} from '../../sim/index.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { pool } from './pool.ts';
import { reading, type Source, source } from './scenario.ts';
import { type Study, study } from './study.ts';

/** What a study is asked about. */
export interface Basis {
  scenario: Scenario;
  source: Source;
  /** The answer on the page. */
  study: Study;
}

export type AskedState<T> =
  | { stage: 'idle' | 'running' | 'stopped' }
  | { stage: 'failed'; message: string }
  | { stage: 'done'; result: T };

export interface AskedProgress {
  done: number;
  total: number;
  /** When it began [ms]. */
  began: number;
}

export interface AskedStudy<T> {
  readonly state: Signal<AskedState<T>>;
  readonly progress: Signal<AskedProgress>;
  start(): void;
  stop(): void;
  /** Forgets the result. */
  clear(): void;
}

type Compute<T> = (
  basis: Basis,
  runner: PointRunner,
  observer: SweepObserver,
  stop: AbortSignal,
) => Promise<T>;

const finished: FinishedPoints = new Map();

/** Most points kept, about a kilobyte each. */
const KEPT = 20_000;

export function askedStudy<T>(compute: Compute<T>): AskedStudy<T> {
  const state = signal<AskedState<T>>({ stage: 'idle' });
  const progress = signal<AskedProgress>({ done: 0, total: 0, began: 0 });
  let stopper = new AbortController();
  const clear = () => {
    stopper.abort();
    state.value = { stage: 'idle' };
  };
  // A changed text is another question.
  effect(() => {
    source.value;
    clear();
  });
  const start = async () => {
    const now = study.peek();
    if (!now || !mayAsk()) return;
    stopper.abort();
    stopper = new AbortController();
    const { signal: stop } = stopper;
    state.value = { stage: 'running' };
    progress.value = { done: 0, total: 0, began: performance.now() };
    const basis = { scenario: now.scenario, source: source.peek(), study: now };
    if (finished.size > KEPT) finished.clear();
    const runner = storedRunner(pool.runner(URGENCY.asked, stop), finished, () => {});
    const put = (next: AskedState<T>) => {
      if (!stop.aborted) state.value = next;
    };
    try {
      const result = await compute(basis, runner, observing(progress, stop), stop);
      put({ stage: 'done', result });
    } catch (error) {
      if (error instanceof Cancelled) return;
      put({ stage: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  };
  return {
    state,
    progress,
    start: () => void start(),
    stop: () => {
      stopper.abort();
      state.value = { stage: 'stopped' };
    },
    clear,
  };
}

/** Whether the text on show is the question that the page has answered. */
export function mayAsk(): boolean {
  const now = reading.value;
  return now.ok && now.hash === study.value?.hash;
}

/** The result, if there is one. */
export function resultOf<T>({ state }: AskedStudy<T>): T | undefined {
  return state.value.stage === 'done' ? state.value.result : undefined;
}

/** Progress is shown at most this often [ms]; points that are known come in by hundreds at once. */
const REFRESH = 150;

function observing(progress: Signal<AskedProgress>, stop: AbortSignal): SweepObserver {
  const { began } = progress.peek();
  const count = { done: 0, total: 0 };
  let waiting = false;
  const show = () => {
    if (waiting) return;
    waiting = true;
    setTimeout(() => {
      waiting = false;
      if (!stop.aborted) progress.value = { ...count, began };
    }, REFRESH);
  };
  return {
    onTotal: (points) => {
      // A fit finds out as it goes how many points it needs.
      count.total = Math.max(points, count.total);
      show();
    },
    onPoint: () => {
      count.done++;
      count.total = Math.max(count.done, count.total);
      show();
    },
  };
}
