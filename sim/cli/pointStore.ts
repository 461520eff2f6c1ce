/** The store of finished points as files of a result folder. */
import {
  appendFileSync,
  closeSync,
  existsSync,
  openSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import {
  type FinishedPoints,
  mending,
  type PointRunner,
  readPoints,
  type Shard,
  storedRunner,
} from '../index.ts';

export interface PointStore {
  /** What earlier runs have finished. */
  finished: FinishedPoints;
  /** A runner that takes what is finished from the store and writes the rest into it at once. */
  over(runner: PointRunner): PointRunner;
  close(): void;
}

/**
 * Opens the store of a folder. Each shard writes a file of its own, so that many may share a folder.
 *
 * @param keep whether to go on with what the folder holds; otherwise this file starts anew
 */
export function openPointStore(folder: string, keep: boolean, shard?: Shard): PointStore {
  const name = shard ? `points-${shard.index}-of-${shard.count}.jsonl` : 'points.jsonl';
  const file = join(folder, name);
  if (!keep || !existsSync(file)) writeFileSync(file, '');
  const finished = keep ? readAll(folder) : new Map();
  const handle = openSync(file, 'a');
  appendFileSync(handle, mending(readFileSync(file, 'utf8')));
  return {
    finished,
    over: (runner) => storedRunner(runner, finished, (line) => appendFileSync(handle, line)),
    close: () => closeSync(handle),
  };
}

/** Every store of the folder, in the order of their names. */
function readAll(folder: string): FinishedPoints {
  const names = readdirSync(folder).filter((name) => /^points(-\d+-of-\d+)?\.jsonl$/.test(name));
  const texts = names.sort().map((name) => readFileSync(join(folder, name), 'utf8'));
  return new Map(texts.flatMap((text) => [...readPoints(text)]));
}
