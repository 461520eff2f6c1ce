/** What the plate does between the published rows of tests/prove/throttle.ts. */
import { expect, it } from 'vitest';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';

const BORE = 0.045;
const bore = (Math.PI / 4) * BORE ** 2;
const share = (closedAngle: number, shaft: number, angle: number) =>
  butterflyOpenArea({ bore: BORE, shaftDiameter: shaft * BORE, closedAngle, rimGap: 0 }, angle) /
  bore;

it('without a shaft opens as 1 - cos psi / cos psi0', () => {
  const expected = 1 - Math.cos((40 * Math.PI) / 180) / Math.cos((5 * Math.PI) / 180);
  expect(share(5, 0, 40)).toBeCloseTo(expected, 12);
});

it('never shrinks as it opens, and does not jump where the shaft takes over', () => {
  const shares = Array.from({ length: 8501 }, (_, i) => share(5, 0.18, 5 + i / 100));
  for (let i = 1; i < shares.length; i++) {
    expect(shares[i]! - shares[i - 1]!).toBeGreaterThanOrEqual(-1e-12);
    expect(shares[i]! - shares[i - 1]!).toBeLessThan(5e-4);
  }
});

it('below its closed angle is shut', () => {
  expect(share(10, 0.2, 3)).toBe(0);
});

it('with a gap leaks as a ring when shut, and no more than the shaft lets wide open', () => {
  const plate = { bore: BORE, shaftDiameter: 0.18 * BORE, closedAngle: 8 };
  const leak = (angle: number) =>
    butterflyOpenArea({ ...plate, rimGap: 2e-5 }, angle) -
    butterflyOpenArea({ ...plate, rimGap: 0 }, angle);
  expect(leak(8) / (Math.PI * BORE * 2e-5)).toBeCloseTo(1, 9);
  expect(leak(68) / leak(8)).toBeCloseTo(
    Math.cos((68 * Math.PI) / 180) / Math.cos((8 * Math.PI) / 180),
    9,
  );
  expect(leak(90)).toBe(0);
});
