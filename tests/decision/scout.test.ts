/** Speeds of a table of load from what was seen ahead, and what lines err between them. */
import { expect, test } from 'vitest';
import { lineChecks } from '../../sim/study/load/checks.ts';
import { scoutedSpeeds, scoutedSteps } from '../../sim/study/load/scout.ts';
import { toyPoint } from '../toy.ts';

const speeds = Array.from({ length: 41 }, (_, i) => 1000 + 200 * i);
const seen = (filling: (speed: number) => number, angles = [20, 90]) => ({
  ...{ angles, speeds },
  air: angles.map(() => speeds.map(filling)),
});
const peak = (speed: number) => 0.8 + 0.3 * Math.exp(-(((speed - 5200) / 500) ** 2));

test('speeds stand about a peak, and no line errs by more than asked', () => {
  const chosen = scoutedSpeeds(seen(peak), { limit: 0.01, most: 30 });
  const near = chosen.filter((speed) => Math.abs(speed - 5200) < 1500);
  expect(near.length).toBeGreaterThan(0.6 * chosen.length);
  const table = { angles: [8, 20, 90], speeds: chosen };
  // Nearly shut there are no waves.
  const air = table.angles.map((angle) => chosen.map((speed) => (angle < 20 ? 1 : peak(speed))));
  for (const { error } of scoutedSteps(seen(peak), { ...table, air }))
    expect(error).toBeLessThanOrEqual(0.01);
});

test('a step that misses a peak is told with its place and its row', () => {
  const only = { ...seen(peak), air: [speeds.map(() => 1), speeds.map(peak)] };
  const ends = [1000, 5000, 5400, 9000];
  const air = [8, 20, 90].map(() => [1, 1, 1, 1]);
  const steps = scoutedSteps(only, { angles: [8, 20, 90], speeds: ends, air });
  const [before] = steps;
  expect(before!.across).toBe(2);
  expect(before!.worst).toBeGreaterThan(3000);
  expect(before!.worst).toBeLessThan(5000);
  expect(before!.error).toBeGreaterThan(0.1);
});

test.each([
  ['the same at every speed', () => 0.9],
  ['not known', () => Number.NaN],
])('seven at least where the air is %s', (_, filling) => {
  const chosen = scoutedSpeeds(seen(filling), { limit: 0.01, most: 16 });
  expect(chosen).toHaveLength(7);
  expect([chosen[0], chosen.at(-1)]).toEqual([1000, 9000]);
});

test('checks stand where lines should be worst, and say what they err there', async () => {
  // Straight in speed but for a peak, a parabola in angle.
  const filling = (angle: number, speed: number) =>
    1 + (angle / 90) ** 2 + (angle > 80 ? 0.1 * Math.exp(-(((speed - 2500) / 300) ** 2)) : 0);
  const point = async (angle: number, speed: number) => toyPoint(speed, filling(angle, speed));
  const [angles, columns] = [
    [10, 30, 90],
    [1000, 2000, 3000],
  ] as const;
  const outcomes = await Promise.all(
    angles.map((angle) => Promise.all(columns.map((speed) => point(angle, speed)))),
  );
  const step = (at: number, error: number, across: number, worst: number) => ({
    ...{ at, error, across, worst },
  });
  const grid = {
    ...{ angles: [...angles], speeds: [...columns], outcomes },
    angleSteps: [step(0, 0.01, 0, 20), step(1, 0.1, 0, 60)],
    speedSteps: [step(0, 0.001, 2, 1500), step(1, 0.09, 2, 2500)],
  };
  const checks = await lineChecks(grid, point);
  expect(checks.map(({ angle, speed }) => `${angle} ${speed}`)).toEqual([
    ...['60 1000', '20 1000', '90 2500', '90 1500', '60 2500', '60 1500'],
  ]);
  const [along, , peaked, , both] = checks;
  const parabola = (1 + (1 + 9) / 18 - (1 + 4 / 9)) / (1 + 4 / 9);
  expect(along!.error).toBeCloseTo(parabola, 12);
  expect(peaked!.error).toBeLessThan(-0.04);
  // Half of what the row wide open errs comes on top.
  expect(both!.error).toBeGreaterThan(parabola);
});
