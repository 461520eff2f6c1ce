/** One end of a duct: where nodes join, and what crosses there. */
import type { Duct, Side } from '../duct/duct.ts';
import * as AT from '../step/layout.ts';

/** What crosses an end, counted positive out of the duct. */
export interface EndFlow {
  /** Mass [kg/s]. */
  mass: number;
  /** Energy, flow work included [W]. */
  energy: number;
  /** Burned products [kg/s]. */
  burned: number;
  /** Fuel vapour [kg/s]. */
  fuel: number;
}

/** Four numbers of a flow, from a place on. */
export function flowAt(slots: Float64Array, at: number): EndFlow {
  return {
    mass: slots[at]!,
    energy: slots[at + 1]!,
    burned: slots[at + 2]!,
    fuel: slots[at + 3]!,
  };
}

export class DuctEnd {
  readonly duct: Duct;
  readonly side: Side;
  /** [m^2]. */
  readonly area: number;
  slots = new Float64Array(AT.END_SLOTS);

  constructor(duct: Duct, side: Side) {
    this.duct = duct;
    this.side = side;
    this.area = duct.mesh.faceArea[side === 'low' ? 0 : duct.mesh.cells]!;
  }

  /** As the last step found it. */
  get flow(): EndFlow {
    return flowAt(this.slots, AT.F_MASS);
  }

  /**
   * Gas that has left the duct here and come in here [kg], vapour that has left less come in [kg],
   * pressure summed over time [Pa s].
   */
  get sums(): { out: number; in: number; fuel: number; pressure: number } {
    const [out, into, fuel, pressure] = this.slots.subarray(AT.SUM_OUT);
    return { out: out!, in: into!, fuel: fuel!, pressure: pressure! };
  }

  resetSums(): void {
    this.slots.fill(0, AT.SUM_OUT, AT.SUM_PRESSURE + 1);
  }
}
