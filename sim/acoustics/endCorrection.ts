/**
 * Reflection of a plane wave at the open end of a round pipe.
 *
 *   p(x) ~ exp(-ikx) - |R| exp(ik(x - 2l)),   the pressure node lies l beyond the end
 *
 *   ka  wave number times pipe radius [-]      |R|  pressure reflection coefficient [-]
 *   l/a end correction in pipe radii [-]
 *
 * No mean flow, thin wall or infinite flange, plane waves only (ka < 1.84). A pressure-release end
 * in a time-domain solver has l = 0, so the correction must be added to the length drawn.
 * No published table for a flared mouth was found: take the correction of the mouth's rim.
 *
 * Sources: Levine & Schwinger, Phys. Rev. 73 (1948) 383; Davies, Bento Coelho & Bhattacharya,
 * J. Sound Vib. 72 (1980) 543; Nomura, Yamamura & Inawashiro, J. Phys. Soc. Japan 15 (1960) 510;
 * Norris & Sheng, J. Sound Vib. 135 (1989) 85. Coefficients of both fits from memory; the
 * unflanged one is checked against Levine & Schwinger's integrals in the tests.
 */

/**
 * l/a of an unflanged end as ka -> 0: (1/pi) int_0^inf ln(1 / (2 I1(x) K1(x))) / x^2 dx, to four
 * digits. Levine & Schwinger printed 0.6133.
 */
export const END_CORRECTION_UNFLANGED = 0.6127;

/** l/a of an end in an infinite flange as ka -> 0 (Nomura et al. 1960). */
export const END_CORRECTION_FLANGED = 0.8217;

/** Reflection of an open end at one frequency. */
export interface EndReflection {
  /** Magnitude of the pressure reflection coefficient [-]. */
  magnitude: number;
  /** End correction in pipe radii [-]. */
  correction: number;
}

/**
 * Unflanged end, fit of Davies et al. (1980); within 0.0025 in magnitude and 0.004 in correction.
 *
 * @throws RangeError outside 0 <= ka <= 1.5
 */
export function reflectionUnflanged(ka: number): EndReflection {
  requireRange(ka, 1.5);
  return {
    magnitude: 1 + ka * (0.01336 + ka * (-0.59079 + ka * (0.33576 - 0.06432 * ka))),
    correction: ka < 0.5 ? 0.6133 - 0.1168 * ka * ka : 0.6393 - 0.1104 * ka,
  };
}

/**
 * End in an infinite flange, fit of Norris & Sheng (1989).
 *
 * @throws RangeError outside 0 <= ka <= 1.5
 */
export function reflectionFlanged(ka: number): EndReflection {
  requireRange(ka, 1.5);
  const numerator = 1 + 0.323 * ka - 0.077 * ka ** 2;
  return {
    magnitude: numerator / (1 + 0.323 * ka + (1 - 0.077) * ka ** 2),
    correction: 0.82159 - (0.49 * ka ** 2) / (1 + 0.46 * ka ** 3),
  };
}

function requireRange(ka: number, limit: number): void {
  if (!(ka >= 0 && ka <= limit)) {
    throw new RangeError(`ka must lie between 0 and ${limit} for this fit (got ${ka})`);
  }
}
