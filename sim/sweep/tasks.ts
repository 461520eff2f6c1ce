/**
 * What a worker can be asked for, by name. A longer computation of a study is a line here; it takes
 * and gives plain data.
 */
import { type ReadingJob, readingOf } from '../acoustics/barReading.ts';
import { type Trial, triedBar } from '../acoustics/barTrial.ts';
import type { PressureBar } from '../acoustics/pressureBar.ts';
import { type JoinedCycle, joinedCycle } from '../engine/joinedCycle.ts';
import { type MovedPlates, movePlates, type PlateMove } from '../engine/plateMove.ts';
import { type Station, type Trace, tracePoint } from '../engine/trace.ts';
import { NonPhysicalStateError } from '../errors.ts';
import { type PointFailure, type PointJob, type PointRunner, runSpeedsJob } from './runner.ts';

export interface TraceJob extends PointJob {
  stations: readonly Station[];
}

/** Bars to be tried at the same points. */
export interface BarsJob extends Trial {
  bars: readonly PressureBar[];
}

export const TASKS = {
  speeds: runSpeedsJob,
  trace: runTrace,
  bars: ({ bars, ...trial }: BarsJob) => bars.map((bar) => triedBar(bar, trial)),
  joined: runJoined,
  plates: runPlates,
  readings: (jobs: readonly ReadingJob[]) => jobs.map(readingOf),
};

export type TaskName = keyof typeof TASKS;
export type TaskInput<Name extends TaskName> = Parameters<(typeof TASKS)[Name]>[0];
export type TaskOutput<Name extends TaskName> = ReturnType<(typeof TASKS)[Name]>;

/** Whoever computes for a study: here, in worker threads, in a browser's workers. */
export interface Computer extends PointRunner {
  /** How many points are asked for at once at most, where that is known: one, where none is computed. */
  atOnce?: number;
  task<Name extends TaskName>(name: Name, input: TaskInput<Name>): Promise<TaskOutput<Name>>;
}

function runTrace({ engine, speed, stations }: TraceJob): Trace | PointFailure {
  return orFailure(speed, () => tracePoint(engine, speed, stations));
}

function runJoined({ engine, speed }: PointJob): JoinedCycle | PointFailure {
  return orFailure(speed, () => joinedCycle(engine, speed));
}

function runPlates(move: PlateMove): MovedPlates | PointFailure {
  return orFailure(move.speed, () => movePlates(move));
}

function orFailure<T>(speed: number, run: () => T): T | PointFailure {
  try {
    return run();
  } catch (error) {
    if (error instanceof NonPhysicalStateError) return { speed, failure: error.message };
    throw error;
  }
}
