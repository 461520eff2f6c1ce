/** Single parts of the spray against closed forms and published constants. */
import { describe, expect, test } from 'vitest';
import { deliveredAfterStep, leanTime } from '../../sim/decision/tipIn.ts';
import { type FuelName, fuelNamed } from '../../sim/gas/fuel.ts';
import { FUEL_COMPONENTS, latentHeatMolar, molarMassOfFuel } from '../../sim/gas/fuelComponent.ts';
import { liquidEnergy, liquidFuel } from '../../sim/spray/liquidFuel.ts';
import { shares } from '../../sim/spray/metering.ts';
import { MouthCloud } from '../../sim/spray/mouthCloud.ts';
import { gravityOf } from '../../sim/spray/parcels.ts';
import { sprayLedger } from '../../sim/spray/sprayLedger.ts';
import { evenlySpread, jetSpeed, rosinRammler } from '../../sim/spray/spraySource.ts';
import { outerShare } from '../../sim/spray/staging.ts';
import {
  catchEfficiency,
  depositionVelocity,
  splashWeber,
  wallImpact,
} from '../../sim/spray/wallImpact.ts';

describe('injector', () => {
  test.each([1.5, 2.2, 3.5])('drops of spread %d have the Sauter mean asked for', (spread) => {
    const n = 4000;
    const size = rosinRammler(80e-6, spread);
    const d = Array.from({ length: n }, (_, k) => size(evenlySpread(k, 0)));
    // Equal volumes: the Sauter mean is the harmonic mean.
    const sauter = n / d.reduce((sum, x) => sum + 1 / x, 0);
    expect(Math.abs(sauter / 80e-6 - 1)).toBeLessThan(0.01);
  });

  test('petrol at 3 bar leaves at 29 m/s (Bernoulli)', () => {
    expect(jetSpeed(3e5, 719)).toBeCloseTo(28.89, 2);
  });
});

describe('liquid fuel', () => {
  const parts = [
    ['iso-octane', 'isoOctane'],
    ['n-heptane', 'heptane'],
    ['ethanol', 'ethanol'],
    ['methanol', 'methanol'],
  ] as const;
  test.each(parts)(
    '%s: latent heat by constant heat capacity is within 3 % of the table up to 320 K',
    (name, key) => {
      const fuel = liquidFuel(name as FuelName);
      const component = FUEL_COMPONENTS[key];
      const M = molarMassOfFuel(component);
      const cp = fuelNamed(name as FuelName).vapourHeatCapacity;
      for (const T of [270, 298.15, 320]) {
        const vapour = cp(0.5 * (T + 298.15)) * (T - 298.15);
        const latent = vapour - liquidEnergy(fuel, Float64Array.of(1), T);
        expect(Math.abs(latent / (latentHeatMolar(component, T) / M) - 1)).toBeLessThan(0.03);
      }
    },
  );

  test('petrol has a vapour pressure of 45 to 60 kPa at 37.8 degC (EN 228, summer, from memory)', () => {
    const fuel = liquidFuel('petrol');
    const moles = fuel.parts.map(({ share, molarMass }) => share / molarMass);
    const total = moles.reduce((sum, n) => sum + n, 0);
    const pressure = fuel.parts.reduce(
      (sum, { a, b, c }, i) => sum + (moles[i]! / total) * Math.exp(a - b / (310.93 + c)),
      0,
    );
    expect(pressure).toBeGreaterThan(45e3);
    expect(pressure).toBeLessThan(60e3);
  });
});

