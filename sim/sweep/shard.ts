/**
 * One job dealt out to several machines like cards. Where there are many engines, engines go to the
 * shards in turn, so that a shard makes no engine but its own; where they are few, the points do, in
 * the order in which they start, so that each shard gets its share of slow low speeds.
 */
import type { PointRunner } from './runner.ts';
import type { SweepObserver, TablePoint } from './sweep.ts';

/** The share `index` of `count`, counted from 1. */
export interface Shard {
  index: number;
  count: number;
}

/** Most shards of one job. */
const MOST_SHARDS = 10_000;

/** Reads `2/5`; undefined where the text is no shard. */
export function parseShard(text: string): Shard | undefined {
  const match = /^([1-9]\d*)\/([1-9]\d*)$/.exec(text.trim());
  if (!match) return undefined;
  const [index, count] = [Number(match[1]), Number(match[2])];
  return index <= count && count <= MOST_SHARDS ? { index, count } : undefined;
}

/** Engines a shard from which on engines are dealt: shares then differ by a tenth at most. */
const MANY = 10;

/** The points of one shard; `i` is the engine of a point. */
export function shardPoints<T extends { i: number }>(
  points: readonly T[],
  { index, count }: Shard,
): T[] {
  const engines = points.reduce((most, { i }) => Math.max(most, i + 1), 0);
  const many = engines >= MANY * count;
  return points.filter((point, at) => (many ? point.i : at) % count === index - 1);
}

/** Points that are in work at once: no more engines than that are held. */
const WINDOW = 2000;

/**
 * Does something with every point; `at` is its place.
 *
 * @param atOnce how many at once
 */
export async function inTurn(
  points: readonly TablePoint[],
  work: (point: TablePoint, at: number) => Promise<void>,
  observer: SweepObserver = {},
  atOnce = WINDOW,
): Promise<void> {
  observer.onTotal?.(points.length);
  const queue = points.entries();
  const next = async () => {
    for (const [at, point] of queue) await work(point, at);
  };
  await Promise.all(Array.from({ length: Math.min(atOnce, points.length) }, next));
}

/** Computes the given points; what becomes of them is the runner's matter (store.ts). */
export async function runPoints(
  points: readonly TablePoint[],
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<void> {
  await inTurn(
    points,
    async ({ engine, speed, i }) => {
      const outcome = await runner.run({ engine, speed });
      observer.onPoint?.(i, speed, outcome);
    },
    observer,
  );
}
