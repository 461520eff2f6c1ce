/** The store of finished points: reads back exactly, bears torn lines, computes nothing twice. */
import { createHash } from 'node:crypto';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../sim/canonicalJson.ts';
import type { PointJob, PointOutcome } from '../../sim/sweep/runner.ts';
import { parseShard, runPoints, shardPoints } from '../../sim/sweep/shard.ts';
import {
  jobKey,
  ownerLine,
  pointLine,
  readStore,
  storedRunner,
  unfinished,
} from '../../sim/sweep/store.ts';
import { sweep, tablePoints, withLength } from '../../sim/sweep/sweep.ts';
import { PROGRAM } from '../../sim/version.ts';
import { readDemo, toyPoint, toyRunner } from '../toy.ts';
import { linesOf, wholeLines } from './lines.ts';

const readPoints = (text: string) => readStore(linesOf(text)).points;

const { engine } = readDemo('sprint-single');
const odd = toyPoint(3000, 0.1 + 0.2);
const failed: PointOutcome = { speed: 4000, failure: 'non-physical state in "trumpet"\nand more' };

describe('a line of the store', () => {
  it('reads back to the last bit', () => {
    const strange = { ...odd, backflow: Number.NaN, mouthOutflow: -0, indicatedTorque: 1e-320 };
    const text = pointLine('a', strange) + pointLine('b', failed);
    const points = readPoints(text);
    expect(points.get('a')).toEqual(strange);
    expect(Object.is((points.get('a') as typeof strange).mouthOutflow, -0)).toBe(true);
    expect(points.get('b')).toEqual(failed);
    expect(text.split('\n')).toHaveLength(3);
  });

  it('holds cylinders that differ, and refuses figures of theirs that are none', () => {
    const { settled: _, audit: __, ...figures } = odd;
    const cylinders = [{ ...figures, numbers: [1, 6] }];
    const own = { ...odd, cylinders };
    expect(readPoints(pointLine('a', own)).get('a')).toEqual(own);
    for (const wrong of ['all', [{ ...figures, numbers: ['one'] }]]) {
      const text = pointLine('a', { ...odd, cylinders: wrong } as never);
      expect([...readPoints(text).keys()]).toEqual([]);
    }
  });

  it('is absent wherever it is torn, and cut off before the next', () => {
    const whole = pointLine('a', odd);
    const torn = pointLine('b', failed);
    for (let cut = 0; cut < torn.length; cut++) {
      const text = whole + torn.slice(0, cut);
      const mended = text.slice(0, wholeLines(text)) + pointLine('c', odd);
      expect([...readPoints(mended).keys()]).toEqual(['a', 'c']);
      if (cut < torn.length - 1) expect([...readPoints(text).keys()]).toEqual(['a']);
    }
  });

  it('of another program or version is counted by its name, of none as unreadable', () => {
    const own = ownerLine({ file: 'a.yaml', title: 'A' }) + pointLine('a', odd);
    const later = withSum(`"by":"trumpetry 99.0.0","key":"b","outcome":{"speed":1,"new":2}}`);
    const empty = withSum(`"by":"${PROGRAM.name} ${PROGRAM.version}","key":"c","outcome":{}}`);
    const old = `${JSON.stringify({ key: 'd', outcome: odd })}\n`;
    const store = readStore(linesOf(own + later + empty + old));
    expect([...store.points.keys()]).toEqual(['a']);
    expect(store.foreign).toEqual(new Map([['trumpetry 99.0.0', 1]]));
    expect(store.unreadable).toBe(2);
    expect(store.owner).toEqual({ file: 'a.yaml', title: 'A' });
  });
});

/** A line with a sum that fits, whatever it says. */
function withSum(body: string): string {
  const sum = createHash('sha256').update(body).digest('hex').slice(0, 16);
  return `{"sum":"${sum}",${body}\n`;
}

describe('a store with one bit turned over', () => {
  const FLIPS = 20_000;
  const outcomes = Array.from({ length: 40 }, (_, i) =>
    i % 9 === 8 ? failed : toyPoint(3000 + 100 * i, 0.8 + 0.01 * i),
  );
  const lines = outcomes.map((outcome, i) => pointLine(`${i}`.repeat(20), outcome));
  const text = JSON.stringify;
  const truth = new Map([...readPoints(lines.join(''))].map(([key, one]) => [key, text(one)]));

  it(`${FLIPS} times: no changed outcome and no changed key is taken`, () => {
    const random = xoroshiro128plus(7);
    const found = { taken: 0, unseen: 0 };
    for (let flip = 0; flip < FLIPS; flip++) {
      const first = uniformInt(random, 0, lines.length - 3);
      const three = Buffer.from(lines.slice(first, first + 3).join(''));
      three[uniformInt(random, 0, three.length - 1)]! ^= 1 << uniformInt(random, 0, 7);
      const { points, unreadable, foreign } = readStore(linesOf(three.toString()));
      for (const [key, one] of points) if (text(one) !== truth.get(key)) found.taken++;
      if (unreadable === 0 || points.size > 2 || foreign.size > 0) found.unseen++;
    }
    expect(truth.size).toBe(lines.length);
    expect(found).toEqual({ taken: 0, unseen: 0 });
  });
});

