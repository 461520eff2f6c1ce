/** Which part of each axis the reader has chosen among variants, 0 to 1; gone when there are others. */
import { effect, signal } from '@preact/signals';
import { varied } from './varied.ts';

/** Part of an axis that is chosen, 0 to 1; by the axis's place. */
export type Spans = ReadonlyMap<number, readonly [number, number]>;

export const spans = signal<Spans>(new Map());

effect(() => {
  varied.state.value;
  spans.value = new Map();
});

/** A stroke shorter than this chooses nothing. */
const LEAST = 0.03;

let from = 0;

/** A stroke along an axis that has come to a place; one that ends where it began takes the choice back. */
export function drawSpan(axis: number, place: number, begins: boolean): void {
  const at = Math.min(Math.max(place, 0), 1);
  if (begins) from = at;
  if (Math.abs(from - at) < LEAST) chooseSpan(axis, 0, 1);
  else chooseSpan(axis, Math.min(from, at), Math.max(from, at));
}

/** The whole of an axis is no choice. */
export function chooseSpan(axis: number, low: number, high: number): void {
  const next = new Map(spans.peek());
  if (low <= 0 && high >= 1) next.delete(axis);
  else next.set(axis, [low, high]);
  spans.value = next;
}
