/** Where a table read with straight lines wants more values. Error of a line: h^2 |f''| / 8, any text. */
import { expect, test } from 'vitest';
import {
  stepErrors,
  transposed,
  valuesBetween,
  valuesWanted,
} from '../../sim/decision/loadGrid.ts';

const parabola = (x: number) => 1 + x * x;

test('the estimate is exact for a parabola', () => {
  const xs = [1, 2, 4, 5];
  const rows = xs.map((x) => [parabola(x), 7]);
  const steps = stepErrors(xs, rows);
  for (const { at, error } of steps) {
    const [low, high] = [xs[at]!, xs[at + 1]!];
    const line = 0.5 * (parabola(low) + parabola(high));
    const real = line - parabola(0.5 * (low + high));
    expect(error).toBeCloseTo(real / line, 12);
  }
});

test('a straight line wants nothing between; a cell without a figure counts for nothing', () => {
  const steps = stepErrors([0, 1, 2, 3], [[1], [2], [3], [4]]);
  expect(steps.every(({ error }) => error < 1e-12)).toBe(true);
  const holed = stepErrors(
    [0, 1, 2, 3],
    [
      [1, 1],
      [2, Number.NaN],
      [3, 3],
      [4, 4],
    ],
  );
  expect(holed.every(({ error }) => error < 1e-12)).toBe(true);
});

test('worst first, at most the room there is, and never a value twice', () => {
  const steps = [
    { at: 0, error: 0.03 },
    { at: 1, error: 0.05 },
    { at: 2, error: 0.02 },
    { at: 3, error: 0.004 },
  ];
  const xs = [0, 10, 20, 30, 40];
  const between = (room: number, rounded = (x: number) => x) =>
    valuesBetween(xs, steps, { limit: 0.01, room, rounded });
  // Lines err with the square of the part: 0.03 in two, 0.05 in three, 0.02 in two.
  expect(between(9).map((x) => 3 * x)).toEqual([15, 40, 50, 75].map((x) => expect.closeTo(x, 9)));
  expect(between(2)).toEqual([5, 15]);
  expect(between(1)).toEqual([15]);
  expect(between(0)).toEqual([]);
  expect(between(9, (x) => 10 * Math.round(x / 10))).toEqual([]);
  expect(valuesWanted(steps, 0.01)).toBe(9);
});

test('cutting the worst steps of a bent curve brings all below the limit', () => {
  const curve = (x: number) => 1 / (1 + x * x);
  let xs = [0, 1, 2, 3, 4, 5, 6];
  for (let round = 0; round < 40; round++) {
    const steps = stepErrors(
      xs,
      xs.map((x) => [curve(x)]),
    );
    const more = valuesBetween(xs, steps, { limit: 0.01, room: 99, rounded: (x) => x });
    if (more.length === 0) break;
    xs = [...xs, ...more].sort((a, b) => a - b);
  }
  for (let i = 1; i < xs.length; i++) {
    const [low, high] = [xs[i - 1]!, xs[i]!];
    const real = curve(0.5 * (low + high));
    expect(Math.abs(0.5 * (curve(low) + curve(high)) - real) / real).toBeLessThan(0.012);
  }
  expect(transposed([[1, 2]])).toEqual([[1], [2]]);
});
