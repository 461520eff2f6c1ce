/**
 * The nozzle of tests/prove/cases/nozzleFlow.ts cell by cell; what is published of it is checked in
 * tests/prove/gasDynamics.ts.
 */
import { describe, expect, it } from 'vitest';
import { AIR_R } from '../gases.ts';
import { massFluxes } from '../network.ts';
import { machAt, nozzleArea, P0, shockedNozzle, T0 } from '../prove/cases/nozzleFlow.ts';

describe('nozzle with a shock at pe/p0 = 0.6784', () => {
  const { duct, mach, shock } = shockedNozzle();
  const x = mach.map((_, i) => (i + 0.5) * duct.mesh.dx);

  it('passes one mass flow everywhere, the choked one of the throat, within 0.1 %', () => {
    // p0/sqrt(R T0) psi*, psi* = 0.684731 (NACA Report 1135).
    const choked = (0.684731 * P0) / Math.sqrt(AIR_R * T0);
    // The shock itself never lies quite still between its cells.
    const off = massFluxes(duct)
      .map((flux, face) => (flux * duct.mesh.faceArea[face]!) / choked - 1)
      .filter((_, face) => Math.abs(face - (shock + 1)) > 2);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(1e-3);
  });

  it('has the isentropic Mach number up to two cells of the shock within 0.5 %', () => {
    const worst = mach.slice(0, shock - 2).reduce((most, m, i) => {
      // Within a cell of the throat both branches meet and M against A is vertical.
      if (Math.abs(x[i]! - 1.5) < 1.5 * duct.mesh.dx) return most;
      const exact =
        x[i]! < 1.5 ? machAt(nozzleArea(x[i]!), 0.01, 1) : machAt(nozzleArea(x[i]!), 1, 4);
      return Math.max(most, Math.abs(m / exact - 1));
    }, 0);
    expect(worst).toBeLessThan(5e-3);
  });
});