describe('wall impact (Bai & Gosman, constants from memory)', () => {
  const fuel = liquidFuel('iso-octane');
  const speedOf = (weber: number, d: number) =>
    Math.sqrt((weber * fuel.surfaceTension) / (fuel.density * d));
  const d = 100e-6;
  const laplace = (fuel.density * fuel.surfaceTension * d) / fuel.viscosity ** 2;

  test.each([
    [1, 'film'],
    [10, 'rebound'],
    [100, 'film'],
    [1.1 * splashWeber(laplace), 'splash'],
  ])('at We %d: %s', (weber, kind) => {
    expect(wallImpact(fuel, d, speedOf(weber, d), 10, 0.5).kind).toBe(kind);
  });

  test('a splash never throws up more than the drop, and smaller drops', () => {
    for (const q of [0, 0.3, 0.7, 0.99]) {
      const impact = wallImpact(fuel, d, 60, 10, q);
      if (impact.kind !== 'splash') throw new Error('no splash');
      expect(impact.share).toBeLessThanOrEqual(1);
      expect(impact.sizeRatio).toBeLessThan(1);
    }
  });

  test('catching and deposition run from none to their limits', () => {
    expect(catchEfficiency(0)).toBe(0);
    expect(catchEfficiency(1e3)).toBeCloseTo(1, 2);
    expect(depositionVelocity(0.1)).toBe(0);
    expect(depositionVelocity(22.8)).toBeCloseTo(0.17, 2);
    expect(depositionVelocity(15000)).toBeCloseTo(0.169, 3);
  });
});

describe('staging', () => {
  const staging = { speed: [4000, 6000], share: [0, 0.6], fromLoad: 0.5, loadBlend: 0.2 };
  test.each([
    [3000, 1, 0],
    [5000, 1, 0.3],
    [8000, 1, 0.6],
    [8000, 0.6, 0.3],
    [8000, 0.4, 0],
  ])('at %d rpm and load %d the share is %d', (speed, load, share) => {
    expect(outerShare(staging, speed, load)).toBeCloseTo(share, 12);
  });

  test('the others share by their flow', () => {
    const list = [{ flow: 1 }, { flow: 3 }, { flow: 2 }];
    expect(shares({ list, staging }, 0.2)).toEqual([0.2, 0.6000000000000001, 0.2]);
  });
});

describe('two-parameter film (exact solution of the model, Aquino 1981, from memory)', () => {
  const film = { share: 0.3, time: 0.4 };
  test('delivers 1 - X at once and closes by exp(-t/tau)', () => {
    expect(deliveredAfterStep(film, 0)).toBeCloseTo(0.7, 12);
    expect(Math.abs(deliveredAfterStep(film, 0.4) - (0.7 + 0.3 * (1 - Math.exp(-1))))).toBeLessThan(
      1e-3,
    );
    expect(leanTime(film, 0.05)).toBeCloseTo(0.4 * Math.log(6), 12);
  });
});

describe('gravity on drops', () => {
  test.each([
    [0, 9.80665, 0],
    [30, 9.80665 * Math.sqrt(0.75), -9.80665 / 2],
    [90, 0, -9.80665],
    [180, -9.80665, 0],
  ])('leaning %d deg: along and away from the injectors', (lean, along, across) => {
    expect(gravityOf(lean).along).toBeCloseTo(along, 10);
    expect(gravityOf(lean).across).toBeCloseTo(across, 10);
  });
});

describe('cloud in front of the mouth', () => {
  test('comes back as far as the half sphere reaches, and no more', () => {
    const ledger = sprayLedger();
    const cloud = new MouthCloud(1e-3, 4e-4);
    // Its front has come half as far as the gas by itself would.
    cloud.out(0.2, 1e-6, -0.3, ledger);
    const reach = 0.05;
    cloud.in((2 / 3) * Math.PI * reach ** 3);
    expect(cloud.back.mass).toBeCloseTo(0.5e-6, 15);
    cloud.in(1);
    expect(cloud.back.mass).toBeCloseTo(1e-6, 15);
    expect(cloud.back.energy).toBeCloseTo(-0.3, 12);
  });

  test('loses after an induction what lies out of reach', () => {
    const ledger = sprayLedger();
    const cloud = new MouthCloud(1e-3, 4e-4);
    cloud.out(0.5, 1e-6, 0, ledger);
    cloud.in(3e-4);
    const left = cloud.mass;
    expect(left).toBeGreaterThan(0);
    cloud.out(0.01, 0, 0, ledger);
    expect(ledger.lostMass).toBeCloseTo(left, 18);
    expect(cloud.mass).toBe(0);
  });
});
