/**
 * How far beyond the open end of a round pipe a long plane wave turns, in radii of the end.
 *
 *   l/a  end correction in pipe radii [-], as ka -> 0;  k wave number [1/m], a radius [m]
 *
 * No mean flow, thin wall or infinite flange. A pressure-release end in a time-domain solver has l = 0,
 * so the correction must be added to the length drawn.
 * No published table for a flared mouth was found: take the correction of the mouth's rim.
 *
 * Sources: Levine & Schwinger, Phys. Rev. 73 (1948) 383; Nomura, Yamamura & Inawashiro, J. Phys. Soc.
 * Japan 15 (1960) 510.
 */

/**
 * l/a of an unflanged end as ka -> 0: (1/pi) int_0^inf ln(1 / (2 I1(x) K1(x))) / x^2 dx, to four
 * digits. Levine & Schwinger printed 0.6133.
 */
export const END_CORRECTION_UNFLANGED = 0.6127;

/** l/a of an end in an infinite flange as ka -> 0 (Nomura et al. 1960). */
export const END_CORRECTION_FLANGED = 0.8217;
