/**
 * The air at an open end as three things side by side, all driven by the pressure p at the end above
 * that of the still air, which together take the volume that leaves:
 *
 *   u = w + p / r + C dp/dt,   rho l dw/dt = p
 *
 *   u  velocity out of the bore [m/s]           w  part of it that moves the inertance [m/s]
 *   l  inertial length of the mouth [m]         r  = 4 (l/a)^2 rho c, radiation [Pa s/m]
 *   C  = 0.122 (0.6127/l^)^2 a/(rho c^2), compliance [m/Pa], l^ = l/a
 *   a  radius of the bore [m]                   rho, c of the still air [kg/m^3], [m/s]
 *
 * r is exact for low frequencies, whatever the mouth: a small source radiates (ka)^2 rho c/4, half of
 * what an infinite flange makes of it. The compliance is fitted to Levine & Schwinger's plain end over
 * ka from 0 to 1.5, where the reflection coefficient is off by 0.0105 at most; its scaling to flares
 * keeps them within 0.005 to ka 0.5 of a rim that radiates as a plain end behind the rest of its
 * inertance (tests/exact/mouthRadiation.test.ts). Passive: no part can give more than it took.
 *
 * A step of time is the backward difference of C and the trapezoidal rule of w, so it is passive at
 * any step and links p and u at its end by a straight line.
 *
 * Sources: Levine & Schwinger, Phys. Rev. 73 (1948) 383; a monopole's radiation, Pierce, Acoustics,
 * sec. 4-3 (from memory). The circuit and its compliance are our own fit. No mean flow; what a jet and
 * an entry lose is in sim/step/mouth.ts.
 */
import { square } from '../elementary/powers.ts';

/** Constants of one mouth. */
export interface MouthImpedance {
  /** rho l [kg/m^2]. */
  inertance: number;
  /** r [Pa s/m]. */
  resistance: number;
  /** C [m/Pa]. */
  compliance: number;
}

/** End correction of the plain end that the compliance was fitted to [radii]. */
const PLAIN = 0.6127;
/** Compliance of the plain end in a / (rho c^2) [-]. */
export const MOUTH_COMPLIANCE = 0.122;

/** Greatest error of the reflection coefficient of a plain end [-], ka to 1.5. */
export const RADIATION_SPREAD = 0.0105;

/**
 * @param bore diameter that velocities are stated for [m]
 * @param length inertial length of the mouth [m], of mouthLength.ts
 * @param air still gas outside: density [kg/m^3], speed of sound [m/s]
 */
export function mouthImpedance(
  bore: number,
  length: number,
  { density, soundSpeed }: { density: number; soundSpeed: number },
): MouthImpedance {
  const a = bore / 2;
  const ratio = length / a;
  return {
    inertance: density * length,
    resistance: 4 * ratio * ratio * density * soundSpeed,
    compliance: (MOUTH_COMPLIANCE * square(PLAIN / ratio) * a) / (density * square(soundSpeed)),
  };
}
