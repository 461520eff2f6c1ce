/** Riemann problems, exact and as the solver has them; gamma 1.4, gas constant 1. */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { closedEnd } from '../../../sim/boundary/node.ts';
import type { Duct } from '../../../sim/duct/duct.ts';
import { type Moment, Network } from '../../../sim/engine/network.ts';
import { perfectGas } from '../../../sim/gas/gas.ts';
import { fluxes } from '../../../sim/step/faces.ts';
import { use } from '../../../sim/step/lanes.ts';
import { DUCTS_AT, FLUX, ROWS } from '../../../sim/step/layout.ts';
import { predict } from '../../../sim/step/predict.ts';
import { update } from '../../../sim/step/update.ts';
import { exactRiemann, type RiemannState } from '../../exact/exactRiemann.ts';
import { pipe, runFor } from '../../network.ts';
import type { SourceName } from '../sources.ts';

const GAMMA = 1.4;
const gas = perfectGas(GAMMA, 1);

export interface ShockTube {
  name: string;
  source: SourceName;
  left: RiemannState;
  right: RiemannState;
  diaphragm: number;
  time: number;
  /** Published pressure, velocity and both densities between the waves. */
  star: readonly [pressure: number, velocity: number, rhoLeft: number, rhoRight: number];
  /** Digits to which they are known. */
  digits: number;
}

const state = (rho: number, u: number, p: number): RiemannState => ({ rho, u, p });

export const SHOCK_TUBES: readonly ShockTube[] = [
  {
    name: 'Sod',
    source: 'sod',
    left: state(1, 0, 1),
    right: state(0.125, 0, 0.1),
    diaphragm: 0.5,
    time: 0.2,
    star: [0.30313018, 0.92745262, 0.42631943, 0.26557371],
    digits: 2e-7,
  },
  {
    name: 'Toro 1, sonic point',
    source: 'toro',
    left: state(1, 0.75, 1),
    right: state(0.125, 0, 0.1),
    diaphragm: 0.3,
    time: 0.2,
    star: [0.46629357, 1.3609055, 0.57986669, 0.33970023],
    digits: 2e-7,
  },
  {
    name: 'Toro 2, near vacuum',
    source: 'toro',
    left: state(1, -2, 0.4),
    right: state(1, 2, 0.4),
    diaphragm: 0.5,
    time: 0.15,
    star: [0.0018938734, 0, 0.021852118, 0.021852118],
    digits: 2e-7,
  },
  {
    name: 'Toro 3, blast from the left',
    source: 'toro',
    left: state(1, 0, 1000),
    right: state(1, 0, 0.01),
    diaphragm: 0.5,
    time: 0.012,
    star: [460.89379, 19.597451, 0.5750623, 5.9992407],
    digits: 2e-7,
  },
  {
    name: 'Toro 3b, blast from the right',
    source: 'toro',
    left: state(1, 0, 0.01),
    right: state(1, 0, 100),
    diaphragm: 0.5,
    time: 0.035,
    star: [46.095044, -6.1963282, 5.9924169, 0.57511279],
    digits: 2e-7,
  },
  {
    name: 'Toro 4, collision',
    source: 'toroPrinted',
    left: state(5.99924, 19.5975, 460.894),
    right: state(5.99242, -6.19633, 46.095),
    diaphragm: 0.4,
    time: 0.035,
    star: [1691.64, 8.68975, 14.2823, 31.0426],
    digits: 5e-6,
  },
  {
    name: 'Toro 5, slow contact',
    source: 'toro',
    left: state(1, -19.59745, 1000),
    right: state(1, -19.59745, 0.01),
    diaphragm: 0.8,
    time: 0.012,
    star: [460.89379, 1.39e-6, 0.5750623, 5.9992407],
    digits: 2e-7,
  },
];

export const exactTube = ({ left, right }: ShockTube) => exactRiemann(left, right, GAMMA);

/** The tube as the solver leaves it; its ends hold the states they began with. */
export function solveTube(tube: ShockTube, cells: number, limiter?: number): Duct {
  const duct = pipe(1, 1, cells);
  duct.fillEach(gas, (x) => {
    const s = x < tube.diaphragm ? tube.left : tube.right;
    return { pressure: s.p, temperature: s.p / s.rho, velocity: s.u };
  });
  const net = new HeldEnds(duct, limiter);
  hold(duct, 0, tube.left);
  hold(duct, cells, tube.right);
  runFor(net, tube.time);
  return duct;
}

/** The step of the cells alone: fluxes at the end faces stay as they were set. */
class HeldEnds extends Network {
  constructor(duct: Duct, limiter?: number) {
    const nodes = (['low', 'high'] as const).map((side) => closedEnd(new DuctEnd(duct, side)));
    super({ gas, ducts: [duct], nodes, ...(limiter && { limiter }) });
  }

  override step({ dt }: Moment): void {
    const { N, K, column } = this.layout;
    use({ N, K, X: column });
    const duct = N[DUCTS_AT]!;
    predict(duct, dt);
    fluxes(duct);
    update(duct, dt);
    this.steps++;
  }
}

/** Lets the flux of a state pass an end face. */
function hold({ slots }: Duct, face: number, { rho, u, p }: RiemannState): void {
  const energy = rho * (gas.enthalpy(p / rho, 0, 0) + 0.5 * u * u);
  [rho * u, rho * u * u + p, u * energy, 0, 0].forEach((flux, row) => {
    slots[face * ROWS + FLUX + row] = flux;
  });
}

/** L1 error of density over the tube. */
export function densityError(tube: ShockTube, cells: number, limiter?: number): number {
  const duct = solveTube(tube, cells, limiter);
  const exact = exactTube(tube);
  const error = (rho: number, i: number) => {
    const x = (i + 0.5) / cells;
    return Math.abs(rho - exact.sample((x - tube.diaphragm) / tube.time).rho) / cells;
  };
  return duct.cells.rho.values().reduce((sum, rho, i) => sum + error(rho, i), 0);
}

/** The solver's pressure and velocity half-way between contact and right wave. */
export function plateau(tube: ShockTube, cells: number): { pressure: number; velocity: number } {
  const duct = solveTube(tube, cells);
  const [pStar, uStar, , rhoRight] = tube.star;
  // Shock speed from mass conservation across it.
  const { rho, u } = tube.right;
  const shock = (rhoRight * uStar - rho * u) / (rhoRight - rho);
  const i = Math.floor((tube.diaphragm + 0.5 * (uStar + shock) * tube.time) * cells);
  if (!(pStar > tube.right.p)) throw new Error(`${tube.name} has no shock on the right`);
  return { pressure: duct.prim.p.at(i), velocity: duct.prim.u.at(i) };
}
