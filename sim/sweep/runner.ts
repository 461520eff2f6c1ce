/**
 * How points get computed. A runner hides where: in this thread, in worker threads, in a browser's
 * workers. Points do not know of each other, so results never depend on the number of workers.
 */

import { type PointResult, runPoint } from '../engine/point.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';

/** One engine at one speed; plain data. */
export interface PointJob {
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

/** What every worker does with a job. */
export function runJob(job: PointJob): PointOutcome {
  try {
    return runPoint(job.engine, job.speed);
  } catch (error) {
    if (error instanceof NonPhysicalStateError) {
      return { speed: job.speed, failure: error.message };
    }
    throw error;
  }
}

/** Computes in the calling thread, one point a turn of the event loop. */
export const runHere: PointRunner = {
  run: async (job) => {
    await Promise.resolve();
    return runJob(job);
  },
};
