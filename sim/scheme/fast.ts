/**
 * The scheme on the WebAssembly kernel, for the van Leer limiter and the HLLC flux: what predict.ts,
 * hllc.ts and update.ts do, to the last bit the same. Source: as there.
 */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import type { Arena } from '../kernel/arena.ts';
import { BURNED, FUEL, P, RHO, U } from '../kernel/fields.ts';
import { checkState } from './update.ts';
import { COLBURN } from './wallSource.ts';

/** Order of the values in the state at an end of a duct. */
const BEYOND = [RHO, U, P, BURNED, FUEL];

/** Whether all ducts and the gas lie where the kernel can reach them. */
export function kernelReaches(ducts: readonly Duct[], gas: Gas): boolean {
  return ducts.every(({ block }) => block.arena?.addressOf(gas.table) !== undefined);
}

/** As `predict` of predict.ts, for a step dt [s]. */
export function fastPredict(duct: Duct, gas: Gas, dt: number): void {
  const { block, endState, mesh } = duct;
  for (let k = 0; k < BEYOND.length; k++) {
    block.beyond(BEYOND[k]!, 'low', endState.low[k]!);
    block.beyond(BEYOND[k]!, 'high', endState.high[k]!);
  }
  const kernel = kernelWith(block.arena!, gas);
  kernel.predict(block.address, block.rowLength, block.cells, mesh.dx, dt, COLBURN);
}

/** As the flux and `update` of update.ts, for a step dt [s]. Throws NonPhysicalStateError. */
export function fastUpdate(duct: Duct, gas: Gas, dt: number): void {
  const { block } = duct;
  const kernel = kernelWith(block.arena!, gas);
  duct.heatTaken += kernel.wallHeat(block.address, block.rowLength, block.cells) * dt;
  duct.fastest = kernel.advance(block.address, block.rowLength, block.cells, dt);
  checkState(duct);
}

function kernelWith(arena: Arena, gas: Gas) {
  arena.kernel.useGas(arena.addressOf(gas.table)!, gas.rAir, gas.rBurned, gas.rFuel);
  return arena.kernel;
}
