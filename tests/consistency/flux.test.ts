/** Every numerical flux, given equal states, is the Euler flux of that state. */
import { expect, it } from 'vitest';
import { fluxHllc, fluxRusanov } from '../../sim/step/faces.ts';
import { use } from '../../sim/step/lanes.ts';
import { C, FLUX, LEFT, RIGHT, ROWS } from '../../sim/step/layout.ts';
import { airAndProducts } from '../gases.ts';

const gas = airAndProducts();

/** Still, slow, near sonic, supersonic both ways; hot and cold, fresh and burned. */
const STATES = [0, 30, -120, 345, -360, 700, -900].flatMap((u, i) => [
  { p: 1e5, T: 300, u, burned: 0, fuel: 0 },
  { p: 4e5 / (i + 1), T: 1400, u, burned: 0.9, fuel: 0.02 },
]);

it.each([
  ['hllc', fluxHllc],
  ['rusanov', fluxRusanov],
])('flux %s is consistent', (_name, flux) => {
  for (const { p, T, u, burned, fuel } of STATES) {
    const rho = p / (gas.gasConstant(burned, fuel) * T);
    const e = gas.internalEnergy(T, burned, fuel);
    const X = new Float64Array(2 * ROWS);
    for (const side of [LEFT, RIGHT]) X.set([rho, u, p, e, burned, fuel], side);
    for (const cell of [0, ROWS]) X[cell + C] = gas.soundSpeed(T, burned, fuel);
    use({ N: new Int32Array(0), K: new Float64Array(0), X });
    flux(0, true);
    const [mass, momentum, energy, ofBurned, ofFuel] = X.subarray(FLUX);
    const expected = rho * u;
    const enthalpy = expected * (gas.enthalpy(T, burned, fuel) + 0.5 * u * u);
    expect(Math.abs(mass! - expected)).toBeLessThan(1e-12 * rho * 400);
    expect(Math.abs(momentum! / (expected * u + p) - 1)).toBeLessThan(1e-13);
    expect(Math.abs(energy! - enthalpy)).toBeLessThan(1e-12 * p * 400);
    expect(ofBurned).toBeCloseTo(expected * burned, 10);
    expect(ofFuel).toBeCloseTo(expected * fuel, 10);
  }
});
