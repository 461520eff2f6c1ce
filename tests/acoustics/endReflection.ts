/**
 * Reflection of a plane wave at the open end of a round pipe.
 *
 *   p(x) ~ exp(-ikx) - |R| exp(ik(x - 2l)),   the pressure node lies l beyond the end
 *
 *   ka  wave number times pipe radius [-]      |R|  pressure reflection coefficient [-]
 *   l/a end correction in pipe radii [-]
 *
 * No mean flow, thin wall or infinite flange, plane waves only (ka < 1.84). As ka -> 0 the corrections
 * are those of sim/loss/endCorrection.ts.
 *
 * Sources: Levine & Schwinger, Phys. Rev. 73 (1948) 383; Davies, Bento Coelho & Bhattacharya,
 * J. Sound Vib. 72 (1980) 543; Nomura, Yamamura & Inawashiro, J. Phys. Soc. Japan 15 (1960) 510;
 * Norris & Sheng, J. Sound Vib. 135 (1989) 85. Coefficients of both fits from memory; the
 * unflanged one is checked against Levine & Schwinger's integrals in the tests.
 */

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
