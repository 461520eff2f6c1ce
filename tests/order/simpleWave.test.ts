/**
 * Observed order on a smooth exact solution: a simple wave on a ring, before it breaks,
 *
 *   u(x, t) = u0(x - (u + a) t),   a = a0 + (gamma - 1) u / 2
 *
 * Source: Riemann (1860), in any text of gas dynamics (from memory).
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { junction } from '../../sim/boundary/node.ts';
import { AIR_R, AIR_GAMMA as GAMMA, perfectAir } from '../gases.ts';
import { network, pipe, runFor } from '../network.ts';

const gas = perfectAir();
const SOUND = Math.sqrt(GAMMA * AIR_R * 300);
const TIME = 0.6 / SOUND;

const start = (x: number) => 0.12 * SOUND * Math.sin(2 * Math.PI * x);
const density = (u: number) => (1 + (0.2 * u) / SOUND) ** 5;

/** Velocity at x and time t by bisection on the characteristic. */
function exactVelocity(x: number, t: number): number {
  let [low, high] = [-0.12 * SOUND, 0.12 * SOUND];
  for (let i = 0; i < 60; i++) {
    const u = 0.5 * (low + high);
    if (u > start(x - (SOUND + 0.5 * (GAMMA + 1) * u) * t)) high = u;
    else low = u;
  }
  return 0.5 * (low + high);
}

/** Mean of a function over cell i of n on [0, 1], by Gauss's rule of three points. */
function cellMean(f: (x: number) => number, i: number, n: number): number {
  const [middle, off] = [(i + 0.5) / n, Math.sqrt(0.6) / (2 * n)];
  return (5 * f(middle - off) + 8 * f(middle) + 5 * f(middle + off)) / 18;
}

function error(cells: number): number {
  const duct = pipe(1, 0.05, cells);
  const rho0 = 1e5 / (AIR_R * 300);
  duct.fillEach(gas, (x) => {
    const u = start(x);
    const sound = 1 + (0.2 * u) / SOUND;
    return { pressure: 1e5 * sound ** 7, temperature: 300 * sound ** 2, velocity: u };
  });
  const ring = network([duct], [junction([new DuctEnd(duct, 'low'), new DuctEnd(duct, 'high')])], {
    gas,
  });
  runFor(ring, TIME, undefined, 0.8);
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    const exact = rho0 * cellMean((x) => density(exactVelocity(x, TIME)), i, cells);
    sum += Math.abs(duct.cells.rho.at(i) - exact) / cells;
  }
  return sum;
}

function orders(): number[] {
  const errors = [64, 128, 256, 512].map((cells) => error(cells));
  return [0, 1, 2].map((i) => Math.log2(errors[i]! / errors[i + 1]!));
}

describe('simple wave', () => {
  it('converges at 1.8 or better: what the limiter does at crests falls faster still', () => {
    for (const order of orders()) expect(order).toBeGreaterThan(1.8);
  });
});
