/** The way of a front against closed formulas: at rest 2 L / c, in a steady flow L / (c - u) + L / (c + u). */
import { expect, test } from 'vitest';
import { frontFrom } from '../../sim/engine/front.ts';
import { moistAirGasConstant } from '../../sim/gas/atmosphere.ts';

const STILL = { pressure: 101_325, temperature: 293.15 };
const LENGTH = 0.4;
const CELLS = 40;
const SPEED = 6000;

function steady(pressure: number, velocity: number) {
  const crankAngle = Array.from({ length: 721 }, (_, i) => i);
  const distance = Array.from({ length: CELLS }, (_, i) => ((i + 0.5) * LENGTH) / CELLS);
  const rows = (value: number) => crankAngle.map(() => distance.map(() => value));
  const wave = { distance, pressure: rows(pressure), velocity: rows(velocity) };
  return { crankAngle, wave, point: { speed: SPEED } };
}

const degrees = (seconds: number) => seconds * 6 * SPEED;

test.each([
  ['still air', 1, 0],
  ['air that flows in', 1, 60],
  ['air that flows out', 1, -40],
  ['compressed air', 1.2, 0],
] as const)('%s', (_, ratio, u) => {
  const c = Math.sqrt(1.4 * moistAirGasConstant(0) * STILL.temperature) * ratio ** (0.4 / 2.8);
  const { back, distance, crankAngle } = frontFrom(steady(ratio * STILL.pressure, u), STILL, 300);
  const expected = 300 + degrees(LENGTH / (c - u) + LENGTH / (c + u));
  // Two turns, each met within a step of a quarter of a degree.
  expect(Math.abs(back! - expected)).toBeLessThan(0.5);
  expect(Math.min(...distance)).toBeLessThan(0.01);
  expect(distance[0]).toBeCloseTo(LENGTH, 12);
  expect(crankAngle).toHaveLength(distance.length);
});

test('a front that leaves late is not back within the cycle', () => {
  expect(frontFrom(steady(STILL.pressure, 0), STILL, 700).back).toBeUndefined();
});
