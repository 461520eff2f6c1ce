/** From the best length to the shelf, on tables worked by hand. */
import { describe, expect, it } from 'vitest';
import { type Fit, shelfAnswer, shelfLengths } from '../../sim/decision/shelf.ts';
import type { WeighedLength } from '../../sim/decision/tradeOff.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { readDemo, toyRunner } from '../toy.ts';

/** Means on the parabola 1 - 100 (L - 0.112)^2: best at 112 mm. */
const mean = (length: number) => 1 - 100 * (length - 0.112) ** 2;
const weighed = [0.08, 0.1, 0.112, 0.12, 0.16].map(
  (length) => ({ length, bandMean: mean(length), floors: [], meetsFloors: true }) as never,
) as WeighedLength[];
const best = weighed[2]!;

const fitting = (change: Partial<Fit>): Fit => ({
  shelf: [0.08, 0.1, 0.12, 0.16],
  cut: true,
  tolerance: 0.001,
  withinPercent: 1,
  ...change,
});

describe('shelf with a saw', () => {
  it('buys the next longer and cuts it: buy 120, cut to 112', () => {
    const answer = shelfAnswer(fitting({}), best, weighed)!;
    expect(answer).toMatchObject({ buy: 0.12, cutTo: 0.112, lossPercent: 0, good: true });
    // A millimetre either way: 100 x 0.001^2 = 1e-4 of 1, so 0.01 %.
    expect(answer.missPercent).toBeCloseTo(0.01, 6);
  });

  it('cuts nothing that already fits within the tolerance', () => {
    const answer = shelfAnswer(fitting({ shelf: [0.1, 0.1125] }), best, weighed);
    expect(answer).toEqual({ buy: 0.1125, lossPercent: 0, missPercent: 0, good: true });
  });

  it('takes the longest on sale where all are too short', () => {
    // 100 x 0.012^2 = 1.44 %: nothing on the shelf is within 1 %.
    const answer = shelfAnswer(fitting({ shelf: [0.08, 0.1] }), best, weighed)!;
    expect(answer.buy).toBe(0.1);
    expect(answer.cutTo).toBeUndefined();
    expect(answer.lossPercent).toBeCloseTo(1.44, 9);
    expect(answer.good).toBe(false);
  });

  it('minds a coarse saw', () => {
    // 12 mm out: 1.44 % at the worse side.
    const answer = shelfAnswer(fitting({ tolerance: 0.012, shelf: [0.16] }), best, weighed)!;
    expect(answer.missPercent).toBeCloseTo(1.44, 6);
    expect(answer.good).toBe(false);
  });
});

describe('shelf without a saw', () => {
  it('takes the best as sold', () => {
    // 120 mm: 100 x 0.008^2 = 0.64 %.
    const answer = shelfAnswer(fitting({ cut: false }), best, weighed)!;
    expect(answer.buy).toBe(0.12);
    expect(answer.lossPercent).toBeCloseTo(0.64, 9);
    expect(answer.good).toBe(true);
  });

  it('computes every length on sale that fits, with a saw only the longest', () => {
    expect(shelfLengths(fitting({ cut: false, longest: 0.13 }))).toEqual([0.08, 0.1, 0.12]);
    expect(shelfLengths(fitting({ longest: 0.13 }))).toEqual([0.12]);
  });

  it('has no answer where nothing fits', () => {
    expect(shelfAnswer(fitting({ cut: false, longest: 0.05 }), best, weighed)).toBeUndefined();
  });
});

describe('a study with a bonnet and a shelf', () => {
  const { engine } = readDemo('hill-climb');
  const runner = toyRunner(({ length, speed }) => 1 - ((length * speed) / 1000 - 1) ** 2);
  const ask = (change: Partial<Fit>) =>
    lengthStudy(
      {
        engine,
        lengths: [0.1, 0.12, 0.14, 0.16, 0.18],
        speeds: [5000, 6000, 7000],
        target: { from: 5000, to: 7000 },
        fit: fitting(change),
      },
      runner,
    );

  it('never recommends what does not fit', async () => {
    const study = await ask({ longest: 0.15 });
    expect(study.recommended.length).toBeLessThanOrEqual(0.15);
    expect(study.recommended.reason).toBe('at-the-end');
    expect(study.pareto.every((one) => one.length <= 0.15)).toBe(true);
  });

  it('answers with the shelf', async () => {
    const study = await ask({ shelf: [0.1, 0.2] });
    expect(study.shelf).toMatchObject({ buy: 0.2, cutTo: study.recommended.length, good: true });
  });
});
