/**
 * Finished points as lines of text, so that a big job can be stopped at any moment and gone on with.
 *
 * One line a point: {"sum":S,"by":P,"key":K,"outcome":O}, S the first 16 digits of the SHA-256 of all
 * that follows it in the line, P name and version of the program, K the hash of what was computed, O
 * the outcome as JSON, whose numbers read back exactly. Lines are only ever appended. A line that was
 * torn or damaged does not fit its sum and reads as absent: its point is computed again.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from '../canonicalJson.ts';
import type { EngineSpecification } from '../specification.ts';
import { PROGRAM } from '../version.ts';
import { isOutcome } from './outcome.ts';
import type { PointJob, PointOutcome, PointRunner } from './runner.ts';

/** Finished points by the key of their job. */
export type FinishedPoints = Map<string, PointOutcome>;

/** Where the points of a store come from. */
export interface StoreOwner {
  /** Scenario file, without its folder. */
  file: string;
  title: string;
}

/** What a store's text holds. */
export interface StoreContents {
  points: FinishedPoints;
  /** Lines that do not fit their sum, or hold no outcome. */
  unreadable: number;
  /** Sound lines of other programs or versions: how many, by their name. */
  foreign: Map<string, number>;
  /** Whose points they are; absent in a store that says nothing of it. */
  owner?: StoreOwner;
}

const BY = `${PROGRAM.name} ${PROGRAM.version}`;

/** The name of what a job computes: engine, speed, how it settles and program version; titles do not count. */
export function jobKey({ engine, speed, hastened }: PointJob): string {
  const way = hastened ? { hastened } : {};
  const rest = canonicalJson({ speed, version: PROGRAM.version, ...way }).replace('{', ',');
  return bytesToHex(begunWith(engine).clone().update(utf8ToBytes(rest)).digest());
}

/** The hash of a job up to its speed: most jobs share their engine with others. */
function begunWith(engine: EngineSpecification): Sha256 {
  const known = BEGUN.get(engine);
  if (known) return known;
  const text = canonicalJson({ engine: { ...engine, title: '' } }).slice(0, -1);
  const begun = sha256.create().update(utf8ToBytes(text));
  BEGUN.set(engine, begun);
  return begun;
}

type Sha256 = ReturnType<typeof sha256.create>;

const BEGUN = new WeakMap<EngineSpecification, Sha256>();

/** One finished point as a line, with its end. */
export function pointLine(key: string, outcome: PointOutcome): string {
  return summed({ by: BY, key, outcome });
}

/** The first line of a store. */
export function ownerLine(owner: StoreOwner): string {
  return summed({ by: BY, owner });
}

/** Reads the lines of a store into `points`; of lines with one key the last counts. */
export function readStore(
  lines: Iterable<string>,
  points: FinishedPoints = new Map(),
): StoreContents {
  const contents: StoreContents = { points, unreadable: 0, foreign: new Map() };
  for (const line of lines) if (line !== '') readInto(contents, line);
  return contents;
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

const hashOf = (text: string) => bytesToHex(sha256(utf8ToBytes(text)));

/** Digits of a sum: a changed line passes once in 2^64. */
const SUM_DIGITS = 16;

const sumOf = (text: string) => hashOf(text).slice(0, SUM_DIGITS);

function summed(record: object): string {
  const body = JSON.stringify(record, (_, value) => nonFiniteAsText(value)).slice(1);
  return `{"sum":"${sumOf(body)}",${body}\n`;
}

const LINE = /^\{"sum":"([0-9a-f]{16})",(.*)$/;

function readInto(contents: StoreContents, line: string): void {
  const [, sum, body] = LINE.exec(line) ?? [];
  const sound = body !== undefined && sumOf(body) === sum;
  const record = sound ? recordOf(`{${body}`) : undefined;
  if (!record) contents.unreadable++;
  else if (record.by !== BY) {
    contents.foreign.set(record.by, (contents.foreign.get(record.by) ?? 0) + 1);
  } else if (record.owner) contents.owner ??= record.owner as StoreOwner;
  else if (typeof record.key === 'string' && isOutcome(record.outcome)) {
    contents.points.set(record.key, record.outcome);
  } else contents.unreadable++;
}

interface StoreRecord {
  by: string;
  key?: unknown;
  outcome?: unknown;
  owner?: unknown;
}

function recordOf(text: string): StoreRecord | undefined {
  try {
    // Reading value by value takes twice as long, and few lines hold what wants it.
    const odd = text.includes('"#');
    const record: unknown = odd
      ? JSON.parse(text, (_, value) => textAsNonFinite(value))
      : JSON.parse(text);
    const named = record instanceof Object && 'by' in record && typeof record.by === 'string';
    return named ? (record as StoreRecord) : undefined;
  } catch {
    return undefined;
  }
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
