/**
 * What a worker thread does: one operating point, or the trace of one. It loads the solver only, not
 * the reader of scenarios, so that it starts at once.
 */
import { type Station, type Trace, tracePoint } from '../engine/trace.ts';
import { NonPhysicalStateError } from '../errors.ts';
import { type PointFailure, type PointJob, type PointOutcome, runJob } from '../sweep/runner.ts';

export interface TraceJob extends PointJob {
  stations: readonly Station[];
}

export function point(job: PointJob): PointOutcome {
  return runJob(job);
}

export function trace({ engine, speed, stations }: TraceJob): Trace | PointFailure {
  try {
    return tracePoint(engine, speed, stations);
  } catch (error) {
    if (error instanceof NonPhysicalStateError) return { speed, failure: error.message };
    throw error;
  }
}
