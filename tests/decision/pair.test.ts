/** Two ways beside each other, and lengths by their means alone: curves whose ripple is known exactly, at the speeds of the demo. */
import { describe, expect, test } from 'vitest';
import { lengthsInBand, onceOnly } from '../../sim/study/airbox/lengths.ts';
import { together } from '../../sim/study/contest.ts';
import { resolvedPair } from '../../sim/study/pair.ts';
import { resolutionWords } from '../../sim/study/resolution.ts';
import { weighedAgainst } from '../../sim/study/weigh.ts';
import type { PointJob } from '../../sim/sweep/runner.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo, rippling, toyRunner } from '../toy.ts';

const { engine, speeds, target } = readDemo('hill-climb');
const [LONG, SHORT] = [0.26, 0.09];
const engines = [withLength(engine, LONG), withLength(engine, SHORT)] as const;

const dense = Array.from({ length: 5601 }, (_, i) => 3000 + i);
const inside = (speed: number) => speed >= target.from && speed <= target.to;
const truth = (length: number, speed: number) =>
  rippling({ engine: withLength(engine, length), length, speed });
const meanOf = (length: number) => {
  const band = dense.filter(inside).map((speed) => truth(length, speed));
  return band.reduce((sum, y) => sum + y, 0) / band.length;
};
const gain = 100 * (meanOf(LONG) / meanOf(SHORT) - 1);
const loss = Math.max(
  ...dense
    .filter((speed) => !inside(speed))
    .map((speed) => 100 * (1 - truth(LONG, speed) / truth(SHORT, speed))),
);

describe('two ways', async () => {
  const asked = { engines, speeds, target };
  const pair = await resolvedPair({ ...asked, refine: true }, toyRunner(rippling));
  const alone = await resolvedPair(asked, toyRunner(rippling));

  test('are known to 0.2 % of a mean and half a point of loss', () => {
    expect(pair.resolution).toMatchObject({ resolved: true, floors: false, open: [] });
    expect(Math.abs(pair.weighed.gainPercent - gain)).toBeLessThan(0.2);
    expect(Math.abs(pair.weighed.worstLossPercent - loss)).toBeLessThan(0.5);
    expect(resolutionWords({ ...asked, ...pair }, 'two ways')).toMatch(
      /^Resolved to \d+ rpm: \d+ points between the speeds of the file, for the two ways in contest/,
    );
  });

  test('which at the speeds of the file alone they are not', () => {
    expect(alone).not.toHaveProperty('resolution');
    expect(alone.ours).not.toHaveProperty('between');
    expect(Math.abs(alone.weighed.worstLossPercent - loss)).toBeGreaterThan(0.5);
  });

  test('one is weighed against another that was not computed beside it as if it were', () => {
    expect(weighedAgainst(asked, pair.ours, pair.theirs)).toEqual(pair.weighed);
    expect(weighedAgainst(asked, alone.ours, alone.theirs)).toEqual(alone.weighed);
  });
});

describe('lengths by their means', async () => {
  const LENGTHS = [0.06, 0.1, 0.14, 0.18, 0.22, 0.26, 0.3];
  const seen: PointJob[] = [];
  const toy = toyRunner(rippling);
  const runner = onceOnly({
    run: (job) => {
      seen.push(job);
      return toy.run(job);
    },
  });
  const asked = { engine, lengths: LENGTHS, speeds, target, refine: true };
  const found = await lengthsInBand(asked, runner, {});

  test('are right to 0.2 % where they are in contest', () => {
    expect(found.resolution).toMatchObject({ resolved: true, open: [] });
    const fine = LENGTHS.filter((_, i) => !found.means[i]!.coarse);
    expect(fine.length).toBeGreaterThan(1);
    expect(fine.length).toBeLessThan(LENGTHS.length);
    for (const length of fine) {
      const { mean } = found.means[LENGTHS.indexOf(length)]!;
      expect(Math.abs(mean / meanOf(length) - 1)).toBeLessThan(0.002);
    }
    const best = Math.max(...found.means.map(({ mean }) => mean));
    expect(found.means.find(({ mean }) => mean === best)!.coarse).toBe(false);
  });

  test('and ask for no speed far outside the band, and for none twice', () => {
    const asked = seen.map(({ engine: { intake }, speed }) => `${intake.trumpet.length} ${speed}`);
    expect(new Set(asked).size).toBe(asked.length);
    const ask = seen.map(({ speed }) => speed);
    expect(Math.min(...ask)).toBe(5400);
    expect(Math.max(...ask)).toBe(7400);
  });

  test('what is asked for twice is computed once', async () => {
    const before = seen.length;
    const job = { engine: engines[0], speed: 6000 };
    const [one, again] = [await runner.run(job), await runner.run(job)];
    expect(seen.length).toBe(before + 1);
    expect(again).toBe(one);
    await runner.run({ ...job, speed: 6001 });
    expect(seen.length).toBe(before + 2);
  });

  test('without lengths nothing is resolved', async () => {
    const none = await lengthsInBand({ ...asked, lengths: [] }, runner, {});
    expect(none.means).toEqual([]);
    expect(none).not.toHaveProperty('resolution');
  });
});

test('several contests together are as well known as the worst of them', () => {
  const one = {
    step: 50,
    meanPercent: 0.1,
    lossPoints: 0.4,
    floors: false,
    resolved: true,
    open: [],
    points: 3,
  };
  const other = { ...one, step: 25, lossPoints: 0.7, resolved: false, open: [0.2], points: 4 };
  expect(together([one, other])).toEqual({
    ...one,
    ...{ step: 25, lossPoints: 0.7, resolved: false, points: 7 },
  });
});
