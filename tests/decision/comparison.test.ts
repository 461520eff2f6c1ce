/** Two curves beside each other: exact stand-ins. */
import { describe, expect, it } from 'vitest';
import {
  alignedTo,
  compared,
  comparison,
  frictionCurve,
  frictionTorque,
  pearson,
} from '../../sim/decision/comparison.ts';
import { quadraticDesign, quadraticThrough } from '../../sim/decision/quadraticResponse.ts';

const speeds = [3000, 3500, 4000, 4500, 5000, 5500, 6000];
const hump = (top: number) => speeds.map((x) => 100 - ((x - top) / 200) ** 2);

it('Pearson: 1 for a line, -1 for its mirror, a known value between', () => {
  expect(pearson([1, 2, 3], [5, 7, 9])).toBeCloseTo(1, 12);
  expect(pearson([1, 2, 3], [9, 7, 5])).toBeCloseTo(-1, 12);
  // Deviations (-1, 0, 1) and (-4/3, 5/3, -1/3): 1 / sqrt(2 x 42/9) = 0.32733.
  expect(pearson([1, 2, 3], [1, 4, 2])).toBeCloseTo(1 / Math.sqrt(28 / 3), 12);
});

describe('comparison', () => {
  it('finds the scale that made the run, friction taken off', () => {
    const friction = speeds.map((x) => x / 400);
    const values = hump(4400).map((y, i) => 0.8 * y - friction[i]!);
    const found = comparison({ figure: 'brake-torque', speeds, values }, hump(4400), friction);
    expect(found.scale).toBeCloseTo(0.8, 12);
    expect(found.correlation).toBeCloseTo(1, 12);
    expect(found.differencePercent).toBeCloseTo(0, 9);
    expect(found.peakError!.rpm).toBeCloseTo(0, 6);
  });

  it('states peak speeds between points: exact for parabolas', () => {
    const measured = { figure: 'volumetric-efficiency' as const, speeds, values: hump(4260) };
    const found = compared(measured, hump(4700), 1);
    expect(found.peaks.measured).toBeCloseTo(4260, 6);
    expect(found.peaks.predicted).toBeCloseTo(4700, 6);
    expect(found.peakError!.rpm).toBeCloseTo(440, 6);
    expect(found.peakError!.percent).toBeCloseTo((100 * 440) / 4260, 6);
  });

  it('names no peak at an end of the range', () => {
    const measured = { figure: 'volumetric-efficiency' as const, speeds, values: [...speeds] };
    const found = compared(measured, hump(4700), 1);
    expect(found.peaks).toEqual({ predicted: expect.closeTo(4700, 6) });
    expect(found).not.toHaveProperty('peakError');
  });
});

it('friction: Barnes-Moss 1975 by Heywood (1988) eq. 13.6, from memory', () => {
  // 4000 rpm: 0.97 + 0.6 + 0.8 = 2.37 bar; times 2 l over 4 pi = 37.72 N m.
  expect(frictionTorque(4000, 0.002)).toBeCloseTo((2.37e5 * 0.002) / (4 * Math.PI), 9);
  expect(frictionCurve({ figure: 'volumetric-efficiency', speeds }, 0.002)).toEqual(
    speeds.map(() => 0),
  );
});

describe('alignment', () => {
  it('reads straight between sparse rows, and keeps to the range of the run', () => {
    const run = { speeds: [3200, 4200, 5200], values: [10, 20, 40] };
    const found = alignedTo(speeds, run);
    expect(found.speeds).toEqual([3500, 4000, 4500, 5000]);
    expect(found.values).toEqual([13, 18, 26, 36].map((x) => expect.closeTo(x, 9)));
  });

  it('evens out many rows by a straight line: a slope stays, noise that alternates goes', () => {
    const fine = Array.from({ length: 121 }, (_, i) => 3000 + 25 * i);
    const values = fine.map((x, i) => x / 100 + (i % 2 ? 1 : -1));
    const found = alignedTo(speeds, { speeds: fine, values });
    for (const [i, speed] of found.speeds.entries()) {
      expect(Math.abs(found.values[i]! - speed / 100)).toBeLessThan(0.2);
    }
  });
});

it('a quadratic goes through its design exactly', () => {
  const f = ([x, y, z]: readonly number[]) =>
    1 + 2 * x! - y! + 3 * x! ** 2 - 2 * y! * z! + x! * z! + z! ** 2;
  const centre = [0.5, -1, 2];
  const through = quadraticThrough(
    centre,
    0.3,
    quadraticDesign(centre, 0.3).map((at) => [f(at)]),
  );
  for (const at of [
    [0, 0, 0],
    [3, -2, 1],
    [-1.5, 4, 2.5],
  ]) {
    expect(through(at, 0)).toBeCloseTo(f(at), 9);
  }
});
