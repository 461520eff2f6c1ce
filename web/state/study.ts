/**
 * The answer on the page: taken from the build where it holds one for this very question, otherwise
 * computed here, first as a preview from a few points, then in full. No point is computed twice.
 */
import { batch, signal } from '@preact/signals';
import {
  type LengthQuestion,
  type LengthStudy,
  lengthStudy,
  type Scenario,
} from '../../sim/index.ts';
import { firstLook } from '../compute/firstLook.ts';
import { OutcomeTable } from '../compute/outcomeTable.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { questionOf } from '../compute/question.ts';
import { shippedAnswer } from './demos.ts';
import { pool } from './pool.ts';

export type Stage = 'preview' | 'full' | 'done' | 'cancelled' | 'failed';

export interface Study {
  scenario: Scenario;
  hash: string;
  stage: Stage;
  /** Every point known. */
  table: OutcomeTable;
  /** Points of lengths that were tried in single precision: better than an estimate, no answer. */
  quick: OutcomeTable;
  /** The answer as a few points gave it. */
  preview?: LengthStudy;
  full?: LengthStudy;
  /** Where the full answer came from. */
  origin?: 'shipped' | 'computed';
  /** Points done and to do, of the present stage. */
  progress: { done: number; total: number };
  /** Why it failed. */
  message?: string;
}

export const study = signal<Study | undefined>(undefined);

/** Counts up whenever the tables of the study have new points. */
export const tick = signal(0);

let stopper = new AbortController();

/** Answers the question, dropping whatever was being computed before. */
export async function answer(scenario: Scenario, hash: string): Promise<void> {
  stopper.abort();
  stopper = new AbortController();
  const { signal: stop } = stopper;
  const same = study.value?.hash === hash ? study.value : undefined;
  study.value = {
    scenario,
    hash,
    stage: 'preview',
    table: same?.table ?? new OutcomeTable(),
    quick: same?.quick ?? new OutcomeTable(),
    progress: { done: 0, total: 0 },
    ...(same?.preview && { preview: same.preview }),
  };
  try {
    const shipped = await shippedAnswer(hash);
    if (stop.aborted) return;
    if (shipped) return settle(shipped, 'shipped');
    if (!same?.preview) {
      change({ preview: await compute(firstLook(scenario), URGENCY.preview, stop) });
    }
    change({ stage: 'full' });
    settle(await compute(questionOf(scenario), URGENCY.study, stop), 'computed');
  } catch (error) {
    if (error instanceof Cancelled || stop.aborted) return;
    change({ stage: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

/** Takes a scenario that asks the same of the trumpets but differs in what other questions are about. */
export function restate(scenario: Scenario): void {
  const now = study.peek();
  if (now && now.scenario !== scenario) study.value = { ...now, scenario };
}

/** Stops computing; what is known stays. */
export function cancel(): void {
  stopper.abort();
  change({ stage: 'cancelled' });
}

/** Goes on where it was cancelled or failed. */
export function resume(): void {
  const now = study.value;
  if (now) void answer(now.scenario, now.hash);
}

function compute(question: LengthQuestion, urgency: number, stop: AbortSignal) {
  const runner = study.value!.table.recording(pool.runner(urgency, stop), refresh);
  return lengthStudy(question, runner, progressOf(stop));
}

function progressOf(stop: AbortSignal) {
  const progress = { done: 0, total: 0 };
  const show = () => {
    if (!stop.aborted) change({ progress: { ...progress } });
  };
  return {
    onTotal: (points: number) => {
      progress.total += points;
      show();
    },
    onPoint: () => {
      progress.done++;
      show();
    },
  };
}

function settle(full: LengthStudy, origin: 'shipped' | 'computed'): void {
  const { table } = study.value!;
  for (const { length, outcomes } of [...full.tried, full.baseline, full.recommended]) {
    for (const outcome of outcomes) table.put(length, outcome);
  }
  batch(() => {
    change({ stage: 'done', full, origin });
    tick.value++;
  });
}

function change(part: Partial<Study>): void {
  if (study.value) study.value = { ...study.value, ...part };
}

/** Plots follow new points at most this often [ms]. */
const REFRESH = 400;
let waiting: ReturnType<typeof setTimeout> | undefined;

export function refresh(): void {
  if (waiting !== undefined) return;
  waiting = setTimeout(refreshNow, REFRESH);
}

/** For what the reader waits for: nothing more comes after it. */
export function refreshNow(): void {
  clearTimeout(waiting);
  waiting = undefined;
  tick.value++;
}
