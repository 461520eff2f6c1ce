/**
 * MUSCL-Hancock, second half: the conservative update of a duct with the fluxes at its faces,
 *
 *   V dU/dt = A_left F_left - A_right F_right + V S
 *
 * The push of the side wall, p dA, is folded into the momentum fluxes face by face with the cell's
 * total pressure P, A_left (F_left - P) - A_right (F_right - P), the rest of it being in S
 * (predict.ts, where the source is named); so gas at rest in any taper stays at rest to the last bit.
 */
import type { Duct } from '../duct/duct.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { Gas } from '../gas/gas.ts';

/** Advances the duct by dt [s]. Throws NonPhysicalStateError naming duct and cell. */
export function update(duct: Duct, gas: Gas, dt: number): void {
  const { cells, mesh, flux, totalPressure } = duct;
  const { faceArea, volume } = mesh;
  let heat = 0;
  for (let i = 0; i < mesh.cells; i++) {
    const perVolume = dt / volume[i]!;
    const aL = faceArea[i]! * perVolume;
    const aR = faceArea[i + 1]! * perVolume;
    const p = totalPressure[i]!;
    cells.rho[i]! += aL * flux.mass[i]! - aR * flux.mass[i + 1]!;
    cells.momentum[i]! +=
      aL * (flux.momentum[i]! - p) - aR * (flux.momentum[i + 1]! - p) + dt * duct.wallForce[i]!;
    cells.energy[i]! += aL * flux.energy[i]! - aR * flux.energy[i + 1]! + dt * duct.wallHeat[i]!;
    cells.rhoBurned[i]! += aL * flux.burned[i]! - aR * flux.burned[i + 1]!;
    cells.rhoFuel[i]! += aL * flux.fuel[i]! - aR * flux.fuel[i + 1]!;
    heat += duct.wallHeat[i]! * volume[i]!;
  }
  duct.heatTaken += heat * dt;
  duct.refresh(gas);
  checkState(duct);
}

/** Throws NonPhysicalStateError, naming duct and cell, if the state of a duct makes no sense. */
export function checkState(duct: Duct): void {
  if (!Number.isFinite(duct.fastest)) throw nonPhysical(duct);
}

function nonPhysical(duct: Duct): NonPhysicalStateError {
  const { rho } = duct.cells;
  const { p } = duct.prim;
  const cell = p.findIndex((value, i) => !(value > 0 && rho[i]! > 0));
  return new NonPhysicalStateError({
    duct: duct.name,
    cell: Math.max(cell, 0) + 1,
    cells: duct.mesh.cells,
    density: rho[cell] ?? Number.NaN,
    pressure: p[cell] ?? Number.NaN,
  });
}
