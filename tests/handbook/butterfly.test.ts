import { expect, it } from 'vitest';
import { butterflyOpenArea } from '../../sim/boundary/butterfly.ts';

const BORE = 0.045;
const bore = (Math.PI / 4) * BORE ** 2;
const share = (closedAngle: number, shaft: number, angle: number) =>
  butterflyOpenArea({ bore: BORE, shaftDiameter: shaft * BORE, closedAngle }, angle) / bore;

// Heywood (1988) eq. 7.18 evaluated: closed angle, shaft over bore, plate angle, open share.
it.each([
  [5, 0.18, 5, 0],
  [5, 0.18, 6, 0.001675],
  [5, 0.18, 7, 0.003653],
  [5, 0.18, 10, 0.011401],
  [5, 0.18, 15, 0.030305],
  [5, 0.18, 20, 0.056563],
  [5, 0.18, 30, 0.130262],
  [5, 0.18, 50, 0.352992],
  [5, 0.18, 70, 0.646936],
  [5, 0.18, 85, 0.772061],
  [10, 0.2, 11, 0.003218],
  [10, 0.2, 20, 0.045642],
  [10, 0.2, 60, 0.487246],
  [10, 0.2, 90, 0.74706],
  [0, 0.2, 1, 0.000152],
  [0, 0.2, 30, 0.133401],
  [0, 0.2, 70, 0.644321],
])('plate shut at %d deg, shaft %f: at %d deg %f of the bore is open', (shut, shaft, at, open) => {
  expect(Math.abs(share(shut, shaft, at) - open)).toBeLessThan(1e-5);
});

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
