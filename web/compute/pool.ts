/**
 * Workers on all cores, kept alive, fed from one queue in the order of urgency. A worker that dies is
 * replaced when there is work for it, so that one that cannot even be loaded is not asked for without end. Its point
 * is asked once more; a point that kills two workers is reported as failed.
 */
import {
  batched,
  type Computer,
  type DoubtSample,
  type PointJob,
  type PointRunner,
  type SpeedsJob,
  type Trace,
  type Uncertainty,
} from '../../sim/index.ts';
import type { Answer, Question } from './protocol.ts';

/** Lower goes first. */
export const URGENCY = { preview: 0, hand: 1, trace: 1, study: 2, asked: 3 } as const;

/** Thrown where a point was no longer wanted. */
export class Cancelled extends Error {
  override readonly name = 'Cancelled';
}

/** How points are computed. */
export interface How {
  /** In single precision, for a preview. */
  quick?: boolean;
  /** Into how many shares a worker's part of one engine is dealt. */
  shares?: number;
}

/** What the pool needs of a worker. */
export type PoolWorker = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

interface Task {
  question: Question;
  urgency: number;
  attempts: number;
  resolve(answer: Answer): void;
  reject(reason: Error): void;
}

interface Seat {
  /** Absent from the death of one until there is work again. */
  worker: PoolWorker | undefined;
  task: Task | undefined;
}

const MOST_ATTEMPTS = 2;

export class WorkerPool {
  private readonly makeWorker: () => PoolWorker;
  private readonly onCrash: (message: string) => void;
  private readonly seats: Seat[] = [];
  private readonly queue: Task[] = [];

  constructor(size: number, makeWorker: () => PoolWorker, onCrash: (message: string) => void) {
    this.makeWorker = makeWorker;
    this.onCrash = onCrash;
    for (let i = 0; i < size; i++) {
      const seat: Seat = { worker: undefined, task: undefined };
      seat.worker = this.worker(seat);
      this.seats.push(seat);
    }
  }

  /** A runner whose points wait behind more urgent ones and vanish when the signal aborts. */
  runner(urgency: number, signal?: AbortSignal, how: How = {}): PointRunner {
    const { quick = false, shares } = how;
    const run = async (job: SpeedsJob) => {
      const answer = await this.ask({ kind: 'speeds', job, quick }, urgency, signal);
      if (answer.kind === 'speeds') return answer.outcomes;
      return job.speeds.map((speed) => ({ speed, failure: messageOf(answer) }));
    };
    return batched(this.seats.length, run, shares);
  }

  /** Traces one point at the usual stations; throws where the computation fails. */
  async trace(
    job: PointJob,
    signal?: AbortSignal,
    urgency: number = URGENCY.trace,
  ): Promise<Trace> {
    const answer = await this.ask({ kind: 'trace', job }, urgency, signal);
    if (answer.kind === 'trace') return answer.trace;
    throw new Error(messageOf(answer));
  }

  /** Whatever a study asks for by name. */
  tasks(urgency: number, signal: AbortSignal): Computer['task'] {
    return async (name, input) => {
      const answer = await this.ask({ kind: 'task', name, input }, urgency, signal);
      if (answer.kind === 'task') return answer.output as never;
      throw new Error(messageOf(answer));
    };
  }

  /** The engines that the spreads of a scenario allow; throws where a value of theirs is refused. */
  async doubt(
    source: { text: string; file: string },
    asked: Uncertainty,
    signal: AbortSignal,
  ): Promise<DoubtSample> {
    const answer = await this.ask({ kind: 'doubt', ...source, asked }, URGENCY.asked, signal);
    if (answer.kind === 'doubt') return answer.sample;
    throw new Error(messageOf(answer));
  }

  private ask(question: Question, urgency: number, signal?: AbortSignal): Promise<Answer> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(new Cancelled());
      const task: Task = { question, urgency, attempts: 0, resolve, reject };
      signal?.addEventListener('abort', () => this.drop(task), { once: true });
      this.enqueue(task);
      this.dispatch();
    });
  }

  /** A point being computed runs to its end, a second or so; its answer then finds no one waiting. */
  private drop(task: Task): void {
    const at = this.queue.indexOf(task);
    if (at >= 0) this.queue.splice(at, 1);
    task.reject(new Cancelled());
  }

  private enqueue(task: Task): void {
    const behind = this.queue.findIndex((other) => other.urgency > task.urgency);
    this.queue.splice(behind < 0 ? this.queue.length : behind, 0, task);
  }

  private dispatch(): void {
    for (const seat of this.seats) {
      if (seat.task !== undefined) continue;
      const task = this.queue.shift();
      if (task === undefined) return;
      seat.task = task;
      task.attempts++;
      seat.worker ??= this.worker(seat);
      seat.worker.postMessage(task.question);
    }
  }

  private worker(seat: Seat): PoolWorker {
    const worker = this.makeWorker();
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      const { task } = seat;
      seat.task = undefined;
      task?.resolve(data);
      this.dispatch();
    };
    worker.onerror = (event: ErrorEvent) => {
      event.preventDefault();
      this.dismiss(seat, event.message || 'it could not be loaded');
    };
    return worker;
  }

  private dismiss(seat: Seat, message: string): void {
    const { task } = seat;
    seat.worker?.terminate();
    seat.worker = undefined;
    seat.task = undefined;
    this.onCrash(message);
    if (task && task.attempts < MOST_ATTEMPTS) this.enqueue(task);
    else task?.resolve({ kind: 'error', message: `two workers stopped at this point: ${message}` });
    this.dispatch();
  }
}

function messageOf(answer: Answer): string {
  return answer.kind === 'error' ? answer.message : `a worker answered with a ${answer.kind}`;
}
