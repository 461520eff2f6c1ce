/** A computer for studies from functions that know points, traces, cycles of joined runners and plates that move; acoustics it does itself. */
import type { JoinedCycle } from '../../sim/engine/joinedCycle.ts';
import type { MovedPlates, PlateMove } from '../../sim/engine/plateMove.ts';
import type { Trace } from '../../sim/engine/trace.ts';
import type { PointFailure, PointJob, PointRunner } from '../../sim/sweep/runner.ts';
import { type Computer, TASKS, type TraceJob } from '../../sim/sweep/tasks.ts';

export function computerOf(
  run: PointRunner['run'],
  trace: (job: TraceJob) => Promise<Trace | PointFailure>,
  joined: (job: PointJob) => Promise<JoinedCycle | PointFailure> = async () => {
    throw new Error('no joined runners are asked for');
  },
  plates: (job: PlateMove) => Promise<MovedPlates | PointFailure> = async () => {
    throw new Error('no plates are moved');
  },
): Computer {
  const task = async (name: string, input: never) => {
    if (name === 'bars' || name === 'readings') return TASKS[name](input);
    if (name === 'joined') return joined(input);
    if (name === 'plates') return plates(input);
    return name === 'trace' ? trace(input) : run(input);
  };
  return { run, task: task as Computer['task'] };
}
