/**
 * Crevices and leak of a cylinder as data, from shares that an engine builder knows.
 *
 *   V_c = s V_clearance                        within the clearance that the compression ratio counts
 *   A   = b A_piston / LEAK                    b: share of the charge lost at a mean piston speed of 15 m/s
 *
 * The charge lost is A / A_piston by time at pressure over charge; both go with the charge's density, and
 * time with stroke over piston speed, so that one number serves all engines.
 * Source of the forms: step/crevice.ts. LEAK: our own solver at full load; the demos lie within a
 * fifth of it (tests/handbook/crevices.test.ts).
 */

import { circleArea } from '../duct/profile.ts';
import { type CrankGeometry, sweptVolume } from './crank.ts';

/** What lies beside the chamber. */
export interface Rings {
  /** Volume of crevices at cylinder pressure [m3]. */
  crevice: number;
  /** Free area past the rings [m2]. */
  leakArea: number;
  /** [Pa]. */
  crankcasePressure: number;
}

/** sqrt(gamma (2 / (gamma + 1))^((gamma + 1) / (gamma - 1))) for a gamma of 1.4. */
export const CHOKED_FLOW = 0.6847;

/** Mean piston speed that the share lost is stated for [m/s]. */
export const STATED_SPEED = 15;

/** Share of the charge lost at that speed over leak area by piston area [-]. */
const LEAK = 265;

interface Shares extends CrankGeometry {
  crevice: number;
  blowBy: number;
}

const clearance = (g: CrankGeometry) => sweptVolume(g) / (g.compressionRatio - 1);

export function ringsOf(g: Shares, crankcasePressure: number): Rings {
  return {
    crevice: g.crevice * clearance(g),
    leakArea: (g.blowBy * circleArea(g.bore)) / LEAK,
    crankcasePressure,
  };
}

/** The chamber that crevices leave of the clearance. */
export function besideCrevices(g: Shares): CrankGeometry {
  const { bore, stroke, rodLength, compressionRatio, crevice } = g;
  return {
    bore,
    stroke,
    rodLength,
    compressionRatio: 1 + (compressionRatio - 1) / (1 - crevice),
  };
}
