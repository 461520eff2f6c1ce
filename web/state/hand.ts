/** The length under the reader's hand: shown at once from what is known, then computed in full. */
import { batch, computed, signal } from '@preact/signals';
import { type LengthUnit, METRES, runLengths } from '../../sim/index.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { pool } from './pool.ts';
import { unit } from './scenario.ts';
import { refresh, refreshNow, type Study, study } from './study.ts';

/** Length chosen [m]; undefined until the reader moves it. */
export const hand = signal<number | undefined>(undefined);

const NOT_BEGUN = { busy: false, done: 0, total: 0 };

/** How the full computation at that length stands; a total of 0: it has not begun. */
export const handRun = signal(NOT_BEGUN);

/** Whether the curve at that length is exact. */
export const handExact = computed(() => !handRun.value.busy && handRun.value.total > 0);

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

/** What one step of the hand moves [m]: a millimetre, or a twentieth of an inch. */
export const STEP: Record<LengthUnit, number> = { mm: METRES.mm, in: METRES.in / 20 };

/** Rest before computing starts while moves follow one another, after the frame that shows the last [ms]. */
const REST = 40;

/** Moves that come sooner than this after another belong together [ms]. */
const TOGETHER = 200;

let moved = Number.NEGATIVE_INFINITY;

let stopper = new AbortController();
let rest: ReturnType<typeof setTimeout> | undefined;
let frame: number | undefined;

/**
 * Takes a length [m], to the nearest step; `held` while more moves are to come. What is neither held nor follows
 * another is computed at once: workers are asked first, so that they begin before the page draws the move.
 */
export function moveHand(length: number, held = false): void {
  const { least, most } = handRange.value;
  const step = STEP[unit.peek()];
  const round = Math.round(Math.round(length / step) * step * 1e6) / 1e6;
  const next = Math.min(Math.max(round, least), most);
  if (next === hand.peek()) return;
  const now = performance.now();
  const following = held || now - moved < TOGETHER;
  moved = now;
  batch(() => {
    stopHand();
    if (following) afterFrame(() => computeHand(next, held));
    else void computeHand(next, false);
    hand.value = next;
  });
}

/** A slow frame is no rest: the next move of a drag comes with the next frame, before what waits for it. */
function afterFrame(compute: () => Promise<void>): void {
  frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(() => {
      rest = setTimeout(() => void compute(), REST);
    });
  });
}

/** What was held is let go: its exact curve at once. */
export function letGo(): void {
  const length = hand.peek();
  if (length === undefined || handRun.peek().total > 0) return;
  batch(() => {
    stopHand();
    void computeHand(length, false);
  });
}

function stopHand(): void {
  clearTimeout(rest);
  if (frame !== undefined) cancelAnimationFrame(frame);
  stopper.abort();
  handRun.value = NOT_BEGUN;
}

export function liftHand(): void {
  stopHand();
  hand.value = undefined;
}

/** Shares a worker of a curve under the hand: one, so that it is there soonest. */
const WHOLE = 1;

/**
 * The exact curve of the length under the hand. While it is held a quick one in single precision comes before
 * it, in two thirds of the time.
 */
async function computeHand(length: number, held: boolean): Promise<void> {
  const now = study.peek();
  if (!now) return;
  stopper = new AbortController();
  const { signal: stop } = stopper;
  try {
    if (held) await computeQuickly(now, length, stop);
    await computeExactly(now, length, stop);
  } catch (error) {
    if (!(error instanceof Cancelled)) throw error;
  }
}

async function computeQuickly({ scenario, quick }: Study, length: number, stop: AbortSignal) {
  const how = { quick: true, shares: WHOLE };
  const runner = quick.recording(pool.runner(URGENCY.hand, stop, how), () => {});
  await runLengths(scenario.engine, [length], scenario.speeds, runner);
  if (!stop.aborted) refreshNow();
}

async function computeExactly({ scenario, table }: Study, length: number, stop: AbortSignal) {
  const { engine, speeds } = scenario;
  const total = speeds.length;
  const runner = table.recording(pool.runner(URGENCY.hand, stop, { shares: WHOLE }), refresh);
  let done = 0;
  const asked = runLengths(engine, [length], speeds, runner, {
    onPoint: () => {
      done++;
      if (!stop.aborted) handRun.value = { busy: true, done, total };
    },
  });
  handRun.value = { busy: true, done, total };
  await asked;
  if (stop.aborted) return;
  batch(() => {
    handRun.value = { busy: false, done, total };
    refreshNow();
  });
}
