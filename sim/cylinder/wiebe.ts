/**
 * Wiebe's burn law:  x = 1 - exp(-a ((theta - theta_0) / D)^(m + 1)),  a = 5, m = 2, brought to 1 at
 * the end of the burn. Source: Heywood (1988), sec. 9.2, eq. 9.30 (from memory).
 */
import { exp, log, power } from '../elementary/powers.ts';

export interface Burn {
  /** Crank angle at which the burn starts [deg]; below 0 before firing top dead centre. */
  start: number;
  /** Crank angle at which it ends [deg]. */
  end: number;
  /** Share burned [0..1] at a crank angle [deg]. */
  share(crankAngle: number): number;
}

const A = 5;
const EXPONENT = 3;
const COMPLETE = 1 - exp(-A);

/** How charges burn that are as full load's; how far others follow theirs (burnDuration.ts). */
export interface StatedBurn {
  /** Crank angle of 50 % burned [deg], and from 10 to 90 %. */
  middle: number;
  duration: number;
  /** 0: every charge burns as stated, 1: by the published laws. */
  response: number;
}

const at = (share: number) => power(-log(1 - share * COMPLETE) / A, 1 / EXPONENT);

/** The burn with its 50 % point and 10-90 % duration [deg] as stated. */
export function wiebeBurn(burn50: number, duration10to90: number): Burn {
  const duration = duration10to90 / (at(0.9) - at(0.1));
  const start = burn50 - at(0.5) * duration;
  return {
    start,
    end: start + duration,
    share: (angle) => {
      const y = (angle - start) / duration;
      if (y <= 0) return 0;
      return y >= 1 ? 1 : (1 - exp(-A * power(y, EXPONENT))) / COMPLETE;
    },
  };
}

/** The same, as much shorter as keeps it from starting before `earliest` [deg]. */
export function wiebeWithin(burn50: number, duration10to90: number, earliest: number): Burn {
  const longest = ((burn50 - earliest) * (at(0.9) - at(0.1))) / at(0.5);
  return wiebeBurn(burn50, Math.min(duration10to90, longest));
}
