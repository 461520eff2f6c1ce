/**
 * Valve lift against crank angle, from a table or from the timing at a stated check lift.
 *
 * From timing, lift is  L = L_max cos(pi phi / (2 w))^m  about the middle of the two stated angles, with
 * w such that the check lift is met at both, and m such that the mean lift from seat to seat over the
 * maximum is the fullness stated,
 *
 *   f(m) = Gamma((m + 1)/2) / (sqrt(pi) Gamma(m/2 + 1))
 *
 * Half a sine, m = 1, has 2/pi = 0.64, a whole cosine wave, m = 2, has 0.5. m = 1.5, where no fullness is
 * stated, is our own choice between them, no source. A measured table is always better.
 */

import { CYCLE, wrapAngle } from '../crankAngle.ts';
import { acos, cos } from '../elementary/angles.ts';
import { power, square } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import type { LiftSpecification } from '../specification.ts';

export interface LiftCurve {
  /** Crank angle at which the valve leaves its seat [deg], 0 to 720. */
  open: number;
  /** Crank angle at which it is back on its seat [deg], above `open`; may exceed 720. */
  close: number;
  /** Lift [m] at any crank angle [deg]. */
  lift(crankAngle: number): number;
}

/** The exponent where no fullness is stated [-]. */
const USUAL_EXPONENT = 1.5;

/** Exponent from which the quotient of gamma functions is known [-], and turns that bring its inverse to rest. */
const HIGH = 20;
const TURNS = 12;

/** The fullness that it gives [-]: 0.556. */
export const USUAL_FULLNESS = fullnessOf(USUAL_EXPONENT);

export function liftCurve(spec: LiftSpecification): LiftCurve {
  return spec.kind === 'table' ? fromTable(spec.angle, spec.lift) : fromTiming(spec);
}

function fromTiming(spec: Extract<LiftSpecification, { kind: 'timing' }>): LiftCurve {
  const middle = 0.5 * (spec.open + spec.close);
  const half = 0.5 * (spec.close - spec.open);
  const exponent = exponentOf(spec.fullness ?? USUAL_FULLNESS);
  const share = power(spec.checkLift / spec.maximum, 1 / exponent);
  const width = (half * Math.PI) / 2 / acos(share);
  return {
    open: wrapAngle(middle - width),
    close: wrapAngle(middle - width) + 2 * width,
    lift: (angle) => {
      const from = wrapAngle(angle - middle + CYCLE / 2) - CYCLE / 2;
      if (Math.abs(from) >= width) return 0;
      return spec.maximum * power(cos((Math.PI * from) / (2 * width)), exponent);
    },
  };
}

/**
 * Mean of cos^m over its arch. Wallis's product raises the exponent to where the quotient of gamma functions
 * (Gamma(x + 1) / Gamma(x + 1/2))^2 is x + 1/4 + 1/(32 x + 8) to 1e-7 (Abramowitz & Stegun 6.1.47, from memory).
 */
function fullnessOf(exponent: number): number {
  let mean = 1;
  let m = exponent;
  for (; m < HIGH; m += 2) mean *= (m + 2) / (m + 1);
  return mean / Math.sqrt(Math.PI * (m / 2 + 1 / 4 + 1 / (16 * m + 8)));
}

/** Its inverse; f^2 (m + 1/2) hardly changes with m, so that few turns do. */
function exponentOf(fullness: number): number {
  let m = USUAL_EXPONENT;
  for (let turn = 0; turn < TURNS; turn++) m = (m + 0.5) * square(fullnessOf(m) / fullness) - 0.5;
  return m;
}

function fromTable(angles: readonly number[], lifts: readonly number[]): LiftCurve {
  const first = angles[0]!;
  const last = angles[angles.length - 1]!;
  return {
    open: wrapAngle(first),
    close: wrapAngle(first) + last - first,
    lift: (angle) => {
      const at = first + wrapAngle(angle - first);
      return at >= last ? 0 : interpolateLinear(angles, lifts, at);
    },
  };
}
