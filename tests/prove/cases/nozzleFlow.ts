/** Steady flow through the nozzle A = 1 + 2.2 (x - 1.5)^2, 0 <= x <= 3, gamma 1.4. */
import { openEnd } from '../../../sim/boundary/node.ts';
import { OpenAir } from '../../../sim/boundary/reservoir.ts';
import { Duct, type InitialState } from '../../../sim/duct/duct.ts';
import { AIR_GAMMA, AIR_R, perfectAir } from '../../gases.ts';
import { massFluxes, oneDuct, runFor } from '../../network.ts';

const gas = perfectAir();
export const P0 = 1e5;
export const T0 = 300;
export const CELLS = 100;
export const nozzleArea = (x: number) => 1 + 2.2 * (x - 1.5) ** 2;

/** Runs the nozzle on from a start, at a back pressure over P0. */
export function runNozzle(
  backRatio: number,
  start: (x: number) => InitialState,
  time: number,
): Duct {
  const profile = Array.from({ length: 601 }, (_, i) => ({
    x: i / 200,
    diameter: Math.sqrt((4 / Math.PI) * nozzleArea(i / 200)),
  }));
  const duct = new Duct(profile, { name: 'nozzle', largestCell: 3 / CELLS });
  duct.fillEach(gas, start);
  const before = new OpenAir(gas, { pressure: P0, temperature: T0 });
  const behind = new OpenAir(gas, { pressure: backRatio * P0, temperature: T0 });
  const net = oneDuct(
    duct,
    { gas },
    { low: (end) => openEnd(end, before), high: (end) => openEnd(end, behind) },
  );
  runFor(net, time);
  return duct;
}

export const machs = (duct: Duct) =>
  duct.prim.u.map((u, i) => u / Math.sqrt((AIR_GAMMA * duct.prim.p.at(i)) / duct.cells.rho.at(i)));

/** Area ratio A/A* of isentropic flow at Mach number M. */
export function areaRatio(mach: number): number {
  const g = AIR_GAMMA;
  return ((2 / (g + 1)) * (1 + 0.5 * (g - 1) * mach * mach)) ** ((0.5 * (g + 1)) / (g - 1)) / mach;
}

/** Mach number at an area ratio, by bisection between bounds on one branch. */
export function machAt(ratio: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (a + b);
    if (areaRatio(middle) > ratio === areaRatio(a) > ratio) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}

/** Nozzle with a shock, pe/p0 = 0.6784: what the solver settles to. */
export function shockedNozzle() {
  const duct = runNozzle(0.6784, (x) => ({ pressure: P0 * (1 - 0.1 * x), temperature: T0 }), 0.3);
  const mach = machs(duct);
  const at = (i: number) => (i + 0.5) * duct.mesh.dx;
  const shock = mach.reduce((best, m, i) => (m > mach[best]! ? i : best), 0);
  const behind = mach.findIndex((m, i) => i > shock && m < 1);
  const share = (mach[behind - 1]! - 1) / (mach[behind - 1]! - mach[behind]!);
  const [rho, u, p] = duct.endState('high');
  const exitMach = u! / Math.sqrt((AIR_GAMMA * p!) / rho!);
  return {
    duct,
    mach,
    shock,
    exitMach,
    shockPlace: at(behind - 1) + share * duct.mesh.dx,
    /** Total pressure left behind the shock over that before it. */
    totalPressureRatio: (p! * (1 + 0.2 * exitMach ** 2) ** 3.5) / P0,
    /** Mass flow at the throat, where the shock cannot be felt [kg/s]. */
    flow: massFluxes(duct)[CELLS / 2]! * duct.mesh.faceArea[CELLS / 2]!,
  };
}

/** Below choking: pressure over P0 and Mach number that the solver holds at the throat. */
export function subsonicThroat(ratio: number): { pressure: number; mach: number } {
  // Spinning up would take seconds, so the exact solution is given; what is tested is whether the
  // scheme holds to it while sound crosses a hundred times.
  const exact = (x: number): InitialState => {
    const mach = machAt(nozzleArea(x) * ratio, 0.001, 1);
    const heat = 1 + 0.2 * mach * mach;
    const sound = Math.sqrt((AIR_GAMMA * AIR_R * T0) / heat);
    return { pressure: P0 * heat ** -3.5, temperature: T0 / heat, velocity: mach * sound };
  };
  const duct = runNozzle(exact(3).pressure / P0, exact, 1);
  const middle = CELLS / 2;
  const mean = (values: readonly number[]) => 0.5 * (values[middle - 1]! + values[middle]!);
  return { pressure: mean(duct.prim.p.values()) / P0, mach: mean(machs(duct)) };
}
