/**
 * What a worker thread does: speeds of one engine, or the trace of one point. It loads the solver only, not
 * the reader of scenarios, so that it starts at once.
 */
import { type Station, type Trace, tracePoint } from '../engine/trace.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { SpeedsJob } from '../sweep/batch.ts';
import {
  type PointFailure,
  type PointJob,
  type PointOutcome,
  runSpeedsJob,
} from '../sweep/runner.ts';

export interface TraceJob extends PointJob {
  stations: readonly Station[];
}

export function speeds(job: SpeedsJob): PointOutcome[] {
  return runSpeedsJob(job);
}

export function trace({ engine, speed, stations }: TraceJob): Trace | PointFailure {
  try {
    return tracePoint(engine, speed, stations);
  } catch (error) {
    if (error instanceof NonPhysicalStateError) return { speed, failure: error.message };
    throw error;
  }
}
