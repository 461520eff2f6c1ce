/**
 * Finished points as lines of text, so that a big job can be stopped at any moment and gone on with.
 *
 * One line a point: {"key":K,"outcome":O}, K the hash of what was computed, O the outcome as JSON,
 * whose numbers read back exactly. Lines are only ever appended. A process killed while it writes
 * leaves a torn last line: no beginning of such a line is JSON, so it reads as absent.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from '../canonicalJson.ts';
import { PROGRAM } from '../version.ts';
import type { PointJob, PointOutcome, PointRunner } from './runner.ts';

/** Finished points by the key of their job. */
export type FinishedPoints = Map<string, PointOutcome>;

/** The name of what a job computes: engine, speed and program version; titles do not count. */
export function jobKey({ engine, speed }: PointJob): string {
  const asked = { engine: { ...engine, title: '' }, speed, version: PROGRAM.version };
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(asked))));
}

/** One finished point as a line, with its end. */
export function pointLine(key: string, outcome: PointOutcome): string {
  return `${JSON.stringify({ key, outcome }, (_, value) => nonFiniteAsText(value))}\n`;
}

/** The points of a store's text; torn and foreign lines are passed over. */
export function readPoints(text: string): FinishedPoints {
  const points: FinishedPoints = new Map();
  for (const line of text.split('\n')) {
    const record = readLine(line);
    if (record) points.set(record.key, record.outcome);
  }
  return points;
}

/** What must be appended before the next line, where the last one was torn. */
export function mending(text: string): '' | '\n' {
  return text === '' || text.endsWith('\n') ? '' : '\n';
}

/**
 * A runner that takes finished points from `finished` and computes the rest, each handed to `append`
 * as a line the moment it is finished. A job asked for twice at once is computed once.
 */
export function storedRunner(
  runner: PointRunner,
  finished: FinishedPoints,
  append: (line: string) => void,
): PointRunner {
  const underWay = new Map<string, Promise<PointOutcome>>();
  const compute = async (key: string, job: PointJob): Promise<PointOutcome> => {
    const outcome = await runner.run(job);
    append(pointLine(key, outcome));
    finished.set(key, outcome);
    return outcome;
  };
  return {
    run: async (job) => {
      const key = jobKey(job);
      const known = finished.get(key);
      if (known) return known;
      const running = underWay.get(key) ?? compute(key, job);
      underWay.set(key, running);
      return running.finally(() => underWay.delete(key));
    },
  };
}

/** The jobs that are not finished yet. */
export function unfinished<T extends PointJob>(jobs: readonly T[], finished: FinishedPoints): T[] {
  return jobs.filter((job) => !finished.has(jobKey(job)));
}

function readLine(line: string): { key: string; outcome: PointOutcome } | undefined {
  try {
    const record: unknown = JSON.parse(line, (_, value) => textAsNonFinite(value));
    return isRecord(record) ? record : undefined;
  } catch {
    return undefined;
  }
}

function isRecord(value: unknown): value is { key: string; outcome: PointOutcome } {
  if (!(value instanceof Object && 'key' in value && 'outcome' in value)) return false;
  const { key, outcome } = value;
  return typeof key === 'string' && outcome instanceof Object && 'speed' in outcome;
}

/** JSON has no word for these. */
const NON_FINITE = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -0];

function nonFiniteAsText(value: unknown): unknown {
  const odd = NON_FINITE.find((number) => Object.is(number, value));
  return odd === undefined ? value : Object.is(odd, -0) ? '#-0' : `#${odd}`;
}

function textAsNonFinite(value: unknown): unknown {
  if (typeof value !== 'string' || !value.startsWith('#')) return value;
  return NON_FINITE.find((number) => nonFiniteAsText(number) === value) ?? value;
}
