/** The speed at which the reader asks why, and the traces of one cycle there. */
import { computed, effect, signal } from '@preact/signals';
import { inTarget, type Trace, withLength } from '../../sim/index.ts';
import { Cancelled } from '../compute/pool.ts';
import type { Role } from '../look.ts';
import { hand, handExact } from './hand.ts';
import { picture } from './picture.ts';
import { pool } from './pool.ts';
import { type Study, study } from './study.ts';

/** Speed chosen by the reader [rpm]; undefined until one is. */
const chosen = signal<number | undefined>(undefined);

/** Whether the reader has come near the traces; nothing is traced before. */
export const wanted = signal(false);

/** Speed of the traces [rpm]: the reader's, else where the recommended length gains most in the band. */
export const whySpeed = computed<number | undefined>(() => {
  const now = study.value;
  if (!now) return undefined;
  const { speeds, target } = now.scenario;
  if (chosen.value !== undefined && speeds.includes(chosen.value)) return chosen.value;
  const inside = speeds.filter((speed) => inTarget(target, speed));
  const source = now.full;
  if (!source) return inside[Math.floor(inside.length / 2)];
  const gain = (speed: number) =>
    (now.table.efficiency(source.recommended.length, speed) ?? 0) -
    (now.table.efficiency(source.baseline.length, speed) ?? 0);
  return inside.reduce((a, b) => (gain(b) > gain(a) ? b : a));
});

export function chooseSpeed(speed: number): void {
  const speeds = study.value?.scenario.speeds ?? [];
  if (speeds.length === 0) return;
  chosen.value = speeds.reduce((a, b) => (Math.abs(b - speed) < Math.abs(a - speed) ? b : a));
}

/** Traces by scenario, length and speed. */
const traces = signal<ReadonlyMap<string, Trace | 'running' | { failure: string }>>(new Map());

const keyOf = (hash: string, length: number, speed: number) => `${hash} ${length} ${speed}`;

export type TraceState = Trace | 'running' | { failure: string } | undefined;

/** The trace of one of the three lengths, as far as it has come. */
export function traceOf(role: Role): TraceState {
  const now = study.value;
  const speed = whySpeed.value;
  const length = picture.value?.curves.find((curve) => curve.role === role)?.length;
  if (!now || speed === undefined || length === undefined) return undefined;
  return traces.value.get(keyOf(now.hash, length, speed));
}

export function isTrace(state: TraceState): state is Trace {
  return typeof state === 'object' && 'crankAngle' in state;
}

let stopper = new AbortController();

/** Rest of the hand before its cycle is traced [ms]: a trace holds a worker that the next length would want. */
const REST = 250;

/** Lengths to trace, as text so that nothing restarts while they stay the same. */
const wishes = computed(() => {
  const full = study.value?.full;
  if (!wanted.value || !full) return '';
  const lengths = [full.baseline.length, full.recommended.length];
  if (hand.value !== undefined && handExact.value) lengths.push(hand.value);
  return [...new Set(lengths)].join(' ');
});

let rest: ReturnType<typeof setTimeout> | undefined;

effect(() => {
  const lengths = wishes.value.split(' ').filter((text) => text !== '');
  const speed = whySpeed.value;
  clearTimeout(rest);
  stopper.abort();
  stopper = new AbortController();
  const now = study.peek();
  if (!now || speed === undefined) return;
  const begin = () => traceAll(now, lengths.map(Number), speed, stopper.signal);
  if (hand.peek() === undefined) begin();
  else rest = setTimeout(begin, REST);
});

function traceAll(now: Study, lengths: readonly number[], speed: number, stop: AbortSignal): void {
  for (const length of lengths) {
    const key = keyOf(now.hash, length, speed);
    const known = traces.peek().get(key);
    if (known !== undefined && known !== 'running') continue;
    void trace(key, withLength(now.scenario.engine, length), speed, stop);
  }
}

type Engine = Parameters<typeof withLength>[0];

async function trace(key: string, engine: Engine, speed: number, stop: AbortSignal) {
  put(key, 'running');
  try {
    put(key, await pool.trace({ engine, speed }, stop));
  } catch (error) {
    if (error instanceof Cancelled) return;
    put(key, { failure: error instanceof Error ? error.message : String(error) });
  }
}

/** Most traces kept; each takes about half a megabyte. */
const KEPT = 24;

function put(key: string, state: Exclude<TraceState, undefined>): void {
  const next = new Map(traces.peek());
  next.delete(key);
  next.set(key, state);
  for (const old of next.keys()) {
    if (next.size <= KEPT) break;
    next.delete(old);
  }
  traces.value = next;
}
