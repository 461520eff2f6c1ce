import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  moistAirDensity,
  saturationVapourPressure,
  standardAtmosphere,
} from '../../sim/gas/atmosphere.ts';

const within = (ours: number, published: number, tolerance: number) =>
  expect(Math.abs(ours / published - 1)).toBeLessThan(tolerance);

/** Published rows are in tests/prove/atmosphere.ts. */
describe('standard atmosphere', () => {
  it.each([-6000, 12000, Number.NaN])('refuses %d m', (H) => {
    expect(() => standardAtmosphere(H)).toThrow(RangeError);
  });
});

describe('moist air', () => {
  // An independent library with Hyland & Wexler's formula (ASHRAE Handbook, Fundamentals).
  it.each([0.1, 10, 20, 30, 40, 50])('agrees with psychrolib at %f degC', (t) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    within(saturationVapourPressure(t + 273.15), psychrolib.GetSatVapPres(t), 1e-3);
    const ratio = psychrolib.GetHumRatioFromRelHum(t, 0.6, 101325);
    const density = psychrolib.GetMoistAirDensity(t, ratio, 101325);
    within(moistAirDensity(101325, t + 273.15, 0.6), density, 1e-3);
  });
});
