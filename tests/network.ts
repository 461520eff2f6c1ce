/** Small networks for tests. */

import { DuctEnd } from '../sim/boundary/ductEnd.ts';
import { closedEnd, type Node } from '../sim/boundary/node.ts';
import type { Volume } from '../sim/boundary/reservoir.ts';
import { Duct, type DuctOptions, type Side } from '../sim/duct/duct.ts';
import { Field } from '../sim/duct/field.ts';
import type { Profile } from '../sim/duct/profile.ts';
import { Network } from '../sim/engine/network.ts';
import type { FluxName } from '../sim/engine/numerics.ts';
import type { Gas } from '../sim/gas/gas.ts';
import { FLUX } from '../sim/step/layout.ts';

/** A wide mouth, a straight pipe and a port that narrows, 0.4 m. */
export const TAPERED: Profile = [
  { x: 0, diameter: 0.07 },
  { x: 0.05, diameter: 0.045 },
  { x: 0.25, diameter: 0.045 },
  { x: 0.4, diameter: 0.038 },
];

export interface Options {
  gas: Gas;
  flux?: FluxName;
  /** 1 minmod to 2 monotonised central. */
  limiter?: number;
  volumes?: Volume[];
  /** Newton steps of a node in a time step. */
  iterations?: number;
}

/** A straight pipe. */
export function pipe(
  length: number,
  diameter: number,
  cells: number,
  options: Partial<DuctOptions> = {},
): Duct {
  const profile: Profile = [
    { x: 0, diameter },
    { x: length, diameter },
  ];
  return new Duct(profile, { name: 'pipe', largestCell: length / cells, ...options });
}

/** Ducts and nodes as a network. */
export function network(ducts: Duct[], nodes: Node[], options: Options): Network {
  return new Network({ ducts, nodes, ...options });
}

/** One duct between two nodes; closed ends unless given. */
export function oneDuct(
  duct: Duct,
  options: Options,
  node: Partial<Record<Side, (end: DuctEnd) => Node>> = {},
): Network {
  const low = (node.low ?? closedEnd)(new DuctEnd(duct, 'low'));
  const high = (node.high ?? closedEnd)(new DuctEnd(duct, 'high'));
  return network([duct], [low, high], options);
}

/** Runs for a time [s] at a Courant number, landing on the end; `each` is called after each step. */
export function runFor(
  net: Pick<Network, 'steps' | 'longestStep' | 'step'>,
  duration: number,
  each?: (time: number) => void,
  courant = 0.9,
): void {
  let time = 0;
  while (time < duration * (1 - 1e-12)) {
    // The first steps are short: the fastest wave of a jump is not yet in the cells.
    const share = net.steps < 5 ? 0.2 : courant;
    const dt = Math.min(share * net.longestStep(), duration - time);
    net.step({ crankAngle: 0, crankStep: 0, dt });
    time += dt;
    each?.(time);
  }
}

/** Mass flux at each face of a duct [kg/m^2 s], towards rising x, as the last step found it. */
export function massFluxes({ slots, mesh }: Duct): number[] {
  return new Field(slots, FLUX, mesh.cells + 1).values();
}
