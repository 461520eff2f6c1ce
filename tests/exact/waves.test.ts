/**
 * Waves of finite amplitude, and the end that lets them pass.
 * Sources: a simple wave breaks where its front first stands upright; for a piston that starts from
 * rest with du/dt, x_s = 2 a0^2 / ((gamma + 1) du/dt) (Riemann 1860; from memory); sine rows from
 * x_s = 2 gamma a0 / ((gamma + 1) (dp/p0) 2 pi f).
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { junction } from '../../sim/boundary/junction.ts';
import { nonReflecting } from '../../sim/boundary/nonReflecting.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import type { Duct } from '../../sim/duct/duct.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { monotonisedCentral } from '../../sim/scheme/slopeLimiter.ts';
import { network, oneDuct, pipe, runFor } from '../network.ts';

const GAMMA = 1.4;
const SOUND = 343.232;
const PRESSURE = 101325;
const TEMPERATURE = 293.15;
const gas = perfectGas(GAMMA, SOUND ** 2 / (GAMMA * TEMPERATURE));

/** State of a simple wave that runs into still gas towards rising x, at velocity u. */
function simpleWave(u: number) {
  const sound = 1 + (0.5 * (GAMMA - 1) * u) / SOUND;
  return {
    pressure: PRESSURE * sound ** ((2 * GAMMA) / (GAMMA - 1)),
    temperature: TEMPERATURE * sound ** 2,
    velocity: u,
  };
}

/** Steepest fall of velocity per length [1/s]. */
function steepest(duct: Duct): number {
  const { u } = duct.prim;
  let most = 0;
  for (let i = 1; i < u.length; i++) most = Math.max(most, (u[i - 1]! - u[i]!) / duct.mesh.dx);
  return most;
}

describe('steepening of a sine wave', () => {
  it.each([
    // dp/p0, f Hz, x_s m.
    [0.05, 100, 12.746],
    [0.1, 100, 6.373],
    [0.1, 200, 3.187],
  ])('dp/p0 = %f at %f Hz breaks after %f m within 5 %', (amplitude, frequency, expected) => {
    // The slope of a simple wave grows as s0 / (1 - x/x_s): its inverse falls on a straight line to
    // zero. It is read at 30 % and 60 % of the way, before the front is too steep for cells.
    const length = SOUND / frequency;
    const peak = (amplitude * SOUND) / GAMMA;
    const duct = pipe(length, 0.05, 400);
    duct.fillEach(gas, (x) => simpleWave(peak * Math.sin((2 * Math.PI * x) / length)));
    const ring = network(
      [duct],
      [junction([new DuctEnd(duct, 'low'), new DuctEnd(duct, 'high')])],
      {
        gas,
        limiter: monotonisedCentral,
      },
    );
    const inverseAfter = (distance: number) => {
      runFor(ring, distance / SOUND);
      return 1 / steepest(duct);
    };
    const a = inverseAfter(0.3 * expected);
    const b = inverseAfter(0.3 * expected);
    const found = expected * (0.3 + (0.3 * a) / (a - b));
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.05);
  });
});

describe('non-reflecting end', () => {
  it.each([0.001, 0.01, 0.03])(
    'sends back less than a hundredth of a pulse of dp/p0 = %f',
    (amplitude) => {
      const duct = pipe(1, 0.05, 200);
      duct.fillEach(gas, (x) => {
        const pulse = Math.exp(-(((x - 0.5) / 0.06) ** 2));
        return simpleWave((amplitude * SOUND * pulse) / GAMMA);
      });
      const outside = new OpenAir(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
      const letThrough = (end: DuctEnd) => nonReflecting(end, outside);
      const net = oneDuct(duct, { gas }, { low: letThrough, high: letThrough });
      // The pulse leaves after 0.5 m; what comes back would stand half-way again after 1 m.
      runFor(net, 1 / SOUND);
      const left = Math.max(...duct.prim.p.map((p) => Math.abs(p - PRESSURE)));
      expect(left / (amplitude * PRESSURE)).toBeLessThan(0.01);
    },
  );
});
