/** A computer for studies from two functions that know points and traces. */
import type { Trace } from '../../sim/engine/trace.ts';
import type { PointFailure, PointRunner } from '../../sim/sweep/runner.ts';
import type { Computer, TraceJob } from '../../sim/sweep/tasks.ts';

export function computerOf(
  run: PointRunner['run'],
  trace: (job: TraceJob) => Promise<Trace | PointFailure>,
): Computer {
  const task = (name: string, input: never) => (name === 'trace' ? trace(input) : run(input));
  return { run, task: task as Computer['task'] };
}
