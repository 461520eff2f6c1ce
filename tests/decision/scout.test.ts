/** Speeds of a table of load from what was seen ahead, and what lines err between them. */
import { expect, test } from 'vitest';
import { scoutedSpeeds, scoutedSteps } from '../../sim/study/load/scout.ts';

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
