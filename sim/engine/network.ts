/**
 * Ducts, nodes and volumes joined, and one time step of all of them. It knows neither engines nor
 * cranks: a moment's crank angle is handed through to the nodes.
 */
import type { DuctEnd } from '../boundary/ductEnd.ts';
import type { Moment, Node } from '../boundary/node.ts';
import type { Volume } from '../boundary/volume.ts';
import type { Duct, Side } from '../duct/duct.ts';
import { fluxHllc } from '../flux/hllc.ts';
import type { NumericalFlux } from '../flux/numericalFlux.ts';
import type { Gas } from '../gas/gas.ts';
import { fastPredict, fastUpdate, kernelReaches } from '../scheme/fast.ts';
import { predict } from '../scheme/predict.ts';
import { type SlopeLimiter, vanLeer } from '../scheme/slopeLimiter.ts';
import { update } from '../scheme/update.ts';
import { refreshFriction } from '../scheme/wallSource.ts';

export interface NetworkParts {
  gas: Gas;
  ducts: readonly Duct[];
  nodes: readonly Node[];
  volumes?: readonly Volume[];
  flux: NumericalFlux;
  limiter: SlopeLimiter;
  /** Keeps to the TypeScript scheme where the WebAssembly kernel would do. */
  plain?: boolean;
}

export class Network {
  readonly gas: Gas;
  readonly ducts: readonly Duct[];
  readonly nodes: readonly Node[];
  readonly volumes: readonly Volume[];
  /** Steps taken so far. */
  steps = 0;
  private readonly flux: NumericalFlux;
  private readonly limiter: SlopeLimiter;
  /** Whether the WebAssembly kernel does the work. */
  private readonly fast: boolean;

  /** Throws Error if an end of a duct belongs to no node, or to two. */
  constructor(parts: NetworkParts) {
    this.gas = parts.gas;
    this.ducts = parts.ducts;
    this.nodes = parts.nodes;
    this.volumes = parts.volumes ?? [];
    this.flux = parts.flux;
    this.limiter = parts.limiter;
    this.fast =
      !parts.plain &&
      parts.flux === fluxHllc &&
      parts.limiter === vanLeer &&
      kernelReaches(parts.ducts, parts.gas);
    checkConnected(this.ducts, this.nodes);
  }

  /** Longest stable step [s] at Courant number 1. */
  longestStep(): number {
    let step = Number.POSITIVE_INFINITY;
    for (const duct of this.ducts) step = Math.min(step, duct.mesh.dx / duct.fastest);
    for (const volume of this.volumes) step = Math.min(step, volume.longestStep());
    return step;
  }

  /** Advances everything by moment.dt. Throws NonPhysicalStateError. */
  step(moment: Moment): void {
    const { gas, ducts, volumes } = this;
    const { dt } = moment;
    for (const duct of ducts) {
      refreshFriction(duct);
      if (this.fast) fastPredict(duct, gas, dt);
      else predict(duct, gas, this.limiter, dt);
    }
    for (const volume of volumes) volume.predict(gas, moment);
    for (const node of this.nodes) {
      for (const end of node.ends) end.read(gas);
      node.exchange(gas, moment);
    }
    for (const duct of ducts) {
      if (this.fast) {
        fastUpdate(duct, gas, dt);
        continue;
      }
      this.flux(duct.left, duct.right, 1, duct.mesh.cells, duct.flux);
      update(duct, gas, dt);
    }
    for (const volume of volumes) volume.advance(moment);
    this.steps++;
  }
}

function checkConnected(ducts: readonly Duct[], nodes: readonly Node[]): void {
  const ends = nodes.flatMap((node) => node.ends).filter((end) => 'duct' in end) as DuctEnd[];
  for (const duct of ducts) {
    for (const side of ['low', 'high'] satisfies Side[]) {
      const joined = ends.filter((end) => end.duct === duct && end.side === side).length;
      if (joined !== 1) throw new Error(`the ${side} end of "${duct.name}" has ${joined} nodes`);
    }
  }
}
