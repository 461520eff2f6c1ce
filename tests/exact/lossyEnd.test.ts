/**
 * What a wave finds where a pipe blows out through a loss: an end that loses K heads at once sends back
 *
 *   R = (K M - 1) / (K M + 1)
 *
 * of the pressure, M the Mach number of the steady flow: everything, turned over, while nothing flows;
 * nothing at K M = 1; as a wall where it flows fast. Linearised from dp = K rho v dv beside dp = +-rho c dv of
 * the waves, so right to the first order of M. That sharp-edged orifices do so, with an end that sends
 * nothing back among them, was measured with pulses: "a simple formula derived from one-dimensional flow
 * theory ... shows close agreement" (J. Mech. Eng. Sci. 15, 1973, doi 10.1243/JMES_JOUR_1973_015_057_02,
 * abstract).
 */
import { describe, expect, it } from 'vitest';
import type { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { openEnd } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { oneDuct, pipe, runFor } from '../network.ts';
import { waveGas as gas, PRESSURE, SOUND, TEMPERATURE } from '../prove/cases/steepening.ts';

const GAMMA = 1.4;
const LENGTH = 3;
/** Where the pulse starts, how wide it is [m], and its height over the pressure [-]. */
const [START, WIDTH, HEIGHT] = [2.2, 0.08, 1e-4];

/** Flow out over that of the throat at that pressure of the end [Pa] and speed there [m/s], less one. */
function excess(p: number, v: number, share: number, outside: number): number {
  const ratio = (x: number) => x ** ((GAMMA - 1) / GAMMA);
  const squared = SOUND ** 2 * ratio(p / PRESSURE);
  const rest = squared + ((GAMMA - 1) / 2) * v * v;
  const throat = Math.sqrt((2 / (GAMMA - 1)) * (rest - squared * ratio(outside / p)));
  return v / (share * (outside / p) ** (1 / GAMMA) * throat) - 1;
}

/** Where a function that rises or falls through naught does so. */
function root(of: (x: number) => number, low: number, high: number): number {
  const middle = (low + high) / 2;
  if (high - low < 1e-9 * high) return middle;
  return of(middle) * of(low) > 0 ? root(of, middle, high) : root(of, low, middle);
}

/** Outside pressure at which an end with so many heads of loss passes the flow [Pa]. */
function outsideOf(loss: number, mach: number): number {
  const share = 1 / Math.sqrt(1 + loss);
  return root((p) => excess(PRESSURE, mach * SOUND, share, p), 0.55 * PRESSURE, PRESSURE);
}

/** What comes back by the law of the throat alone, the gas compressible: (Z - 1)/(Z + 1), Z = dp/(rho c dv). */
function quasiSteady(loss: number, mach: number): number {
  const [share, outside] = [1 / Math.sqrt(1 + loss), outsideOf(loss, mach)];
  const slower = mach * SOUND * (1 - 1e-3);
  const p = root((x) => excess(x, slower, share, outside), outside * (1 + 1e-9), 1.1 * PRESSURE);
  const impedance = (PRESSURE - p) / (1e-3 * mach * SOUND);
  const z = (impedance * SOUND) / (GAMMA * PRESSURE);
  return (z - 1) / (z + 1);
}

/** Pressure in the pipe once the pulse has come back from the end [Pa]. */
function after(loss: number, mach: number, height: number): number[] {
  const duct = pipe(LENGTH, 0.05, 450);
  duct.fillEach(gas, (x) => {
    const rise = height * Math.exp(-(((x - START) / WIDTH) ** 2));
    return {
      pressure: PRESSURE * (1 + rise),
      temperature: TEMPERATURE * (1 + (rise * (GAMMA - 1)) / GAMMA),
      velocity: mach * SOUND + (rise * SOUND) / GAMMA,
    };
  });
  const air = new OpenAir(gas, { pressure: outsideOf(loss, mach), temperature: TEMPERATURE });
  const net = oneDuct(duct, { gas }, { high: (end: DuctEnd) => openEnd(end, air, 0, loss) });
  runFor(net, (0.8 / (1 + mach) + 0.6 / (1 - mach)) / SOUND);
  return [...duct.prim.p].slice(300);
}

/** What comes back of a pulse, by the difference to the same flow without one. */
function reflection(loss: number, mach: number): number {
  const still = after(loss, mach, 0);
  const change = after(loss, mach, HEIGHT).map((p, i) => p - still[i]!);
  const farthest = change.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return farthest / (HEIGHT * PRESSURE);
}

describe('an end that loses', () => {
  it.each([
    [3, 0.05],
    [10, 0.1],
    [20, 0.1],
    [3, 0.24],
  ])('%f heads at Mach %f sends back what quasi-steady flow says, within 0.02', (loss, mach) => {
    expect(Math.abs(reflection(loss, mach) - quasiSteady(loss, mach))).toBeLessThan(0.02);
  });

  it('follows (K M - 1)/(K M + 1) while M is small', () => {
    for (const loss of [1, 10, 50]) {
      const expected = (0.01 * loss - 1) / (0.01 * loss + 1);
      expect(Math.abs(quasiSteady(loss, 0.01) - expected)).toBeLessThan(0.01);
    }
  });

  it('of the silencers of the demos sends back next to nothing at full speed, all of it without flow', () => {
    expect(Math.abs(reflection(3, 0.22))).toBeLessThan(0.1);
    expect(reflection(3, 0.005)).toBeLessThan(-0.95);
  });
});
