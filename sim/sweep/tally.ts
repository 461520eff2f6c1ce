/** How far a job has come, told from the points that are finished. */
import { isFailure, type PointOutcome } from './runner.ts';
import { type FinishedPoints, jobKey } from './store.ts';
import type { TablePoint } from './sweep.ts';

export interface Tally {
  points: number;
  /** Points that are not there yet. */
  missing: TablePoint[];
  /** Why each of these failed. */
  failed: { point: TablePoint; failure: string }[];
  /** Points that did not settle. */
  unsettled: TablePoint[];
}

export function tallyOf(points: readonly TablePoint[], finished: FinishedPoints): Tally {
  const tally: Tally = { points: points.length, missing: [], failed: [], unsettled: [] };
  for (const point of points) count(tally, point, finished.get(jobKey(point)));
  return tally;
}

function count(tally: Tally, point: TablePoint, outcome: PointOutcome | undefined): void {
  if (outcome === undefined) tally.missing.push(point);
  else if (isFailure(outcome)) tally.failed.push({ point, failure: outcome.failure });
  else if (!outcome.settled) tally.unsettled.push(point);
}
