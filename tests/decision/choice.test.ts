/** The choice among lengths and the Pareto set against tables worked by hand. */
import { describe, expect, it } from 'vitest';
import { bestOf, lengthToTry } from '../../sim/decision/choice.ts';
import type { FloorMargin } from '../../sim/decision/floor.ts';
import { paretoSet } from '../../sim/decision/pareto.ts';

const LENGTHS = [0.1, 0.12, 0.14, 0.16];

const choices = (means: number[], margins?: number[]) =>
  means.map((bandMean, i) => ({
    bandMean,
    floors: margins ? [{ marginPercent: margins[i]! } as FloorMargin] : [],
  }));

describe('best of several', () => {
  it('has the greatest mean', () => {
    expect(bestOf(choices([0.9, 1.0, 0.95, 0.8]))).toBe(1);
  });

  it('meets the floors first', () => {
    expect(bestOf(choices([0.9, 1.0, 0.95, 0.8], [1, -0.1, 0, 2]))).toBe(2);
  });

  it('misses by least where no length meets them', () => {
    expect(bestOf(choices([0.9, 1.0, 0.95, 0.8], [-4, -3, -0.5, -2]))).toBe(2);
  });

  it('is never a curve that failed', () => {
    expect(bestOf(choices([Number.NaN, 0.5, Number.NaN, 0.4]))).toBe(1);
  });
});

describe('length to try', () => {
  it('is the top of the parabola', () => {
    // Through (120, 0.96), (140, 1.0), (160, 0.98): slopes 2 and -1 per gap, zero two thirds of the
    // way from 130 to 150, at 143.33 mm.
    expect(lengthToTry(LENGTHS, choices([0.9, 0.96, 1.0, 0.98]))).toBe(0.143);
  });

  it('stops where the floor begins', () => {
    // Means rise to 160 mm, the floor holds up to 120 mm with 1 % left and misses by 3 % at 140 mm:
    // it crosses a quarter of the way, at 125 mm.
    expect(lengthToTry(LENGTHS, choices([0.9, 0.96, 1.0, 1.01], [2, 1, -3, -5]))).toBe(0.125);
  });

  it('takes the top where it lies on the safe side of the floor', () => {
    const free = lengthToTry(LENGTHS, choices([0.9, 0.98, 0.985, 0.9]));
    expect(lengthToTry(LENGTHS, choices([0.9, 0.98, 0.985, 0.9], [1, 3, 2, -1]))).toBe(free);
  });

  it('seeks the least miss where no length meets the floors', () => {
    // Margins -3, -1, -1, -3: the parabola tops midway between 120 and 140 mm.
    expect(lengthToTry(LENGTHS, choices([0.9, 0.96, 1.0, 1.01], [-3, -1, -1, -3]))).toBe(0.13);
  });
});

describe('Pareto set', () => {
  it('keeps what no other beats', () => {
    const table = [
      { name: 'a', gainPercent: 3, worstLossPercent: 4 },
      { name: 'b', gainPercent: 2, worstLossPercent: 1 },
      { name: 'c', gainPercent: 1.5, worstLossPercent: 2 }, // beaten by b in both
      { name: 'd', gainPercent: 3, worstLossPercent: 5 }, // as much as a, dearer
      { name: 'e', gainPercent: 0, worstLossPercent: 0 }, // the baseline gives and takes nothing
      { name: 'f', gainPercent: Number.NaN, worstLossPercent: 0 }, // failed
      { name: 'g', gainPercent: -1, worstLossPercent: 0 }, // worse than e at the same price
    ];
    expect(paretoSet(table).map((choice) => choice.name)).toEqual(['a', 'b', 'e']);
  });

  it('keeps equal choices', () => {
    const twin = { gainPercent: 1, worstLossPercent: 1 };
    expect(paretoSet([twin, { ...twin }])).toHaveLength(2);
  });
});
