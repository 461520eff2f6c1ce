/**
 * One end of a duct as a boundary sees it: the gas that arrives there, with velocities counted
 * positive out of the duct, whichever end it is.
 */
import type { Duct, Side } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';

/** The gas that arrives at an end, half a time step ahead. */
export interface ArrivingGas {
  /** Density [kg/m^3]. */
  rho: number;
  /** Velocity out of the duct [m/s]. */
  v: number;
  /** Static pressure [Pa]. */
  p: number;
  /** Speed of sound [m/s]. */
  c: number;
  /** Ratio of specific heats [-]. */
  gamma: number;
  /** Specific gas constant [J/kg K]. */
  R: number;
  /** Mass fraction of burned products [-]. */
  burned: number;
  /** Mass fraction of fuel vapour [-]. */
  fuel: number;
}

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

/** Where a boundary reads the arriving gas and writes what it found. */
export interface End {
  readonly area: number;
  readonly arriving: ArrivingGas;
  readonly flow: EndFlow;
  /** Pressure found at the last solution [Pa], to start the next search from. */
  lastPressure: number;
  /** Takes the arriving gas from the prediction. */
  read(gas: Gas): void;
  /** Sets the state (rho, v out of the duct, p, composition) and the flow through the end. */
  write(rho: number, v: number, p: number, burned: number, fuel: number, energyFlow: number): void;
}

export class DuctEnd implements End {
  readonly duct: Duct;
  readonly side: Side;
  readonly area: number;
  readonly arriving: ArrivingGas = {
    rho: 1,
    v: 0,
    p: 1,
    c: 1,
    gamma: 1.4,
    R: 287,
    burned: 0,
    fuel: 0,
  };
  readonly flow: EndFlow = { mass: 0, energy: 0, burned: 0, fuel: 0 };
  lastPressure = Number.NaN;
  private readonly face: number;
  private readonly outward: number;

  constructor(duct: Duct, side: Side) {
    this.duct = duct;
    this.side = side;
    this.face = side === 'low' ? 0 : duct.mesh.cells;
    this.outward = side === 'low' ? -1 : 1;
    this.area = duct.mesh.faceArea[this.face]!;
  }

  read(gas: Gas): void {
    const states = this.side === 'low' ? this.duct.right : this.duct.left;
    const i = this.face;
    const { arriving } = this;
    arriving.rho = states.rho[i]!;
    arriving.v = this.outward * states.u[i]!;
    arriving.p = states.p[i]!;
    arriving.c = states.c[i]!;
    arriving.burned = states.burned[i]!;
    arriving.fuel = states.fuel[i]!;
    arriving.gamma = (arriving.c * arriving.c * arriving.rho) / arriving.p;
    arriving.R = gas.gasConstant(arriving.burned, arriving.fuel);
  }

  write(rho: number, v: number, p: number, burned: number, fuel: number, energyFlow: number): void {
    const { flow, outward, area } = this;
    const { flux } = this.duct;
    const i = this.face;
    const mass = rho * v;
    flux.mass[i] = outward * mass;
    flux.momentum[i] = mass * v + p;
    flux.energy[i] = (outward * energyFlow) / area;
    flux.burned[i] = outward * mass * burned;
    flux.fuel[i] = outward * mass * fuel;
    flow.mass = mass * area;
    flow.energy = energyFlow;
    flow.burned = flow.mass * burned;
    flow.fuel = flow.mass * fuel;
    this.lastPressure = p;
    const end = this.duct.endState[this.side];
    end[0] = rho;
    end[1] = outward * v;
    end[2] = p;
    end[3] = burned;
    end[4] = fuel;
  }
}
