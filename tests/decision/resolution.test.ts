/** Between the speeds: curves whose ripple is known exactly, asked for at the speeds of the demo alone. */
import { describe, expect, test } from 'vitest';
import { feltAt } from '../../sim/decision/felt.ts';
import { speedsBetween } from '../../sim/decision/resolution.ts';
import { rippleSpacing } from '../../sim/decision/ripple.ts';
import { smoothAt } from '../../sim/decision/smooth.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { resolutionCautions, resolutionWords, rippleCautions } from '../../sim/study/resolution.ts';
import { variantStudy } from '../../sim/study/vary/compute.ts';
import { variantSentences } from '../../sim/study/vary/tell.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo, rippling, type ToyInput, toyRunner } from '../toy.ts';

const { engine, speeds, target } = readDemo('hill-climb');

describe('the smooth curve', () => {
  test('is exact for a parabola, ends and uneven points included', () => {
    const y = (x: number) => 2 - 3 * x + 0.5 * x * x;
    const xs = [0, 1, 1.5, 4];
    const at = [0, 0.3, 1, 1.2, 2, 3.9, 4];
    smoothAt(xs, xs.map(y), at).forEach((value, i) => {
      expect(value).toBeCloseTo(y(at[i]!), 12);
    });
  });

  test('comes nearer with the third power of the distance', () => {
    const worst = (count: number) => {
      const xs = Array.from({ length: count + 1 }, (_, i) => (2 * Math.PI * i) / count);
      const at = Array.from({ length: 400 }, (_, i) => (2 * Math.PI * i) / 400);
      return Math.max(
        ...smoothAt(xs, xs.map(Math.sin), at).map((y, i) => Math.abs(y - Math.sin(at[i]!))),
      );
    };
    expect(Math.log2(worst(16) / worst(32))).toBeGreaterThan(2.8);
  });

  test('knows nothing beside a point that failed', () => {
    const ys = smoothAt([0, 1, 2, 3, 4, 5], [1, 1, Number.NaN, 1, 1, 1], [0.2, 1.5, 4.5]);
    expect(ys[1]).toBeNaN();
    expect(ys[2]).toBe(1);
  });
});

test('ripple: 650 rpm apart at 5000 rpm with 90 mm, 380 at 3000 rpm with 260 mm', () => {
  // Measured on curves of the hill-climb four at steps of 50 rpm; the quarter wave leaves out both ends.
  expect(rippleSpacing(withLength(engine, 0.09), 5000)).toBeGreaterThan(550);
  expect(rippleSpacing(withLength(engine, 0.09), 5000)).toBeLessThan(700);
  expect(Math.abs(rippleSpacing(withLength(engine, 0.26), 3000) / 380 - 1)).toBeLessThan(0.1);
});

test('a table owns up to steps that see no ripple, and says nothing of steps that do', () => {
  const long = withLength(engine, 0.26);
  expect(rippleCautions([engine, long], [3000, 3400, 3800], 'sweep --vary computes it')).toEqual([
    'Computed at these 3 speeds alone: from 3000 rpm on curves ripple about every 210 rpm, too near for ' +
      'steps of 400 rpm. What lies between is not known; sweep --vary computes it.',
  ]);
  expect(rippleCautions([engine], [3000, 3400])[0]).toMatch(/not known, and not in the means\.$/);
  expect(rippleCautions([engine], [7000, 7100, 7200])).toEqual([]);
  expect(rippleCautions([engine], [7000])).toEqual([]);
});

test('the mean that is felt: of a straight line its value, of a peak what is beside it', () => {
  expect(feltAt([1000, 2000], [1, 2], 1500)).toBeCloseTo(1.5, 12);
  // A peak of 1 that falls to 0 within 50 rpm: half.
  expect(feltAt([1000, 1450, 1500, 1550, 2000], [0, 0, 1, 0, 0], 1500)).toBeCloseTo(0.5, 12);
  // At the end there is one side only.
  expect(feltAt([1000, 2000], [1, 2], 1000)).toBeCloseTo(1.025, 12);
});

const dense = Array.from({ length: 5601 }, (_, i) => 3000 + i);
const truth = (length: number) =>
  dense.map((speed) => rippling({ engine: withLength(engine, length), length, speed }));
const inside = (speed: number) => speed >= target.from && speed <= target.to;
const meanOf = (values: number[]) => {
  const band = values.filter((_, i) => inside(dense[i]!));
  return band.reduce((sum, y) => sum + y, 0) / band.length;
};
const worstOf = (length: number) => {
  const [ours, own] = [truth(length), truth(0.09)];
  const losses = dense.map((speed, i) => (inside(speed) ? 0 : 1 - ours[i]! / own[i]!));
  return 100 * Math.max(...losses);
};

