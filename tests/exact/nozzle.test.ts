/**
 * Steady flow through a convergent-divergent nozzle A = 1 + 2.2 (x - 1.5)^2 with a shock, and
 * through a smooth inlet. Source: the geometry of Anderson, Computational Fluid Dynamics, ch. 7
 * (from memory); numbers computed from the closed form, as NACA Report 1135 (1953), tables I-II.
 */
import { describe, expect, it } from 'vitest';
import { openEnd } from '../../sim/boundary/openEnd.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { Duct, type InitialState } from '../../sim/duct/duct.ts';
import { AIR_GAMMA, AIR_R, perfectAir } from '../gases.ts';
import { oneDuct, runFor } from '../network.ts';

const gas = perfectAir();
const P0 = 1e5;
const T0 = 300;
const area = (x: number) => 1 + 2.2 * (x - 1.5) ** 2;
const CELLS = 100;

/** Runs the nozzle on from a start, at a back pressure over P0. */
function runNozzle(backRatio: number, start: (x: number) => InitialState, time: number): Duct {
  const profile = Array.from({ length: 601 }, (_, i) => ({
    x: i / 200,
    diameter: Math.sqrt((4 / Math.PI) * area(i / 200)),
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

const machs = (duct: Duct) => duct.prim.u.map((u, i) => u / duct.prim.c[i]!);

/** Area ratio A/A* of isentropic flow at Mach number M. */
function areaRatio(mach: number): number {
  const g = AIR_GAMMA;
  return ((2 / (g + 1)) * (1 + 0.5 * (g - 1) * mach * mach)) ** ((0.5 * (g + 1)) / (g - 1)) / mach;
}

/** Mach number at an area ratio, by bisection between bounds on one branch. */
function machAt(ratio: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (a + b);
    if (areaRatio(middle) > ratio === areaRatio(a) > ratio) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}

describe('nozzle with a shock at pe/p0 = 0.6784', () => {
  const duct = runNozzle(0.6784, (x) => ({ pressure: P0 * (1 - 0.1 * x), temperature: T0 }), 0.3);
  const mach = machs(duct);
  const x = mach.map((_, i) => (i + 0.5) * duct.mesh.dx);
  const shock = mach.reduce((at, m, i) => (m > mach[at]! ? i : at), 0);

  it('passes one mass flow everywhere, the choked one of the throat, within 0.1 %', () => {
    // p0/sqrt(R T0) psi*, psi* = 0.684731 (NACA 1135; checks 4.3).
    const choked = (0.684731 * P0) / Math.sqrt(AIR_R * T0);
    // The shock itself never lies quite still between its cells.
    const off = [...duct.flux.mass]
      .map((flux, face) => (flux * duct.mesh.faceArea[face]!) / choked - 1)
      .filter((_, face) => Math.abs(face - (shock + 1)) > 2);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(1e-3);
  });

  it('has the isentropic Mach number up to two cells of the shock within 0.5 %', () => {
    const worst = mach.slice(0, shock - 2).reduce((most, m, i) => {
      // Within a cell of the throat both branches meet and M against A is vertical.
      if (Math.abs(x[i]! - 1.5) < 1.5 * duct.mesh.dx) return most;
      const exact = x[i]! < 1.5 ? machAt(area(x[i]!), 0.01, 1) : machAt(area(x[i]!), 1, 4);
      return Math.max(most, Math.abs(m / exact - 1));
    }, 0);
    expect(worst).toBeLessThan(5e-3);
  });

  it('puts the shock at x = 2.09933, within a cell, and leaves at M = 0.143076', () => {
    const behind = mach.findIndex((m, i) => i > shock && m < 1);
    const share = (mach[behind - 1]! - 1) / (mach[behind - 1]! - mach[behind]!);
    const sonic = x[behind - 1]! + share * duct.mesh.dx;
    expect(Math.abs(sonic - 2.09933)).toBeLessThan(duct.mesh.dx);
    expect(Math.abs(duct.endState.high[1]! / exitSound(duct) / 0.143076 - 1)).toBeLessThan(5e-3);
  });
});

/** Speed of sound at the exit. */
function exitSound(duct: Duct): number {
  const [rho, , p] = duct.endState.high;
  return Math.sqrt((AIR_GAMMA * p!) / rho!);
}

describe('nozzle below choking', () => {
  it.each([
    // M, p/p0, A/A* of NACA Report 1135, table I; the throat's area is 1.
    [0.3, 0.93947, 2.035065],
    [0.5, 0.843019, 1.339844],
    [0.6, 0.784004, 1.1882],
  ])('keeps the exact state with M = %f at the throat', (throatMach, pressureRatio, ratio) => {
    // Spinning up would take seconds, so the exact solution is given; what is tested is whether the
    // scheme holds to it while sound crosses a hundred times.
    const exact = (x: number): InitialState => {
      const mach = machAt(area(x) * ratio, 0.001, 1);
      const heat = 1 + 0.2 * mach * mach;
      const sound = Math.sqrt((AIR_GAMMA * AIR_R * T0) / heat);
      return { pressure: P0 * heat ** -3.5, temperature: T0 / heat, velocity: mach * sound };
    };
    const duct = runNozzle(exact(3).pressure / P0, exact, 1);
    const middle = CELLS / 2;
    const p = 0.5 * (duct.prim.p[middle - 1]! + duct.prim.p[middle]!);
    const mach = 0.5 * (machs(duct)[middle - 1]! + machs(duct)[middle]!);
    expect(Math.abs(p / P0 / pressureRatio - 1)).toBeLessThan(5e-3);
    expect(Math.abs(mach / throatMach - 1)).toBeLessThan(5e-3);
  });
});
