/** What the page and its workers say to each other; plain data. */
import type {
  DoubtSample,
  PointJob,
  PointOutcome,
  SpeedsJob,
  TaskInput,
  TaskName,
  TaskOutput,
  Trace,
  Uncertainty,
} from '../../sim/index.ts';

export type Question =
  /** `quick`: in single precision, for a preview. */
  | { kind: 'speeds'; job: SpeedsJob; quick?: boolean }
  | { kind: 'trace'; job: PointJob }
  /** A longer computation of a study by its name. */
  | { kind: 'task'; name: TaskName; input: TaskInput<TaskName> }
  /** The engines that the spreads of a scenario allow; reading so many takes a second. */
  | { kind: 'doubt'; text: string; file: string; asked: Uncertainty };

export type Answer =
  | { kind: 'speeds'; outcomes: PointOutcome[] }
  | { kind: 'trace'; trace: Trace }
  | { kind: 'task'; output: TaskOutput<TaskName> }
  | { kind: 'doubt'; sample: DoubtSample }
  | { kind: 'error'; message: string };
