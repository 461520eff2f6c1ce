/**
 * How points get computed. A runner hides where: in this thread, in worker threads, in a browser's
 * workers. Points do not know of each other, so results never depend on the number of workers.
 */

import { inQuickLanes } from '../engine/lanes.ts';
import { type PointResult, type PointWishes, runSpeeds } from '../engine/point.ts';
import type { EngineSpecification } from '../specification.ts';
import { batched, type SpeedsJob } from './batch.ts';

/** One engine at one speed; plain data. Its wishes are the same wherever one engine is asked for. */
export interface PointJob extends PointWishes {
  engine: EngineSpecification;
  /** Speed [rpm]. */
  speed: number;
}

/** A point whose computation failed, with duct, cell, time and crank angle in the message. */
export interface PointFailure {
  speed: number;
  failure: string;
}

export type PointOutcome = PointResult | PointFailure;

export interface PointRunner {
  /** Computes a point; rejects only when cancelled or when the machinery itself breaks. */
  run(job: PointJob): Promise<PointOutcome>;
}

export function isFailure(outcome: PointOutcome): outcome is PointFailure {
  return 'failure' in outcome;
}

/** What every worker does: the speeds of one engine, in their order. */
export function runSpeedsJob(job: SpeedsJob): PointOutcome[] {
  return outcomesOf(job, runSpeeds(job.engine, job.speeds, undefined, job));
}

/** The same in single precision, for previews: volumetric efficiency is within 1e-4 of the other. */
export function runSpeedsQuickly(job: SpeedsJob): PointOutcome[] {
  return outcomesOf(job, runSpeeds(job.engine, job.speeds, inQuickLanes));
}

function outcomesOf({ speeds }: SpeedsJob, points: ReturnType<typeof runSpeeds>): PointOutcome[] {
  return points.map((point, i) =>
    point instanceof Error ? { speed: speeds[i]!, failure: point.message } : point,
  );
}

/** One point in the calling thread. */
export function runJob({ speed, ...job }: PointJob): PointOutcome {
  return runSpeedsJob({ ...job, speeds: [speed] })[0]!;
}

/** Computes in the calling thread. */
export const runHere: PointRunner = batched(1, async (job) => runSpeedsJob(job));
