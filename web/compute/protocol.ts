/** What the page and its workers say to each other; plain data. */
import type { PointJob, PointOutcome, Trace } from '../../sim/index.ts';

export interface Question {
  kind: 'point' | 'trace';
  job: PointJob;
}

export type Answer =
  | { kind: 'point'; outcome: PointOutcome }
  | { kind: 'trace'; trace: Trace }
  | { kind: 'error'; message: string };
