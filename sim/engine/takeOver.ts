/** Starting one mesh of an engine from the settled state of another. */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import type { EngineModel } from './model.ts';

/** Fills `model` with the state of `other`, the same engine at the same crank angle. */
export function takeOver(model: EngineModel, other: EngineModel): void {
  const { gas } = model.working;
  model.network.ducts.forEach((duct, i) => {
    sample(duct, other.network.ducts[i]!, gas);
  });
  model.lines.forEach(({ cylinder }, i) => {
    cylinder.copy(other.lines[i]!.cylinder, gas);
  });
  model.collectors.forEach((joint, i) => {
    joint.startFrom(other.collectors[i]!);
  });
}

/** Straight lines between the cell centres of `from`, at the same share of the length. */
function sample(into: Duct, from: Duct, gas: Gas): void {
  const { prim, mesh } = from;
  const cells = mesh.cells / into.mesh.length;
  into.fillEach(gas, (x) => {
    const at = Math.min(Math.max(x * cells - 0.5, 0), mesh.cells - 1);
    const i = Math.min(Math.floor(at), mesh.cells - 2);
    const share = at - i;
    const value = (field: Float64Array) => field[i]! + share * (field[i + 1]! - field[i]!);
    return {
      pressure: value(prim.p),
      temperature: value(prim.T),
      velocity: value(prim.u),
      burned: value(prim.burned),
      fuel: value(prim.fuel),
    };
  });
}
