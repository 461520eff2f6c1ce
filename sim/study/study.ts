/**
 * A question that the program answers is a folder beside this file and a line in index.ts. It says
 * what it asks (ask.ts), computes, tells (tell.ts), tabulates (tables.ts) and draws (figure.ts); the
 * command line and the page do the rest.
 */
import type { Report } from '../report/report.ts';
import type { LongTable } from '../report/table.ts';
import type { Scenario } from '../scenario/resolve.ts';
import type { Sound } from '../sound/samples.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import type { SweepObserver, TablePoint } from '../sweep/sweep.ts';
import type { Computer } from '../sweep/tasks.ts';

/** One option of the command, in the words of its help. */
export interface StudyOption {
  /** `--length <length>`. */
  flags: string;
  help: string;
  /** Whether it may be given more than once. */
  many?: boolean;
}

/** Options as given: a text, a mark that it is there, or a list of texts, by camel-cased name. */
export type OptionValues = Record<string, string | boolean | string[] | undefined>;

/** What is asked. */
export interface Asked {
  /** Name of the scenario file, its text, and what it was understood to be. */
  file: string;
  text: string;
  scenario: Scenario;
  options: OptionValues;
  /** The text of another file that an option names. Throws InputError where there is none. */
  read(path: string): string;
}

/** What came of it, for every format. */
export interface Findings {
  /** Stem of the files: `curve` gives curve.json, curve.html. */
  stem: string;
  /** The JSON document. */
  document: object;
  report: Report;
  /** Tables written as CSV, by name of the file. */
  tables: Record<string, LongTable>;
  /** Whether the tables are written as Parquet too. */
  compact?: boolean;
  /** Sounds written as WAV, by name of the file, and the pressure that fills their scale [Pa]. */
  audio?: { sounds: Record<string, Sound>; fullScale: number };
  /** Name of the HTML file, where it is another. */
  page?: string;
  /** Whether everything computed is an answer: no point failed or has not settled. */
  sound: boolean;
  /** Said beside the result. */
  remarks?: readonly string[];
  /** Another file that was asked for, and what is said of it. */
  also?: { path: string; text: string; words: string };
}

/** A question ready to be computed. */
export interface Job {
  /** How many points can be at work at once; with none, no worker is started. */
  width: number;
  /** Points known beforehand: they can be stored, resumed and dealt out to several machines. */
  table?: readonly TablePoint[];
  /** Whether it asks for no other points: where one is missing there is nothing to conclude. */
  closed?: boolean;
  run(computer: Computer, observer: SweepObserver): Promise<Findings>;
}

export interface Study {
  /** Name of the command. */
  name: string;
  help: string;
  options: readonly StudyOption[];
  /** Whether the points of its table are stored, so that it can be resumed and dealt out. */
  stored?: boolean;
  /** Name of the command that concludes from the points that were dealt out. */
  merge?: string;
  /** The option that tells that command that it is of this study; none for the one it is of without. */
  mergedBy?: string;
  /** Whether it only reads: no workers, no files. */
  reads?: boolean;
  /** Throws InputError or ScenarioError where the question is wrong. */
  open(asked: Asked): Job;
}

/** The table of a sweep as plain points, those between its speeds too, for reports that rest on all. */
export function allOutcomes(
  curves: readonly { outcomes: readonly PointOutcome[]; between?: readonly PointOutcome[] }[],
) {
  return curves.flatMap(({ outcomes, between = [] }) => [...outcomes, ...between]);
}
