/**
 * Points asked for one by one, computed together: the speeds of one engine share its gas, tables and
 * meshes and go through the lanes of the step side by side (engine/lanes.ts). What a point gives does
 * not depend on what it is computed with.
 */
import type { PointWishes } from '../engine/point.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointJob, PointOutcome, PointRunner } from './runner.ts';

/** One engine at several speeds; plain data. */
export interface SpeedsJob extends PointWishes {
  engine: EngineSpecification;
  /** [rpm]. */
  speeds: readonly number[];
}

interface Waiting {
  job: PointJob;
  resolve(outcome: PointOutcome): void;
  reject(reason: unknown): void;
}

/** Shares per worker into which the speeds of a single engine are dealt, so that none waits long. */
const SHARES_PER_WORKER = 2;

/**
 * A runner that gathers what is asked for before anything else has its turn.
 *
 * @param workers how many take jobs side by side
 * @param run computes the speeds of one engine, in their order
 * @param sharesPerWorker fewer are done sooner in all, more leave sooner what is not wanted any more
 */
export function batched(
  workers: number,
  run: (job: SpeedsJob) => Promise<PointOutcome[]>,
  sharesPerWorker = SHARES_PER_WORKER,
): PointRunner {
  let waiting: Waiting[] = [];
  const flush = () => {
    const asked = waiting;
    waiting = [];
    for (const share of shares(asked, workers, sharesPerWorker)) compute(share, run);
  };
  return {
    run: (job) =>
      new Promise((resolve, reject) => {
        if (waiting.length === 0) queueMicrotask(flush);
        waiting.push({ job, resolve, reject });
      }),
  };
}

async function compute(
  share: readonly Waiting[],
  run: (job: SpeedsJob) => Promise<PointOutcome[]>,
): Promise<void> {
  try {
    const { speed: _, ...job } = share[0]!.job;
    const speeds = share.map(({ job: { speed } }) => speed);
    const outcomes = await run({ ...job, speeds });
    share.forEach(({ resolve }, i) => {
      resolve(outcomes[i]!);
    });
  } catch (error) {
    for (const { reject } of share) reject(error);
  }
}

/**
 * By engine, all with the same wishes; where there are few engines, and of the last ones where there are many, speeds dealt out like
 * cards, slow low ones to all: so no worker has long to wait for another at the end.
 */
function shares(asked: readonly Waiting[], workers: number, perWorker: number): Waiting[][] {
  const engines = new Map<EngineSpecification, Waiting[]>();
  for (const one of asked) {
    const group = engines.get(one.job.engine);
    if (group) group.push(one);
    else engines.set(one.job.engine, [one]);
  }
  const few = Math.max(1, Math.ceil((workers * perWorker) / Math.max(engines.size, 1)));
  return [...engines.values()].flatMap((group, e) => {
    const parts = e < engines.size - workers ? few : Math.max(few, workers);
    const sorted = group.sort((a, b) => a.job.speed - b.job.speed);
    const count = Math.min(parts, Math.ceil(sorted.length / 2));
    return Array.from({ length: count }, (_, k) => sorted.filter((_one, i) => i % count === k));
  });
}
