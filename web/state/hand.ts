/** The length under the reader's hand: shown at once from what is known, then computed in full. */
import { computed, signal } from '@preact/signals';
import { runLengths } from '../../sim/index.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { pool } from './pool.ts';
import { refresh, study } from './study.ts';

/** Length chosen [m]; undefined until the reader moves it. */
export const hand = signal<number | undefined>(undefined);

/** How the full computation at that length stands. */
export const handRun = signal<{ busy: boolean; done: number; total: number }>({
  busy: false,
  done: 0,
  total: 0,
});

/** Lengths the reader may choose [m]: those between which something is known. */
export const handRange = computed(() => {
  const scenario = study.value?.scenario;
  if (!scenario) return { least: 0.05, most: 0.3 };
  const own = scenario.engine.intake.trumpet.length;
  const { lengths } = scenario.sweep;
  return {
    least: Math.min(own, lengths[0]!),
    most: Math.max(own, lengths[lengths.length - 1]!),
  };
});

/** Rest before the full computation starts [ms]. */
const REST = 250;

let stopper = new AbortController();
let rest: ReturnType<typeof setTimeout> | undefined;

/** Takes a length [m], cut to the millimetre. */
export function moveHand(length: number): void {
  const { least, most } = handRange.value;
  hand.value = Math.min(Math.max(Math.round(length * 1e3) / 1e3, least), most);
  stopHand();
  rest = setTimeout(() => void computeHand(), REST);
}

export function stopHand(): void {
  clearTimeout(rest);
  stopper.abort();
  handRun.value = { busy: false, done: 0, total: 0 };
}

export function liftHand(): void {
  stopHand();
  hand.value = undefined;
}

async function computeHand(): Promise<void> {
  const now = study.value;
  const length = hand.value;
  if (!now || length === undefined) return;
  stopper = new AbortController();
  const { signal: stop } = stopper;
  const { speeds, engine } = now.scenario;
  const runner = now.table.recording(pool.runner(URGENCY.hand, stop), refresh);
  let done = 0;
  handRun.value = { busy: true, done, total: speeds.length };
  try {
    await runLengths(engine, [length], speeds, runner, {
      onPoint: () => {
        done++;
        if (!stop.aborted) handRun.value = { busy: true, done, total: speeds.length };
      },
    });
    handRun.value = { busy: false, done, total: speeds.length };
    refresh();
  } catch (error) {
    if (!(error instanceof Cancelled)) throw error;
  }
}
