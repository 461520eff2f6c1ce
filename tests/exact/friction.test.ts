/** Slow flow heated by the wall. Fanno and Rayleigh rows are in tests/prove/gasDynamics.ts. */
import { describe, expect, it } from 'vitest';
import { viscosity } from '../../sim/gas/viscosity.ts';
import { perfectAir } from '../gases.ts';
import { ductStanton } from '../handbook/ductHeat.ts';
import { DIAMETER, LENGTH, P0, steadyPipe, T0 } from '../prove/cases/steadyPipe.ts';

const gas = perfectAir();

describe('slow flow heated by the wall', () => {
  it('nears the wall temperature as exp(-4 St x / D), St of the unsteady correlation', () => {
    const wall = 380;
    const roughness = 1e-5;
    const options = { wallTemperature: () => wall, roughness };
    const duct = steadyPipe({ cells: 80, back: 0.99 * P0, time: 0.6, options });
    const factor = (momentum: number, i: number) =>
      ductStanton((momentum * DIAMETER) / viscosity(duct.prim.T.at(i)));
    const stanton = duct.cells.momentum
      .map(factor)
      .reduce((sum, one) => sum + one / duct.mesh.cells, 0);
    expect(stanton).toBeGreaterThan(0.003);
    const left = Math.exp((-4 * stanton * LENGTH) / DIAMETER);
    const [rho, u, p] = duct.endState('high') as [number, number, number];
    // Total temperature: the law is one of enthalpy.
    const exit = p / (rho * gas.rAir) + (0.5 * u ** 2) / (3.5 * gas.rAir);
    expect(Math.abs((exit - (wall - left * (wall - T0))) / (wall - T0))).toBeLessThan(5e-3);
  });
});
