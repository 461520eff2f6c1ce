/** The store of finished points as files of a result folder. */
import {
  appendFileSync,
  closeSync,
  openSync,
  readdirSync,
  renameSync,
  statSync,
  truncateSync,
} from 'node:fs';
import { join } from 'node:path';
import {
  type FinishedPoints,
  InputError,
  ownerLine,
  type PointRunner,
  readStore,
  type Shard,
  type StoreOwner,
  storedRunner,
} from '../index.ts';
import { type Lock, takeLock } from './lock.ts';
import { storageProblem } from './storage.ts';
import { wholeBytes, wholeLinesOf } from './wholeLines.ts';
import { storageError } from './writing.ts';

export interface PointStore {
  /** What earlier runs have finished. */
  finished: FinishedPoints;
  /** What there is to say of what the folder holds. */
  remarks: string[];
  /** A runner that takes what is finished from the store and writes the rest into it at once. */
  over(runner: PointRunner): PointRunner;
  close(): void;
}

/** How a folder's store is used. */
export interface StoreUse {
  /**
   * Whether to go on with what the folder holds; otherwise the file starts anew, and what it held is
   * kept under another name.
   */
  keep: boolean;
  owner: StoreOwner;
  shard?: Shard | undefined;
}

/**
 * Opens the store of a folder. Each shard writes a file of its own, so that many may share a folder.
 *
 * @throws InputError where the folder cannot be used, holds another scenario's points, or is in use
 */
export function openPointStore(folder: string, { keep, owner, shard }: StoreUse): PointStore {
  const stem = shard ? `points-${shard.index}-of-${shard.count}` : 'points';
  const file = join(folder, `${stem}.jsonl`);
  let lock: Lock | undefined;
  try {
    lock = takeLock(file);
    refuseOddity(file);
    const held = readAll(folder, owner);
    if (keep) cutTorn(file);
    else setAside(file, join(folder, `${stem}.earlier.jsonl`));
    return storeOn(
      file,
      lock,
      owner,
      keep ? held : { finished: new Map(), remarks: [], shards: [] },
    );
  } catch (error) {
    lock?.release();
    const problem = storageProblem(error);
    throw problem === undefined ? error : new InputError(`${file}: ${problem}`);
  }
}

/** What the stores of a folder hold. */
export interface Held extends Pick<PointStore, 'finished' | 'remarks'> {
  /** Shards that are known of: every one of each count of which there is a file. */
  shards: Shard[];
}

/**
 * Reads the stores of a folder, whoever is writing them.
 *
 * @throws InputError where the folder cannot be read or holds another scenario's points
 */
export function readPointStore(folder: string, owner: StoreOwner): Held {
  try {
    return readAll(folder, owner);
  } catch (error) {
    const problem = storageProblem(error);
    throw problem === undefined ? error : new InputError(`${folder}: ${problem}`);
  }
}

function storeOn(file: string, lock: Lock, owner: StoreOwner, held: Held): PointStore {
  const handle = openSync(file, 'a');
  if (statSync(file).size === 0) appendFileSync(handle, ownerLine(owner));
  const append = (line: string) => {
    try {
      appendFileSync(handle, line);
    } catch (error) {
      throw storageError(error, file);
    }
  };
  return {
    finished: held.finished,
    remarks: held.remarks,
    over: (runner) => storedRunner(runner, held.finished, append),
    close: () => {
      closeSync(handle);
      lock.release();
    },
  };
}

/** Devices never end, and folders are no files. */
function refuseOddity(path: string): void {
  const about = statSync(path, { throwIfNoEntry: false });
  if (!about || about.isFile()) return;
  const what = about.isDirectory() ? 'there is a folder of that name, not a file' : 'no plain file';
  throw new InputError(`${path}: ${what}`);
}

/** A last line without its end was torn by a kill: it goes. */
function cutTorn(file: string): void {
  const { size = 0 } = statSync(file, { throwIfNoEntry: false }) ?? {};
  if (size === 0) return;
  const whole = wholeBytes(file);
  if (whole < size) truncateSync(file, whole);
}

function setAside(file: string, earlier: string): void {
  if (statSync(file, { throwIfNoEntry: false })?.isFile()) renameSync(file, earlier);
}

const STORE = /^points(?:-\d+-of-(\d+))?\.jsonl$/;

function shardsOf(names: readonly string[]): Shard[] {
  const counts = new Set(names.map((name) => Number(STORE.exec(name)?.[1] ?? 0)));
  return [...counts].flatMap((count) =>
    Array.from({ length: count }, (_, i) => ({ index: i + 1, count })),
  );
}

/** Every store of the folder, in the order of their names. */
function readAll(folder: string, owner: StoreOwner): Held {
  const names = readdirSync(folder).filter((name) => STORE.test(name));
  const finished: FinishedPoints = new Map();
  const remarks: string[] = [];
  for (const name of names.sort()) {
    const path = join(folder, name);
    refuseOddity(path);
    const store = readStore(wholeLinesOf(path), finished);
    refuseOthers(folder, owner, store.owner);
    if (store.unreadable > 0) {
      remarks.push(`${path}: ${lines(store.unreadable)} unreadable, to be computed again`);
    }
    for (const [by, count] of store.foreign) {
      remarks.push(`${path}: ${lines(count)} by ${by} passed over`);
    }
  }
  return { finished, remarks, shards: shardsOf(names) };
}

const lines = (count: number) => `${count} line${count === 1 ? '' : 's'}`;

function refuseOthers(folder: string, own: StoreOwner, other: StoreOwner | undefined): void {
  if (!other || (other.file === own.file && other.title === own.title)) return;
  throw new InputError(
    `${folder} holds the points and results of another scenario, ${other.file} ("${other.title}"); ` +
      'name another folder with --out',
  );
}
