/** How far a job is that was dealt out: what is there, missing, failed. It only reads. */
import { basename } from 'node:path';
import {
  documentHead,
  InputError,
  type Scenario,
  type Shard,
  type Study,
  shardPoints,
  type TablePoint,
  type Tally,
  tallyOf,
} from '../index.ts';
import { EXIT } from './exit.ts';
import { nameOf } from './files.ts';
import { readPointStore } from './pointStore.ts';
import { type Options, opened } from './study.ts';
import { print, printJson, remark, type Terminal } from './terminal.ts';

/** Says it; 0 where every point is there and none has failed. */
export function status(terminal: Terminal, study: Study, file: string, options: Options): number {
  if (options.out === undefined)
    throw new InputError('status needs --out: the folder of the points');
  const { scenario, job } = opened(study, file, options);
  const owner = { file: basename(nameOf(file)), title: scenario.title };
  const store = readPointStore(options.out, owner);
  for (const line of store.remarks) remark(terminal, line);
  const points = job.table ?? [];
  const tally = tallyOf(points, store.finished);
  const shards = store.shards.map((shard) => progressOf(shard, points, tally));
  print(terminal, textOf(options.out, tally, shards));
  printJson(terminal, documentOf(scenario, tally, shards));
  return tally.missing.length + tally.failed.length === 0 ? EXIT.done : EXIT.failed;
}

interface ShardProgress extends Shard {
  points: number;
  missing: number;
}

function progressOf(shard: Shard, points: readonly TablePoint[], tally: Tally): ShardProgress {
  const own = shardPoints(points, shard);
  const missing = new Set(tally.missing);
  return { ...shard, points: own.length, missing: own.filter((one) => missing.has(one)).length };
}

/** Most points that are named in text. */
const NAMED = 10;

function textOf(folder: string, tally: Tally, shards: readonly ShardProgress[]): string[] {
  const { points, missing, failed, unsettled } = tally;
  return [
    `${folder}: ${points - missing.length} of ${points} points are there, ${missing.length} missing; ` +
      `${failed.length} failed, ${unsettled.length} not settled.`,
    ...few(failed.map(({ point, failure }) => `failed: ${nameOfPoint(point)}: ${failure}`)),
    ...few(unsettled.map((point) => `not settled: ${nameOfPoint(point)}`)),
    ...shards
      .filter((shard) => shard.missing > 0)
      .map((shard) => {
        const { index, count, points: own, missing: left } = shard;
        return `shard ${index}/${count}: ${left} of ${own} points are missing`;
      }),
  ];
}

const nameOfPoint = ({ i, speed }: TablePoint) => `engine ${i + 1} at ${speed} rpm`;

function few(lines: string[]): string[] {
  const more = lines.length - NAMED;
  return more > 0 ? [...lines.slice(0, NAMED), `and ${more} more`] : lines;
}

function documentOf(scenario: Scenario, tally: Tally, shards: readonly ShardProgress[]): object {
  const named = ({ i, speed }: TablePoint) => ({ engine: i + 1, speed_rpm: speed });
  return {
    ...documentHead('status', scenario),
    points: tally.points,
    finished: tally.points - tally.missing.length,
    missing: tally.missing.map(named),
    failed: tally.failed.map(({ point, failure }) => ({ ...named(point), failure })),
    unsettled: tally.unsettled.map(named),
    shards: shards.map(({ index, count, points, missing }) => ({
      index,
      of: count,
      points,
      missing,
    })),
  };
}
