/** Targets against tables worked by hand; the working stands beside each figure. */
import { describe, expect, it } from 'vitest';
import { leastMargin } from '../../sim/decision/floor.ts';
import { gearChangeBands } from '../../sim/decision/gearChange.ts';
import { areaUnder, leastInBands, scores, targetMean } from '../../sim/decision/target.ts';
import { tradeOff } from '../../sim/decision/tradeOff.ts';
import type { PointResult } from '../../sim/engine/point.ts';

const SPEEDS = [3000, 4000, 5000, 6000, 7000];
const BASELINE = [0.8, 0.9, 1.0, 1.0, 0.9];
const LONG = [0.9, 1.0, 1.1, 0.9, 0.7];

describe('mean over bands', () => {
  it('weighs each band by its weight', () => {
    // 3000 to 4000: (0.8 + 0.9) / 2 = 0.85; 5000 to 7000: (1.0 + 1.0) / 2, (1.0 + 0.9) / 2 -> 0.975.
    // Weights 1 and 3: (0.85 + 3 x 0.975) / 4 = 3.775 / 4 = 0.94375.
    const bands = [
      { from: 3000, to: 4000, weight: 1 },
      { from: 5000, to: 7000, weight: 3 },
    ];
    const target = { from: 3000, to: 7000, bands };
    expect(targetMean(SPEEDS, BASELINE, target)).toBeCloseTo(0.94375, 12);
  });

  it('takes ends between the speeds computed', () => {
    // 4500 to 5500 of LONG: 1.05 at 4500, 1.1 at 5000, 1.0 at 5500: (1.075 + 1.05) / 2 = 1.0625.
    expect(targetMean(SPEEDS, LONG, { from: 4500, to: 5500 })).toBeCloseTo(1.0625, 12);
  });

  it('weighs speeds inside a band', () => {
    // Weight 1 at 4000 falling to 0 at 5000, curve 0.9 rising to 1.0: int w y = 0.9/2 + 0.1/6,
    // int w = 1/2, so the mean is 0.9 + 0.1/3.
    const weights = [
      { speed: 4000, weight: 1 },
      { speed: 5000, weight: 0 },
    ];
    const target = { from: 4000, to: 5000, weights };
    expect(targetMean(SPEEDS, BASELINE, target)).toBeCloseTo(0.9 + 0.1 / 3, 12);
  });
});

describe('least in band and area', () => {
  it('finds the least at an end between speeds', () => {
    // LONG at 6500 is 0.8: lower than every speed computed inside 4500 to 6500.
    const least = leastInBands(SPEEDS, LONG, { from: 4500, to: 6500 });
    expect(least.speed).toBe(6500);
    expect(least.value).toBeCloseTo(0.8, 12);
  });

  it('finds the least at a speed computed', () => {
    const dip = [1, 0.7, 1, 1, 1];
    expect(leastInBands(SPEEDS, dip, { from: 3500, to: 5000 })).toEqual({
      value: 0.7,
      speed: 4000,
    });
  });

  it('sums trapezia', () => {
    // 850 + 950 + 1000 + 950 = 3750.
    expect(areaUnder(SPEEDS, BASELINE)).toBeCloseTo(3750, 9);
  });
});

describe('trade-off', () => {
  it('weighs gain in the band against the worst loss outside', () => {
    // Band 3000 to 5000: baseline (0.85 + 0.95) / 2 = 0.9, LONG (0.95 + 1.05) / 2 = 1.0.
    // Losses outside: 10 % at 6000, 22.2 % at 7000.
    const result = tradeOff(SPEEDS, LONG, BASELINE, { from: 3000, to: 5000 });
    expect(result.bandMean).toBeCloseTo(1.0, 12);
    expect(result.gainPercent).toBeCloseTo(100 / 9, 9);
    expect(result.worstLossPercent).toBeCloseTo(200 / 9, 9);
    expect(result.worstLossSpeed).toBe(7000);
    // (0.95 + 1.05 + 1.0 + 0.8) x 1000.
    expect(result.area).toBeCloseTo(3800, 9);
    expect(result.meetsFloors).toBe(true);
  });

  it('counts a speed between two bands as outside', () => {
    const bands = [
      { from: 3000, to: 4000 },
      { from: 6000, to: 7000 },
    ];
    const dip = [0.8, 0.9, 0.5, 1.0, 0.9];
    const result = tradeOff(SPEEDS, dip, BASELINE, { from: 3000, to: 7000, bands });
    expect(result.worstLossSpeed).toBe(5000);
    expect(result.worstLossPercent).toBeCloseTo(50, 9);
    expect(result.gainPercent).toBeCloseTo(0, 12);
  });

  it('tells the margin of every floor', () => {
    // At 6500 LONG is 0.8 and the baseline 0.95: a loss of 15.789 %.
    const floors = [
      { speed: 6500, mostLossPercent: 10 },
      { speed: 6500, least: 0.64 },
      { speed: 3000, least: 0.88, mostLossPercent: 1 },
    ];
    const result = tradeOff(SPEEDS, LONG, BASELINE, { from: 3000, to: 5000, floors });
    const margins = result.floors.map((floor) => floor.marginPercent);
    expect(margins[0]).toBeCloseTo(10 - (100 * 0.15) / 0.95, 9);
    expect(margins[1]).toBeCloseTo(25, 9); // 0.8 over 0.64
    expect(margins[2]).toBeCloseTo(100 * (0.9 / 0.88 - 1), 9); // it gains 12.5 % on the baseline
    expect(leastMargin(result.floors)).toBe(margins[0]);
    expect(result.meetsFloors).toBe(false);
  });
});

describe('score', () => {
  it('takes the figure that is asked for', () => {
    const point = { speed: 3000, volumetricEfficiency: 0.9, indicatedTorque: 210 } as PointResult;
    const outcomes = [point, { speed: 4000, failure: 'lost' }];
    expect(scores(outcomes)).toEqual([0.9, Number.NaN]);
    expect(scores(outcomes, 'indicated-torque')).toEqual([210, Number.NaN]);
  });
});

describe('gear changes', () => {
  it('drop by the ratio of the gears', () => {
    // 8000 x 1.5 / 2 = 6000, 8000 x 1.2 / 1.5 = 6400.
    expect(gearChangeBands(8000, [2, 1.5, 1.2])).toEqual([
      { from: 6000, to: 8000, weight: 1 },
      { from: 6400, to: 8000, weight: 1 },
    ]);
  });

  it('need falling ratios', () => {
    expect(() => gearChangeBands(8000, [1, 1.5])).toThrow(RangeError);
    expect(() => gearChangeBands(8000, [1])).toThrow(RangeError);
  });
});
