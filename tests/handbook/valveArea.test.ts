import { expect, it } from 'vitest';
import { type PoppetGeometry, poppetArea } from '../../sim/boundary/valveArea.ts';

const poppet: PoppetGeometry = {
  headDiameter: 0.034,
  seatWidth: 0.0015,
  seatAngle: 45,
  portDiameter: 0.03,
  stemDiameter: 0.006,
};

// Heywood (1988) eqs. 6.7-6.9 evaluated: lift [mm], minimum area [mm2].
it.each([
  [1, 69.975],
  [2, 142.172],
  [3, 216.591],
  [4, 297.675],
  [6, 484.311],
  [8, 678.584],
  [12, 678.584],
])('at %d mm lift %f mm2', (lift, area) => {
  expect(Math.abs((poppetArea(poppet, lift / 1e3) * 1e6) / area - 1)).toBeLessThan(1e-5);
});

it('is shut at no lift and grows without a jump', () => {
  expect(poppetArea(poppet, 0)).toBe(0);
  const areas = Array.from({ length: 1201 }, (_, i) => poppetArea(poppet, i * 1e-5));
  for (let i = 1; i < areas.length; i++) {
    expect(areas[i]! - areas[i - 1]!).toBeGreaterThanOrEqual(0);
    // A curtain around the head grows by pi Dv each step at most.
    expect(areas[i]! - areas[i - 1]!).toBeLessThanOrEqual(Math.PI * 0.034 * 1e-5);
  }
});
