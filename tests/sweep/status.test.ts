/** `status`: what is there of a job that was dealt out, what is missing, what failed. */
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import type { Computer } from '../../sim/sweep/tasks.ts';
import { answer, answerFrom, fileOf, freshFolder } from '../cli/commandLine.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { cheapText } from '../golden/cheap.ts';

const file = fileOf(cheapText('hill-climb'), 'hill-climb.yaml');
/** Three lengths, the one fitted among them or beside, at four speeds. */
const SPEEDS = 4;

/** Points by chance; the first engine fails at 7000 rpm and does not settle at 8200. */
const workers: Computer = {
  ...chanceWorkers,
  run: async (job) => {
    const outcome = await chanceWorkers.run(job);
    if (job.engine.intake.trumpet.length !== 0.12) return { ...outcome, settled: true };
    if (job.speed === 7000) return { speed: job.speed, failure: 'no pressure in cell 3' };
    return { ...outcome, settled: job.speed !== 8200 };
  },
};

let out = '';
beforeEach(() => {
  out = freshFolder();
});

const shard = (of: string) =>
  answerFrom(workers, 'sweep', file, '--out', out, '--shard', of, '--quiet');
const status = (...more: string[]) => answer('status', file, '--out', out, ...more);

test('a shard that never ran, and one that was cut off', async () => {
  await shard('1/3');
  await shard('3/3');
  const third = join(out, 'points-3-of-3.jsonl');
  const lines = readFileSync(third, 'utf8').split('\n');
  writeFileSync(third, lines.slice(0, 3).join('\n'));
  const before = readdirSync(out).map((name) => [name, statSync(join(out, name)).mtimeMs]);

  const { code, stdout } = await status('--json');
  expect(code).toBe(1);
  const told = JSON.parse(stdout);
  expect(told.schema).toEqual({ name: 'trumpetry-status', version: 1 });
  expect(told.points % SPEEDS).toBe(0);
  const [first, second, cut] = told.shards;
  expect(first).toMatchObject({ index: 1, of: 3, missing: 0 });
  expect(second.missing).toBe(second.points);
  expect(cut.missing).toBe(cut.points - 1); // the first line is the owner, the last of three torn
  expect(told.missing).toHaveLength(second.missing + cut.missing);
  expect(told.finished).toBe(told.points - told.missing.length);

  const text = await status();
  expect(text.code).toBe(1);
  expect(text.stdout).toContain(`${told.finished} of ${told.points} points are there`);
  expect(text.stdout).toContain(
    `shard 2/3: ${second.points} of ${second.points} points are missing`,
  );
  expect(text.stdout).not.toContain('shard 1/3');
  // It has read only.
  expect(readdirSync(out).map((name) => [name, statSync(join(out, name)).mtimeMs])).toEqual(before);
});

test('what failed and what did not settle is named', async () => {
  for (const of of ['1/2', '2/2']) await shard(of);
  const { code, stdout } = await status('--json');
  expect(code).toBe(1);
  const told = JSON.parse(stdout);
  expect(told.missing).toEqual([]);
  expect(told.failed).toEqual([
    { engine: expect.any(Number), speed_rpm: 7000, failure: 'no pressure in cell 3' },
  ]);
  expect(told.unsettled).toEqual([{ engine: told.failed[0].engine, speed_rpm: 8200 }]);
  const text = await status();
  expect(text.stdout).toContain('0 missing; 1 failed, 1 not settled');
  expect(text.stdout).toMatch(/failed: engine \d at 7000 rpm: no pressure in cell 3/);
});

test('all there and sound ends with 0, by a whole sweep too', async () => {
  const sound: Computer = {
    ...chanceWorkers,
    run: async (job) => ({ ...(await chanceWorkers.run(job)), settled: true }),
  };
  await answerFrom(sound, 'sweep', file, '--out', out);
  const { code, stdout } = await status();
  expect(stdout).toMatch(/: (\d+) of \1 points are there, 0 missing; 0 failed, 0 not settled\.\n$/);
  expect(code).toBe(0);
});

test.each<[string, () => string[], RegExp]>([
  ['no folder named', () => [], /status needs --out/],
  ['no such folder', () => ['--out', join(out, 'none')], /none: there is no such file/],
])('%s', async (_, more, says) => {
  const { code, stderr } = await answer('status', file, ...more());
  expect(code).toBe(2);
  expect(stderr).toMatch(says);
});

test('another scenario', async () => {
  await shard('1/2');
  const other = fileOf(cheapText('sprint-single'), 'sprint-single.yaml');
  const { code, stderr } = await answer('status', other, '--out', out);
  expect(code).toBe(2);
  expect(stderr).toContain('another scenario, hill-climb.yaml');
});
