/** Values of options that belong to the command line alone. */
import { availableParallelism } from 'node:os';
import { InputError, parseShard, type Shard } from '../index.ts';

/** Options of every command that computes. */
export interface CommonOptions {
  json?: boolean;
  out?: string;
  workers?: string;
  /** Of commands whose points can be stored. */
  resume?: boolean;
  shard?: string;
}

/** Most worker threads. */
const MOST_WORKERS = 256;

/** Worker threads: as asked, or one a core. */
export function askedWorkers(text: string | undefined): number {
  if (text === undefined) return availableParallelism();
  const workers = Number(text);
  if (/^\d+$/.test(text) && workers >= 1 && workers <= MOST_WORKERS) return workers;
  throw new InputError(
    `--workers ${text}: write a whole number from 1 to ${MOST_WORKERS}, for example: --workers 2`,
  );
}

/** One share of a job dealt out to several machines. */
export function askedShard(text: string | undefined): Shard | undefined {
  if (text === undefined) return undefined;
  const shard = parseShard(text);
  if (shard) return shard;
  throw new InputError(`--shard ${text}: write which of how many, for example: --shard 2/5`);
}
