/** What counts as the price: losses outside the bands, whatever is lost inside them. */
import { describe, expect, test } from 'vitest';
import { tradeOff } from '../../sim/decision/tradeOff.ts';
import { reportText } from '../../sim/report/report.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { sweepReport } from '../../sim/study/length/report.ts';
import { sweepDocument } from '../../sim/study/length/tables.ts';
import { readDemo, toyRunner } from '../toy.ts';

const speeds = [4000, 5000, 6000, 7000, 8000];
const flat = speeds.map(() => 1);
const band = { from: 5000, to: 7000 };

describe('a curve that loses most inside the band', () => {
  test('the price is the worst of the speeds outside it', () => {
    const lost = tradeOff(speeds, [0.97, 1.3, 0.6, 1.3, 0.99], flat, band);
    expect(lost.worstLossPercent).toBeCloseTo(3, 12);
    expect(lost.worstLossSpeed).toBe(4000);
    expect(lost.least).toBe(0.6);
    expect(lost.leastSpeed).toBe(6000);
  });

  test('what is lost inside is said apart, with the stretches where it wins and loses', () => {
    const lost = tradeOff(speeds, [0.97, 1.3, 0.6, 1.3, 0.99], flat, band);
    expect(lost.bandLossPercent).toBeCloseTo(40, 12);
    expect(lost.bandLossSpeed).toBe(6000);
    // Straight from 0.6 to 1.3: over +-50 rpm the mean loss is 40 - 70 x 25 / 1000.
    expect(lost.feltBandLossPercent).toBeCloseTo(38.25, 12);
    // Zero between 4000 and 5000 at 3 of 33, between 5000 and 6000 at 30 of 70, and so on.
    const ends = lost.stretches.map(({ from, to }) => [from, to].map(Math.round));
    expect(ends).toEqual([
      [4000, 4091],
      [4091, 5429],
      [5429, 6571],
      [6571, 7968],
      [7968, 8000],
    ]);
    const extremes = lost.stretches.map(({ changePercent, speed }) => [
      Math.round(changePercent),
      speed,
    ]);
    expect(extremes).toEqual([
      [-3, 4000],
      [30, 5000],
      [-40, 6000],
      [30, 7000],
      [-1, 8000],
    ]);
  });

  test('none outside: no price, and no speed for it', () => {
    const lost = tradeOff(speeds, [1.01, 1.3, 0.6, 1.3, 1.02], flat, band);
    expect(lost.worstLossPercent).toBe(0);
    expect(lost).not.toHaveProperty('worstLossSpeed');
  });

  test('between two bands is outside', () => {
    const bands = [
      { from: 4000, to: 5000 },
      { from: 7000, to: 8000 },
    ];
    const lost = tradeOff(speeds, [0.5, 1.6, 0.9, 1.6, 0.5], flat, { from: 4000, to: 8000, bands });
    expect(lost.worstLossPercent).toBeCloseTo(10, 12);
    expect(lost.worstLossSpeed).toBe(6000);
  });

  test('a point that failed inside does not hide the price', () => {
    const lost = tradeOff(speeds, [0.97, 1, Number.NaN, 1, 1], flat, band);
    expect(lost.worstLossPercent).toBeCloseTo(3, 12);
    const outside = tradeOff(speeds, [Number.NaN, 1, 1, 1, 0.9], flat, band);
    expect(outside.worstLossPercent).toBeNaN();
  });
});

test('what is printed of such a length', async () => {
  const scenario = readDemo('hill-climb');
  const { engine, speeds: own, target } = scenario;
  // 180 mm: 40 % less at 6200 rpm and much more round it, 2 % less at 8200 rpm alone.
  const runner = toyRunner(({ length, speed }) => {
    if (length !== 0.18) return 1;
    if (speed === 6200) return 0.6;
    return speed === 8200 ? 0.98 : 1.2;
  });
  const study = await lengthStudy({ engine, lengths: [0.06, 0.18], speeds: own, target }, runner);
  expect(study.recommended.length).toBe(0.18);
  const text = reportText(sweepReport(study, scenario)).join('\n');
  expect(text).toContain('at worst 2.0 % less, at 8200 rpm');
  expect(text).toMatch(/^ +180 .* 2\.0 +8200 .*take this$/m);
  const document = sweepDocument(study, scenario);
  const { recommended, trade_offs } = document;
  expect(recommended).toMatchObject({ worst_loss_outside_band_percent: 2, at_rpm: 8200 });
  expect(trade_offs.at(-1)).toMatchObject({
    worst_loss_outside_band_percent: 2,
    at_rpm: 8200,
    least_in_band: 0.6,
    least_at_rpm: 6200,
  });
});
