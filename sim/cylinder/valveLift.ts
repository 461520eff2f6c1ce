/**
 * Valve lift against crank angle, from a table or from the timing at a stated check lift.
 *
 * From timing, lift is  L = L_max cos(pi phi / (2 w))^1.5  about the middle of the two stated
 * angles, with w such that the check lift is met at both. The exponent is our own choice, no source:
 * it gives a mean lift of 0.56 of the maximum over the whole event. A measured table is always better.
 */

import { CYCLE, wrapAngle } from '../crankAngle.ts';
import { acos, cos } from '../elementary/angles.ts';
import { power } from '../elementary/powers.ts';
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

const FULLNESS = 1.5;

export function liftCurve(spec: LiftSpecification): LiftCurve {
  return spec.kind === 'table' ? fromTable(spec.angle, spec.lift) : fromTiming(spec);
}

function fromTiming(spec: Extract<LiftSpecification, { kind: 'timing' }>): LiftCurve {
  const middle = 0.5 * (spec.open + spec.close);
  const half = 0.5 * (spec.close - spec.open);
  const share = power(spec.checkLift / spec.maximum, 1 / FULLNESS);
  const width = (half * Math.PI) / 2 / acos(share);
  return {
    open: wrapAngle(middle - width),
    close: wrapAngle(middle - width) + 2 * width,
    lift: (angle) => {
      const from = wrapAngle(angle - middle + CYCLE / 2) - CYCLE / 2;
      if (Math.abs(from) >= width) return 0;
      return spec.maximum * power(cos((Math.PI * from) / (2 * width)), FULLNESS);
    },
  };
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
