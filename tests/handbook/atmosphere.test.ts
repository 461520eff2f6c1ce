import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  geopotentialAltitude,
  moistAirDensity,
  saturationVapourPressure,
  standardAtmosphere,
  vapourFraction,
} from '../../sim/gas/atmosphere.ts';

const within = (ours: number, published: number, tolerance: number) =>
  expect(Math.abs(ours / published - 1)).toBeLessThan(tolerance);

describe('U.S. Standard Atmosphere 1976', () => {
  // Printed table by geometric altitude: Z, T, p, rho.
  it.each([
    [0, 288.15, 101325.0, 1.225],
    [500, 284.9, 95461.3, 1.1673],
    [1000, 281.651, 89876.3, 1.11166],
    [2000, 275.154, 79501.4, 1.00655],
    [3000, 268.659, 70121.2, 0.90925],
  ])('geometric %d m: %f K, %f Pa, %f kg/m3', (Z, T, p, rho) => {
    const air = standardAtmosphere(geopotentialAltitude(Z));
    within(air.temperature, T, 1e-5);
    within(air.pressure, p, 1e-5);
    within(moistAirDensity(air.pressure, air.temperature, 0), rho, 1e-4);
  });

  it.each([
    [500, 284.9, 95460.84],
    [1000, 281.65, 89874.56],
    [2000, 275.15, 79495.2],
  ])('geopotential %d m: %f K, %f Pa', (H, T, p) => {
    const air = standardAtmosphere(H);
    within(air.temperature, T, 1e-6);
    within(air.pressure, p, 1e-6);
  });

  it.each([-6000, 12000, Number.NaN])('refuses %d m', (H) => {
    expect(() => standardAtmosphere(H)).toThrow(RangeError);
  });
});

describe('moist air', () => {
  // CIPM-2007 (Picard et al. 2008), 400 ppm CO2: t, p, RH, density, vapour fraction.
  it.each([
    [20, 101325, 0, 1.20456, 0],
    [20, 101325, 0.5, 1.19931, 0.011589],
    [25, 101325, 0.5, 1.17732, 0.015706],
    [25, 99000, 0, 1.15712, 0],
  ])('at %d degC, %d Pa, humidity %f is %f kg/m3', (t, p, RH, rho, x) => {
    within(moistAirDensity(p, t + 273.15, RH), rho, 1e-3);
    expect(vapourFraction(p, t + 273.15, RH)).toBeCloseTo(x, 6);
  });

  it.each([
    [20, 2339.2],
    [25, 3169.8],
  ])('saturates at %d degC at %f Pa', (t, psv) => {
    within(saturationVapourPressure(t + 273.15), psv, 1e-4);
  });

  // An independent library with Hyland & Wexler's formula (ASHRAE Handbook, Fundamentals).
  it.each([0.1, 10, 20, 30, 40, 50])('agrees with psychrolib at %f degC', (t) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    within(saturationVapourPressure(t + 273.15), psychrolib.GetSatVapPres(t), 1e-3);
    const ratio = psychrolib.GetHumRatioFromRelHum(t, 0.6, 101325);
    const density = psychrolib.GetMoistAirDensity(t, ratio, 101325);
    within(moistAirDensity(101325, t + 273.15, 0.6), density, 1e-3);
  });
});
