/**
 * Steady adiabatic flow with friction (Fanno), and slow flow heated by the wall.
 * Source: Fanno rows computed from the closed form for gamma 1.4, as in NACA Report 1135's
 * companion tables and Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1,
 * ch. 6 (from memory).
 */
import { describe, expect, it } from 'vitest';
import { openEnd } from '../../sim/boundary/openEnd.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import type { Duct, DuctOptions } from '../../sim/duct/duct.ts';
import { COLBURN } from '../../sim/scheme/wallSource.ts';
import { perfectAir } from '../gases.ts';
import { oneDuct, pipe, runFor } from '../network.ts';

const gas = perfectAir();
const P0 = 2e5;
const T0 = 320;
const LENGTH = 1;
const DIAMETER = 0.04;

/** A pipe from a reservoir at P0, T0 to one at `back` [Pa], run to the steady state. */
function steadyPipe(
  cells: number,
  back: number,
  options: Partial<DuctOptions>,
  fanning: number,
  time: number,
): Duct {
  const duct = pipe(LENGTH, DIAMETER, cells, options);
  // With no roughness given the friction factor is never refreshed: it stays as set here.
  duct.fanning.fill(fanning);
  duct.fill(gas, { pressure: back, temperature: T0 });
  const before = new OpenAir(gas, { pressure: P0, temperature: T0 });
  const behind = new OpenAir(gas, { pressure: back, temperature: T0 });
  const net = oneDuct(
    duct,
    { gas },
    { low: (end) => openEnd(end, before), high: (end) => openEnd(end, behind) },
  );
  runFor(net, time);
  return duct;
}

const endMach = ([rho, u, p]: Float64Array) => u! / Math.sqrt((1.4 * p!) / rho!);

/** M, 4 f L* / D, p/p*, T/T*, p/p0. */
const ROWS = {
  0.2: { length: 14.533266, p: 5.455447, T: 1.190476, head: 0.972497 },
  0.3: { length: 5.299253, p: 3.619057, T: 1.178782, head: 0.93947 },
  0.4: { length: 2.308493, p: 2.695819, T: 1.162791, head: 0.895614 },
  0.5: { length: 1.06906, p: 2.13809, T: 1.142857, head: 0.843019 },
  0.6: { length: 0.490822, p: 1.763364, T: 1.119403, head: 0.784004 },
  0.7: { length: 0.208139, p: 1.493452, T: 1.092896, head: 0.721 },
} as const;

describe('Fanno flow', () => {
  it.each([
    [0.3, 0.5, 'friction'],
    [0.2, 0.6, 'friction'],
    [0.4, 0.7, 'friction'],
    [0.3, 0.6, 'spread loss'],
  ] as const)('runs from M = %f to %f by %s', (from, to, by) => {
    const [inlet, outlet] = [ROWS[from], ROWS[to]];
    const heads = inlet.length - outlet.length;
    const back = (P0 * inlet.head * outlet.p) / inlet.p;
    const byFriction = by === 'friction';
    const options = byFriction ? {} : { lossPerLength: () => heads / LENGTH };
    const fanning = byFriction ? (heads * DIAMETER) / (4 * LENGTH) : 0;
    const duct = steadyPipe(80, back, options, fanning, 0.25);
    expect(Math.abs(endMach(duct.endState.low) / from - 1)).toBeLessThan(5e-3);
    expect(Math.abs(endMach(duct.endState.high) / to - 1)).toBeLessThan(5e-3);
    const { low, high } = duct.endState;
    expect(Math.abs(low[2]! / (P0 * inlet.head) - 1)).toBeLessThan(5e-3);
    const temperatures = high[2]! / high[0]! / (low[2]! / low[0]!);
    expect(Math.abs(temperatures / (outlet.T / inlet.T) - 1)).toBeLessThan(5e-3);
  });
});

describe('slow flow heated by the wall', () => {
  it('nears the wall temperature as exp(-2 f Pr^(-2/3) x / D), by the Reynolds-Colburn analogy', () => {
    const f = 0.005;
    const wall = 380;
    const duct = steadyPipe(80, 0.99 * P0, { wallTemperature: () => wall }, f, 0.6);
    const left = Math.exp((-2 * f * COLBURN * LENGTH) / DIAMETER);
    const { high } = duct.endState;
    // Total temperature: the law is one of enthalpy.
    const cp = 3.5 * gas.rAir;
    const exit = high[2]! / (high[0]! * gas.rAir) + (0.5 * high[1]! ** 2) / cp;
    expect(Math.abs((exit - (wall - left * (wall - T0))) / (wall - T0))).toBeLessThan(5e-3);
  });
});
