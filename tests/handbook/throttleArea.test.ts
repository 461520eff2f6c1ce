/** Both ends of the plate's travel; the way between is our own, no source. */
import { expect, it } from 'vitest';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';
import { throttleArea } from '../../sim/loss/throttleArea.ts';

const throttle = {
  length: 0.055,
  bore: 0.045,
  shaftPosition: 0.027,
  shaftDiameter: 0.008,
  closedAngle: 5,
  angle: 90,
  openLoss: 0.2,
  dischargeCoefficient: 0.75,
};
const bore = (Math.PI / 4) * throttle.bore ** 2;

it('wide open loses the stated dynamic heads', () => {
  expect(throttleArea(throttle)).toBeCloseTo(bore / Math.sqrt(1.2), 12);
});

it('just open is an orifice of the open area', () => {
  const orifice = 0.75 * butterflyOpenArea(throttle, 8);
  expect(throttleArea(throttle, 8) / orifice).toBeGreaterThan(1);
  expect(throttleArea(throttle, 8) / orifice).toBeLessThan(1.001);
});

it('opens all the way and is shut at its stop', () => {
  expect(throttleArea(throttle, 5)).toBeLessThan(1e-15 * bore);
  const areas = Array.from({ length: 86 }, (_, i) => throttleArea(throttle, 5 + i));
  for (let i = 1; i < areas.length; i++) expect(areas[i]!).toBeGreaterThanOrEqual(areas[i - 1]!);
});
