/** Small networks for tests. */
import { closedEnd } from '../sim/boundary/closedEnd.ts';
import { DuctEnd } from '../sim/boundary/ductEnd.ts';
import type { Node } from '../sim/boundary/node.ts';
import type { Volume } from '../sim/boundary/volume.ts';
import { Duct, type DuctOptions, type Side } from '../sim/duct/duct.ts';
import type { Profile } from '../sim/duct/profile.ts';
import { Network } from '../sim/engine/network.ts';
import { fluxHllc } from '../sim/flux/hllc.ts';
import type { NumericalFlux } from '../sim/flux/numericalFlux.ts';
import type { Gas } from '../sim/gas/gas.ts';
import { type SlopeLimiter, vanLeer } from '../sim/scheme/slopeLimiter.ts';

/** A wide mouth, a straight pipe and a port that narrows, 0.4 m. */
export const TAPERED: Profile = [
  { x: 0, diameter: 0.07 },
  { x: 0.05, diameter: 0.045 },
  { x: 0.25, diameter: 0.045 },
  { x: 0.4, diameter: 0.038 },
];

export interface Options {
  gas: Gas;
  flux?: NumericalFlux;
  limiter?: SlopeLimiter;
  volumes?: Volume[];
  /** Keeps to the TypeScript scheme. */
  plain?: boolean;
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
  const { gas, flux = fluxHllc, limiter = vanLeer, volumes = [], plain = false } = options;
  return new Network({ gas, ducts, nodes, volumes, flux, limiter, plain });
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
  net: Network,
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
