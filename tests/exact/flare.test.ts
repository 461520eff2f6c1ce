/**
 * The acoustic length of a pipe with a steep taper, found from its slowest oscillation between an open mouth and
 * a closed end, against Webster's horn equation integrated on its own:
 *
 *   dp/dx = -rho dv/dt,   d(vA)/dx = -(A / rho c^2) dp/dt
 *
 * Source: Webster (1919), Proc. Natl. Acad. Sci. 5:275 (from memory).
 */
import { describe, expect, it } from 'vitest';
import { openEnd } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { Duct } from '../../sim/duct/duct.ts';
import {
  circleArea,
  diameterAt,
  lengthOf,
  type Profile,
  profileOf,
} from '../../sim/duct/profile.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { bellmouthProfile } from '../bellmouth.ts';
import { oneDuct } from '../network.ts';
import { joinProfiles } from '../profiles.ts';

const BORE = 0.045;
const LENGTH = 0.25;
const gas = perfectGas(1.4, 287);
const SOUND = Math.sqrt(1.4 * 287 * 300);

/** A mouth with its end correction, a flare and a straight pipe. */
function flared(depth: number, overhang: number): Profile {
  const mouth = BORE + 2 * overhang;
  const length = 0.6127 * (mouth / 2);
  const front = profileOf([{ length, outerDiameter: mouth, innerDiameter: mouth }]);
  const pipe = [{ length: LENGTH - depth, outerDiameter: BORE, innerDiameter: BORE }];
  const flare = joinProfiles(front, bellmouthProfile(BORE, depth, overhang));
  return joinProfiles(flare, profileOf(pipe));
}

interface Mode {
  /** A quarter of the wavelength [m]. */
  length: number;
  /** Pressure at distance x [m] over that at the closed end [-]. */
  shape(x: number): number;
}

const STEPS = 20000;

/** Pressure along the pipe and flow at its end, at wave number k, for pressure 0 and flow 1 at the mouth. */
function march(profile: Profile, k: number): { pressure: Float64Array; flow: number } {
  const h = lengthOf(profile) / STEPS;
  const pressure = new Float64Array(STEPS + 1);
  let flow = 1;
  for (let i = 0; i < STEPS; i++) {
    const area = circleArea(diameterAt(profile, (i + 0.5) * h));
    const middle = flow - 0.5 * h * k * area * pressure[i]!;
    pressure[i + 1] = pressure[i]! + ((h * k) / area) * middle;
    flow = middle - 0.5 * h * k * area * pressure[i + 1]!;
  }
  return { pressure, flow };
}

/** The slowest oscillation: the wave number at which gas stands still at the closed end. */
function exactMode(profile: Profile): Mode {
  const length = lengthOf(profile);
  let low = 0.5 / length;
  let high = 2.5 / length;
  for (let i = 0; i < 50; i++) {
    const middle = 0.5 * (low + high);
    if (march(profile, middle).flow > 0) low = middle;
    else high = middle;
  }
  const { pressure } = march(profile, low);
  return {
    length: Math.PI / 2 / low,
    shape: (x) => pressure[Math.round((STEPS * x) / length)]! / pressure[STEPS]!,
  };
}

/** The same from half periods of the pressure at the closed end. */
function solvedLength(profile: Profile, mode: Mode, largestCell: number): number {
  const duct = new Duct(profile, { name: 'flare', largestCell });
  duct.fillEach(gas, (x) => {
    const ratio = 1 + 1e-4 * mode.shape(x);
    return { pressure: 1e5 * ratio, temperature: 300 * ratio ** (0.4 / 1.4) };
  });
  const air = new OpenAir(gas, { pressure: 1e5, temperature: 300 });
  const net = oneDuct(duct, { gas }, { low: (end) => openEnd(end, air) });
  const above = () => duct.prim.p.at(duct.mesh.cells - 1) - 1e5;
  const crossings: number[] = [];
  let before = above();
  for (let time = 0; crossings.length < 9; ) {
    const dt = 0.9 * net.longestStep();
    net.step({ crankAngle: 0, crankStep: 0, dt });
    const now = above();
    if (before * now < 0) crossings.push(time + (dt * before) / (before - now));
    before = now;
    time += dt;
  }
  return (SOUND * (crossings[8]! - crossings[2]!)) / 12;
}

describe.each([
  { depth: 0.012, overhang: 0.012 },
  { depth: 0.03, overhang: 0.02 },
])('a flare of depth $depth m and overhang $overhang m', ({ depth, overhang }) => {
  const profile = flared(depth, overhang);
  const mode = exactMode(profile);
  it.each([
    { cell: 0.0025, within: 2e-5 },
    { cell: 0.01, within: 1e-4 },
    { cell: 0.02, within: 3e-4 },
  ])('has its acoustic length within $within m on cells of $cell m', ({ cell, within }) => {
    expect(Math.abs(solvedLength(profile, mode, cell) - mode.length)).toBeLessThan(within);
  });
});
