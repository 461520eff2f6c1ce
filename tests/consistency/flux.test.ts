/** Every numerical flux of the registry, given equal states, is the Euler flux of that state. */
import { describe, expect, it } from 'vitest';
import { faceFluxes, faceStates } from '../../sim/duct/faces.ts';
import { FLUXES } from '../../sim/flux/index.ts';
import { Block } from '../../sim/kernel/arena.ts';
import { airAndProducts } from '../gases.ts';

const gas = airAndProducts();

/** Still, slow, near sonic, supersonic both ways; hot and cold, fresh and burned. */
const STATES = [0, 30, -120, 345, -360, 700, -900].flatMap((u, i) => [
  { p: 1e5, T: 300, u, burned: 0, fuel: 0 },
  { p: 4e5 / (i + 1), T: 1400, u, burned: 0.9, fuel: 0.02 },
]);

describe.each(Object.entries(FLUXES))('flux %s', (_name, numericalFlux) => {
  it('is consistent', () => {
    const n = STATES.length;
    const side = faceStates(new Block(n), 0);
    STATES.forEach(({ p, T, u, burned, fuel }, i) => {
      side.rho[i] = p / (gas.gasConstant(burned, fuel) * T);
      side.u[i] = u;
      side.p[i] = p;
      side.e[i] = gas.internalEnergy(T, burned, fuel);
      side.c[i] = gas.soundSpeed(T, burned, fuel);
      side.burned[i] = burned;
      side.fuel[i] = fuel;
    });
    const flux = faceFluxes(new Block(n));
    numericalFlux(side, side, 0, n, flux);
    STATES.forEach(({ p, T, u, burned, fuel }, i) => {
      const mass = side.rho[i]! * u;
      const energy = mass * (gas.enthalpy(T, burned, fuel) + 0.5 * u * u);
      expect(Math.abs(flux.mass[i]! - mass)).toBeLessThan(1e-12 * side.rho[i]! * 400);
      expect(Math.abs(flux.momentum[i]! / (mass * u + p) - 1)).toBeLessThan(1e-13);
      expect(Math.abs(flux.energy[i]! - energy)).toBeLessThan(1e-12 * p * 400);
      expect(flux.burned[i]).toBeCloseTo(mass * burned, 10);
      expect(flux.fuel[i]).toBeCloseTo(mass * fuel, 10);
    });
  });
});
