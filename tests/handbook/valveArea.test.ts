/** Shape of the valve's area; published rows are in tests/prove/valveFlow.ts. */
import { expect, it } from 'vitest';
import { type PoppetGeometry, poppetArea } from '../../sim/boundary/valveArea.ts';

const poppet: PoppetGeometry = {
  headDiameter: 0.034,
  seatWidth: 0.0015,
  seatAngle: 45,
  portDiameter: 0.03,
  stemDiameter: 0.006,
};

it('is shut at no lift and grows without a jump', () => {
  expect(poppetArea(poppet, 0)).toBe(0);
  const areas = Array.from({ length: 1201 }, (_, i) => poppetArea(poppet, i * 1e-5));
  for (let i = 1; i < areas.length; i++) {
    expect(areas[i]! - areas[i - 1]!).toBeGreaterThanOrEqual(0);
    // A curtain around the head grows by pi Dv each step at most.
    expect(areas[i]! - areas[i - 1]!).toBeLessThanOrEqual(Math.PI * 0.034 * 1e-5);
  }
});