describe('the key of a job', () => {
  it('tells speeds and engines apart, not titles', () => {
    const job = { engine, speed: 6000 };
    const keys = [
      jobKey(job),
      jobKey({ ...job, speed: 6001 }),
      jobKey({ ...job, engine: withLength(engine, 0.1234) }),
    ];
    expect(new Set(keys).size).toBe(3);
    expect(jobKey({ ...job, engine: { ...engine, title: 'other' } })).toBe(keys[0]);
  });

  it('is the SHA-256 of what is computed as sorted JSON', () => {
    for (const speed of [6000, 6001.5]) {
      const asked = { engine: { ...engine, title: '' }, speed, version: PROGRAM.version };
      const digest = createHash('sha256').update(canonicalJson(asked)).digest('hex');
      expect(jobKey({ engine, speed })).toBe(digest);
    }
  });
});

/** A toy that counts what it computes. */
function countingRunner() {
  const jobs: PointJob[] = [];
  const toy = toyRunner(({ length, speed }) => 1 / (1 + length * speed));
  return {
    jobs,
    run: (job: PointJob) => {
      jobs.push(job);
      return toy.run(job);
    },
  };
}

const variants = [0.08, 0.1, 0.12].map((length) => withLength(engine, length));
const speeds = [6000, 8000, 10_000, 12_000];

describe('a stored runner', () => {
  it('computes what is missing and nothing else', async () => {
    const whole = await sweep(variants, speeds, countingRunner());
    for (const kept of [0, 1, 7, 12]) {
      const lines: string[] = [];
      await sweep(
        variants,
        speeds,
        storedRunner(countingRunner(), new Map(), (l) => lines.push(l)),
      );
      const again: string[] = [];
      const runner = countingRunner();
      const finished = readPoints(lines.slice(0, kept).join(''));
      const table = await sweep(
        variants,
        speeds,
        storedRunner(runner, finished, (l) => again.push(l)),
      );
      expect(table).toEqual(whole);
      expect(runner.jobs).toHaveLength(12 - kept);
      expect(again).toHaveLength(12 - kept);
    }
  });

  it('computes a job asked for twice at once only once', async () => {
    const runner = countingRunner();
    const stored = storedRunner(runner, new Map(), () => {});
    const job = { engine, speed: 7000 };
    const [a, b] = await Promise.all([stored.run(job), stored.run(job)]);
    expect(a).toBe(b);
    expect(runner.jobs).toHaveLength(1);
  });
});

describe('shards', () => {
  it('are read from text', () => {
    expect(parseShard('2/5')).toEqual({ index: 2, count: 5 });
    for (const wrong of ['0/5', '6/5', '2', '2/', '-1/5', '1/2/3', '1/99999', 'a/b', '1.5/2']) {
      expect(parseShard(wrong)).toBeUndefined();
    }
  });

  it('share out every point once and fairly', () => {
    const points = tablePoints(variants, speeds);
    const shards = [1, 2, 3, 4, 5].map((index) => shardPoints(points, { index, count: 5 }));
    expect(shards.flat()).toHaveLength(12);
    expect(new Set(shards.flat()).size).toBe(12);
    expect(shards.map((shard) => shard.length)).toEqual([3, 3, 2, 2, 2]);
  });

  it('of many engines make none but their own', () => {
    const made = new Set<number>();
    const at = (i: number) => {
      made.add(i);
      return engine;
    };
    const points = tablePoints({ length: 101, at }, speeds);
    const shards = [1, 2, 3].map((index) => shardPoints(points, { index, count: 3 }));
    expect(made.size).toBe(0);
    expect(shards.map((shard) => shard.length / speeds.length)).toEqual([34, 34, 33]);
    expect(new Set(shards.flat()).size).toBe(points.length);
    for (const point of shards[1]!) expect(point.engine).toBe(engine);
    expect([...made].every((i) => i % 3 === 1)).toBe(true);
    expect(made.size).toBe(34);
  });

  it('merge into the whole', async () => {
    const texts = await Promise.all(
      [1, 2, 3].map(async (index) => {
        const lines: string[] = [];
        const runner = storedRunner(countingRunner(), new Map(), (line) => lines.push(line));
        await runPoints(shardPoints(tablePoints(variants, speeds), { index, count: 3 }), runner);
        return lines.join('');
      }),
    );
    const finished = readPoints(texts.join(''));
    expect(unfinished(tablePoints(variants, speeds), finished)).toEqual([]);
    const runner = countingRunner();
    const table = await sweep(
      variants,
      speeds,
      storedRunner(runner, finished, () => {}),
    );
    expect(runner.jobs).toHaveLength(0);
    expect(table).toEqual(await sweep(variants, speeds, countingRunner()));
  });
});
