/**
 * Two duct ends with a constriction between them: a throttle plate, an orifice, a step of area.
 *
 * Upstream the gas accelerates from its own stagnation state to the throat of effective area Ae;
 * downstream the duct's end has the throat's pressure (no recovery), or the throat chokes:
 *
 *   m = A1 rho1 v1 = Ae (p01 / sqrt(R T01)) psi(p2 / p01) = A2 rho2 v2,   h01 = h02.
 *
 * For slow flow that is a loss of (A2/Ae)^2 - 1 dynamic heads of the downstream duct, so a stated
 * loss K is met by Ae = A2 / sqrt(1 + K).
 * Source: as exchange.ts.
 */
import type { Gas } from '../gas/gas.ts';
import type { End } from './ductEnd.ts';
import { inflowVelocity, STILL, shut, sonicInflowPressure, writeOut } from './exchange.ts';
import type { Node } from './node.ts';
import { throatFlux } from './nozzle.ts';
import {
  type GasBehind,
  gasBehind,
  sonicPressure,
  stagnantPressure,
  velocityBehind,
} from './outgoingWave.ts';
import { type Residual, RootSearch } from './rootSearch.ts';

/** Effective throat areas [m^2] from the first end to the second and back. */
export interface ThroatAreas {
  forward(crankAngle: number): number;
  backward(crankAngle: number): number;
}

/** A throat this small beside the ducts counts as shut. */
const SHUT = 1e-9;

export function constriction(first: End, second: End, throat: ThroatAreas): Node {
  const forward = new Passage(first, second);
  const backward = new Passage(second, first);
  return {
    ends: [first, second],
    exchange: (gas, { crankAngle }) => {
      const p1 = stagnantPressure(first.arriving);
      const p2 = stagnantPressure(second.arriving);
      if (p1 >= p2) forward.solve(throat.forward(crankAngle), p1, p2, gas);
      else backward.solve(throat.backward(crankAngle), p2, p1, gas);
    },
  };
}

/** Flow one way: mass that reaches the throat less what it passes, against the upstream pressure. */
class Passage implements Residual {
  private readonly up: End;
  private readonly down: End;
  private readonly behind: GasBehind = { rho: 0, v: 0 };
  private readonly search = new RootSearch(true);
  private readonly taking: Taking;
  private area = 0;
  private restDown = 0;
  /** Flow [kg/s] and total temperature [K] upstream, pressure downstream [Pa], as last found. */
  private mass = 0;
  private T0 = 0;
  private pDown = 0;

  constructor(up: End, down: End) {
    this.up = up;
    this.down = down;
    this.taking = new Taking(down);
  }

  /** Solves for a throat [m^2] with pressures at rest restUp >= restDown [Pa]; writes both ends. */
  solve(area: number, restUp: number, restDown: number, gas: Gas): void {
    const { up, down } = this;
    const still = restUp - restDown <= STILL * restUp;
    if (still || area < SHUT * Math.min(up.area, down.area)) {
      shut(up, restUp);
      shut(down, restDown);
      return;
    }
    this.area = area;
    this.restDown = restDown;
    const sonic = sonicPressure(up.arriving);
    const lowest = Math.max(sonic, restDown);
    const stuck = sonic > restDown && this.at(sonic) <= 0;
    const p = stuck ? sonic : this.search.find(this, lowest, restUp);
    this.at(p);
    writeOut(up, p, gas);
    const { R, gamma, burned, fuel } = up.arriving;
    const flux = up.flow.mass / down.area;
    const v = inflowVelocity(this.pDown, flux, this.T0, R, gamma);
    const rho = v > 0 ? flux / v : up.arriving.rho;
    down.write(rho, -v, this.pDown, burned, fuel, -up.flow.energy);
  }

  at(p: number): number {
    const a = this.up.arriving;
    const { gamma, R } = a;
    gasBehind(a, p, this.behind);
    const { rho, v } = this.behind;
    const forward = Math.max(v, 0);
    const T = p / (rho * R);
    const heat = 1 + ((gamma - 1) * forward * forward) / (2 * gamma * R * T);
    const p0 = p * heat ** (gamma / (gamma - 1));
    this.mass = rho * forward * this.up.area;
    this.T0 = T * heat;
    this.pDown = this.taking.pressure(this.mass, this.T0, R, gamma, this.restDown, p0);
    return this.mass - this.area * throatFlux(p, T, heat, R, gamma, this.pDown);
  }
}

/** The downstream end as it takes a given flow: the wave's speed less the gas's, against pressure. */
class Taking implements Residual {
  private readonly down: End;
  private readonly search = new RootSearch(false);
  private flux = 0;
  private T0 = 0;
  private R = 0;
  private gamma = 0;

  constructor(down: End) {
    this.down = down;
  }

  /** Pressure [Pa], between `low` and `high`, at which the end takes `mass` [kg/s]. */
  pressure(mass: number, T0: number, R: number, gamma: number, low: number, high: number): number {
    if (mass <= 0) return low;
    this.flux = mass / this.down.area;
    this.T0 = T0;
    this.R = R;
    this.gamma = gamma;
    if (this.at(high) < 0) return high;
    const sonic = sonicInflowPressure(this.flux, T0, R, gamma);
    if (sonic >= high || (sonic > low && this.at(sonic) >= 0)) return Math.max(sonic, low);
    return this.search.find(this, Math.max(low, sonic), high);
  }

  at(p: number): number {
    const v = -velocityBehind(this.down.arriving, p);
    return v - inflowVelocity(p, this.flux, this.T0, this.R, this.gamma);
  }
}
