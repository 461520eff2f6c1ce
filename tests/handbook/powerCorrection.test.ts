import { expect, it } from 'vitest';
import {
  powerCorrectionDin70020,
  powerCorrectionIso1585,
  powerCorrectionSaeJ1349,
} from '../../sim/report/powerCorrection.ts';

// The standards' formulas evaluated by hand; J1349 and ISO 1585 are 1 at 990 mbar dry and 25 degC,
// DIN 70020 at 1013 mbar and 20 degC.
it.each([
  [990, 25, 1.0, 1.0, 1.0319],
  [1013.25, 20, 0.9632, 0.9627, 0.9998],
  [980, 30, 1.022, 1.0224, 1.0512],
  [950, 35, 1.0701, 1.0718, 1.0933],
  [1000, 15, 0.9684, 0.968, 1.0043],
])('at %f mbar and %d degC: J1349 %f, ISO 1585 %f, DIN 70020 %f', (mbar, t, sae, iso, din) => {
  const [p, T] = [mbar * 100, t + 273.15];
  expect(Math.abs(powerCorrectionSaeJ1349(p, T) - sae)).toBeLessThan(1e-4);
  expect(Math.abs(powerCorrectionIso1585(p, T) - iso)).toBeLessThan(1e-4);
  expect(Math.abs(powerCorrectionDin70020(p, T) - din)).toBeLessThan(1e-4);
});
