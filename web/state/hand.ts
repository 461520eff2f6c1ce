/** The length under the reader's hand: shown at once from what is known, then computed in full. */
import { computed, signal } from '@preact/signals';
import { type LengthUnit, METRES, runLengths } from '../../sim/index.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { pool } from './pool.ts';
import { unit } from './scenario.ts';
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

/** What one step of the hand moves [m]: a millimetre, or a twentieth of an inch. */
export const STEP: Record<LengthUnit, number> = { mm: METRES.mm, in: METRES.in / 20 };

/** Rest before the exact computation starts [ms]; a keystroke or a pause of the pointer is one. */
const REST = 40;

let stopper = new AbortController();
let rest: ReturnType<typeof setTimeout> | undefined;

/** Takes a length [m], to the nearest step. */
export function moveHand(length: number): void {
  const { least, most } = handRange.value;
  const step = STEP[unit.peek()];
  const round = Math.round(Math.round(length / step) * step * 1e6) / 1e6;
  const next = Math.min(Math.max(round, least), most);
  if (next === hand.peek()) return;
  hand.value = next;
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
