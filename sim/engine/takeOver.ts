/** Starting one mesh of a network from the settled state of another. */
import { Duct } from '../duct/duct.ts';
import type { Field } from '../duct/field.ts';
import type { Gas } from '../gas/gas.ts';
import type { Network } from './network.ts';

/** Fills `network` with the state of `other`, the same parts at the same moment on another mesh. */
export function takeOver(network: Network, other: Network): void {
  const parts = [...network.layout.place.keys()];
  const others = [...other.layout.place.keys()];
  // A duct's greatest speed is found anew when it is filled.
  const sums = new Set<unknown>(network.ducts.map((duct) => duct.sums));
  parts.forEach((part, i) => {
    const from = others[i]!;
    if (part instanceof Duct) sample(part, from as Duct, network.gas);
    else if (!sums.has(part)) part.slots.set(from.slots);
  });
}

/** Gas of a cell. */
export interface CellGas {
  pressure: number;
  temperature: number;
  velocity: number;
  burned: number;
  fuel: number;
}

/** Straight lines between the cell centres of `from`, at the same share of the length, changed by `as`. */
export function sample(
  into: Duct,
  from: Duct,
  gas: Gas,
  as: (gas: CellGas) => CellGas = (same) => same,
): void {
  const { prim, mesh } = from;
  const cells = mesh.cells / into.mesh.length;
  into.fillEach(gas, (x) => {
    const at = Math.min(Math.max(x * cells - 0.5, 0), mesh.cells - 1);
    const i = Math.min(Math.floor(at), mesh.cells - 2);
    const share = at - i;
    const value = (field: Field) => field.at(i) + share * (field.at(i + 1) - field.at(i));
    return as({
      pressure: value(prim.p),
      temperature: value(prim.T),
      velocity: value(prim.u),
      burned: value(prim.burned),
      fuel: value(prim.fuel),
    });
  });
}
