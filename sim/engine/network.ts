/**
 * Ducts, nodes and volumes joined, and one time step of all of them in TypeScript. It knows neither
 * engines nor cranks: a moment's crank angle is handed through to the nodes.
 */
import type { Node } from '../boundary/node.ts';
import type { Volume } from '../boundary/reservoir.ts';
import { Duct } from '../duct/duct.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { Gas } from '../gas/gas.ts';
import { use } from '../step/lanes.ts';
import * as AT from '../step/layout.ts';
import { longestStep, run, step } from '../step/step.ts';
import { type Layout, layOut, type NetworkParts } from './layOut.ts';

/** When a step is taken: its middle. */
export interface Moment {
  /** Crank angle at half time [deg], 0 to 720; 0 where there is no crank. */
  crankAngle: number;
  /** How far the crank turns during the step [deg]. */
  crankStep: number;
  /** Length of the step [s]. */
  dt: number;
}

export class Network {
  readonly gas: Gas;
  readonly ducts: readonly Duct[];
  readonly nodes: readonly Node[];
  readonly volumes: readonly Volume[];
  readonly layout: Layout;
  /** Steps taken so far. */
  steps = 0;

  /** Throws Error if an end of a duct belongs to no node, or to two. */
  constructor(parts: NetworkParts) {
    this.gas = parts.gas;
    this.ducts = parts.ducts;
    this.nodes = parts.nodes;
    this.volumes = parts.volumes ?? [];
    this.layout = layOut(parts);
    const { column, place } = this.layout;
    for (const [part, at] of place) {
      const slots = column.subarray(at, at + part.slots.length);
      if (part instanceof Duct) part.bind(slots);
      else part.slots = slots;
    }
  }

  /** Takes a column of reals as its state. */
  load(column: Float64Array): void {
    this.layout.column.set(column);
  }

  /** Longest stable step [s] at Courant number 1. */
  longestStep(): number {
    this.take();
    return longestStep();
  }

  /** Advances everything by moment.dt. Throws NonPhysicalStateError. */
  step({ crankAngle, crankStep, dt }: Moment): void {
    this.take();
    const { column } = this.layout;
    column[AT.DT] = dt;
    column[AT.CRANK_MIDDLE] = crankAngle;
    column[AT.CRANK_STEP] = crankStep;
    step();
    this.steps++;
    this.check();
  }

  /** Steps on until X[CRANK_LEFT] is used up, at most so many steps. Throws NonPhysicalStateError. */
  run(most: number): void {
    this.take();
    this.steps += run(most);
    this.check();
  }

  /** Throws NonPhysicalStateError, naming duct and cell, if the state makes no sense. */
  check(): void {
    for (const duct of this.ducts) if (!Number.isFinite(duct.fastest)) throw nonPhysical(duct);
  }

  private take(): void {
    const { N, K, column } = this.layout;
    use({ N, K, X: column });
  }
}

function nonPhysical(duct: Duct): NonPhysicalStateError {
  const { rho } = duct.cells;
  const { p } = duct.prim;
  const cell = p.values().findIndex((value, i) => !(value > 0 && rho.at(i) > 0));
  return new NonPhysicalStateError({
    duct: duct.name,
    cell: Math.max(cell, 0) + 1,
    cells: duct.mesh.cells,
    density: cell < 0 ? Number.NaN : rho.at(cell),
    pressure: cell < 0 ? Number.NaN : p.at(cell),
  });
}
