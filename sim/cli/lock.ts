/**
 * One run at a time where two would write the same file. The lock is a file beside it that names its
 * holder. It is stale, and is taken over, when its holder was a process of this machine that is gone,
 * or when it has not been touched for three minutes; a holder touches it every twenty seconds.
 */
import {
  closeSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { InputError } from '../index.ts';

export interface Lock {
  release(): void;
}

/** Touched so often [ms]. */
const BEAT = 20_000;
/** Stale after so long without a touch [ms]; far above what clocks of machines differ by. */
const SILENCE = 180_000;
/** Takings over before giving in to others that want the same. */
const TRIES = 5;

/** Takes the lock of a file; throws InputError where another run holds it. */
export function takeLock(file: string): Lock {
  const path = `${file}.lock`;
  const own = JSON.stringify({ process: process.pid, host: hostname(), since: new Date() });
  for (let i = 0; i < TRIES; i++) {
    if (create(path, own)) return held(path, own);
    const other = read(path);
    if (other === undefined) continue;
    if (!isStale(path, other)) throw inUse(file, path, other);
    setAside(path, other);
  }
  throw inUse(file, path, read(path) ?? '');
}

function create(path: string, text: string): boolean {
  let handle: number;
  try {
    handle = openSync(path, 'wx');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
  try {
    writeFileSync(handle, text);
    return true;
  } catch (error) {
    rmSync(path, { force: true }); // a full disk: nothing is left behind that says the file is in use
    throw error;
  } finally {
    closeSync(handle);
  }
}

function held(path: string, own: string): Lock {
  const beat = setInterval(() => {
    const now = new Date();
    if (read(path) === own) utimesSync(path, now, now);
  }, BEAT).unref();
  return {
    release() {
      clearInterval(beat);
      if (read(path) === own) rmSync(path, { force: true });
    },
  };
}

function read(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

interface Holder {
  process?: number;
  host?: string;
  since?: string;
}

function holderOf(text: string): Holder {
  try {
    return JSON.parse(text) as Holder;
  } catch {
    return {}; // its holder died between making and writing it, or is just writing it
  }
}

function isStale(path: string, text: string): boolean {
  const { process: id, host } = holderOf(text);
  if (id !== undefined && host === hostname() && !isAlive(id)) return true;
  const touched = statSync(path, { throwIfNoEntry: false })?.mtimeMs;
  return touched === undefined || Date.now() - touched > SILENCE;
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Takes a stale lock away, unless another run was faster and it is theirs by now. */
function setAside(path: string, stale: string): void {
  const aside = `${path}-${process.pid}`;
  try {
    renameSync(path, aside);
  } catch {
    return; // gone already
  }
  if (read(aside) === stale) rmSync(aside, { force: true });
  else renameSync(aside, path);
}

function inUse(file: string, path: string, text: string): InputError {
  const { process: id, host, since } = holderOf(text);
  const who = id === undefined ? 'another run' : `process ${id} on ${host}, since ${since}`;
  return new InputError(
    `${file} is in use by ${who}; wait for its end, or name another folder with --out. ` +
      `If that run is gone, remove ${path}`,
  );
}