describe('a study of rippling curves', async () => {
  const LENGTHS = [0.06, 0.1, 0.14, 0.18, 0.22, 0.26, 0.3];
  const asked = { engine, lengths: LENGTHS, speeds, target, refine: true };
  let points = 0;
  const observer = { onPoint: () => points++ };
  const study = await lengthStudy(asked, toyRunner(rippling), observer);
  const coarse = await lengthStudy({ ...asked, refine: false }, toyRunner(rippling));
  const { length } = study.recommended;

  test('means are met to 0.2 %, the worst loss to half a point', () => {
    expect(study.resolution).toMatchObject({ resolved: true, floors: false, open: [] });
    expect(Math.abs(study.decision.bandMean / meanOf(truth(length)) - 1)).toBeLessThan(0.002);
    expect(Math.abs(study.decision.worstLossPercent - worstOf(length))).toBeLessThan(0.5);
    for (const one of study.weighed.filter(({ known }) => known === 'all')) {
      const least = worstOf(one.length);
      expect(Math.abs(one.worstLossPercent - Math.max(0, least))).toBeLessThan(0.5);
    }
  });

  test('which the speeds of the file alone do not', () => {
    const own = coarse.weighed.find((one) => one.length === length)!;
    expect(Math.abs(own.worstLossPercent - worstOf(length))).toBeGreaterThan(0.5);
  });

  test('at the cost of few points, none of them for lengths out of contest', () => {
    expect(points).toBeLessThan(500);
    expect(study.tried.find((one) => one.length === 0.06)).not.toHaveProperty('between');
    expect(study.weighed.find((one) => one.length === 0.06)!.known).toBe('sweep');
  });

  test('is said', () => {
    expect(resolutionWords(study, 'lengths')).toMatch(
      /^Resolved to \d+ rpm: \d+ points between the speeds/,
    );
    expect(resolutionCautions(study, String)).toEqual([]);
    expect(resolutionCautions(coarse, String)[0]).toMatch(
      /^Computed at the 15 speeds listed alone, 6 of/,
    );
  });

  test('finds a floor that is broken between the speeds', async () => {
    const floors = [{ speed: 3210, mostLossPercent: 3 }];
    const hidden = ({ length: own, speed }: ToyInput) =>
      own > 0.1 && Math.abs(speed - 3210) < 150 ? 0.9 - 0.3 * (0.2 - own) ** 2 : 1 + own;
    const floored = { ...asked, target: { ...target, floors } };
    const blind = await lengthStudy({ ...floored, refine: false }, toyRunner(hidden));
    const seeing = await lengthStudy(floored, toyRunner(hidden));
    expect(blind.decision.floors[0]!.marginPercent).toBeGreaterThan(0);
    expect(blind.recommended.length).toBeGreaterThan(0.1);
    expect(seeing.decision.floors[0]!.marginPercent).toBeGreaterThan(0);
    expect(seeing.recommended.length).toBeLessThanOrEqual(0.1);
  });

  test('a step in a curve comes to the narrowest distance and is a caution', async () => {
    const jump = ({ length: own, speed }: ToyInput) => (speed > 6321 ? 1.1 : 1) + own;
    const open = await lengthStudy(asked, toyRunner(jump));
    expect(open.resolution!.resolved).toBe(false);
    expect(open.resolution!.open.length).toBeGreaterThan(0);
    expect(resolutionCautions(open, String)[0]).toMatch(/^Not resolved: at a distance of 25 rpm/);
    expect(resolutionWords(open, 'lengths')).toBe('');
  });
});

describe('values of a key, on the same rippling curves', async () => {
  const lengths = [0.06, 0.14, 0.22, 0.26];
  const keys = [
    {
      path: 'intake.trumpet.length',
      values: lengths,
      texts: lengths.map((one) => `${1e3 * one} mm`),
    },
  ];
  const asked = { baseline: engine, keys, speeds, target, refine: true };
  const engines = lengths.map((length) => withLength(engine, length));
  const study = await variantStudy({ ...asked, engines }, toyRunner(rippling));
  test('are known as well as lengths are', () => {
    expect(study.resolution).toMatchObject({ resolved: true, floors: false, open: [] });
    const best = study.recommended!;
    const length = best.values[0]!;
    expect(best.known).toBe('all');
    expect(Math.abs(best.bandMean / meanOf(truth(length)) - 1)).toBeLessThan(0.002);
    expect(Math.abs(best.worstLossPercent - worstOf(length))).toBeLessThan(0.5);
    expect(study.weighed[0]!.known).toBe('sweep');
  });

  test('and say so', () => {
    expect(variantSentences(study).at(-1)).toMatch(/^Resolved to \d+ rpm: .* variants in contest/);
  });

  test('a condition: every value is resolved in the band, none recommended', async () => {
    const condition = keys.map((key) => ({ ...key, condition: true }));
    const costs = await variantStudy({ ...asked, keys: condition, engines }, toyRunner(rippling));
    expect(costs.recommended).toBeUndefined();
    expect(costs.weighed.every(({ known }) => known !== 'sweep')).toBe(true);
  });
});

test('what to compute next hangs on the points alone', () => {
  const rule = { tolerance: 0.0025, widest: () => 400, matters: () => true };
  const xs = [3000, 3400, 3800, 4200, 4600, 5000];
  const ys = xs.map((x) => Math.sin(x / 300));
  expect(speedsBetween(xs, ys, rule)).toEqual([3200, 3600, 4000, 4400, 4800]);
  expect(speedsBetween(xs, xs, rule)).toEqual([]);
  expect(speedsBetween(xs, xs, { ...rule, widest: () => 300 })).toHaveLength(5);
  const far = { ...rule, matters: (from: number) => from >= 4200 };
  expect(speedsBetween(xs, ys, far)).toEqual([4400, 4800]);
});
