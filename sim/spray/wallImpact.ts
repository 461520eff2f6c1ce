/**
 * What becomes of a drop that meets a wall, by its Weber and Laplace numbers.
 *
 *   We = rho vn^2 d / sigma,   La = rho sigma d / mu^2
 *   We < 2            sticks
 *   2 <= We < 20      rebounds, vn' = -e vn, e = 0.993 - 1.76 a + 1.56 a^2 - 0.49 a^3
 *   20 <= We < Wec    spreads into the film
 *   Wec <= We         splashes;  Wec = 1320 La^-0.18  (wetted wall; a dry one splashes later)
 *
 *   vn  velocity towards the wall [m/s]    a  angle of incidence from the wall [rad]
 *
 * A splash throws back a share 0.2 + 0.9 q of the drop, q spread evenly over 0..1, as
 * 5 (We / Wec - 1) drops of one size.
 * Source: Bai & Gosman (1995), SAE 950283; Bai, Rusche & Gosman (2002), Atomization and Sprays
 * 12:1 (constants from memory). Measured on films and at pressures near ambient.
 */
import { atan2 } from '../elementary/angles.ts';
import { cube, cubeRoot, power } from '../elementary/powers.ts';
import type { LiquidFuel } from './liquidFuel.ts';

export type Impact =
  | { kind: 'film' }
  | { kind: 'rebound'; restitution: number }
  | {
      kind: 'splash';
      /** Share of the mass thrown back [-]. */
      share: number;
      /** Size of the new drops over that of the old [-]. */
      sizeRatio: number;
    };

const STICK = 2;
const SPREAD = 20;
const SPLASH = 1320;
const SPLASH_EXPONENT = -0.18;
const FILM: Impact = { kind: 'film' };

/** Critical Weber number of splash [-] at a Laplace number [-]. */
export function splashWeber(laplace: number): number {
  return SPLASH * power(laplace, SPLASH_EXPONENT);
}

/**
 * @param d diameter [m]
 * @param normal velocity towards the wall [m/s], positive
 * @param tangent velocity along it [m/s], positive
 * @param q evenly spread number in 0..1
 */
export function wallImpact(
  fuel: LiquidFuel,
  d: number,
  normal: number,
  tangent: number,
  q: number,
): Impact {
  const { density, surfaceTension, viscosity } = fuel;
  const weber = (density * normal * normal * d) / surfaceTension;
  if (weber < STICK) return FILM;
  if (weber < SPREAD) {
    const a = atan2(normal, tangent);
    return { kind: 'rebound', restitution: 0.993 - a * (1.76 - a * (1.56 - 0.49 * a)) };
  }
  const critical = splashWeber((density * surfaceTension * d) / (viscosity * viscosity));
  if (weber < critical) return FILM;
  // The share may exceed one where the film is thrown up too; a drop gives no more than itself.
  const share = Math.min(0.2 + 0.9 * q, 1);
  const drops = Math.max(5 * (weber / critical - 1), 1);
  return { kind: 'splash', share, sizeRatio: Math.min(cubeRoot(share / drops), 1) };
}

/**
 * Share of drops that a round body across the stream catches [-], at the Stokes number
 * tau U / D_body: Landahl & Herrmann (1949), J. Colloid Sci. 4:103, cylinder (from memory).
 */
export function catchEfficiency(stokes: number): number {
  const cubed = cube(stokes);
  return cubed / (cubed + 0.77 * stokes * stokes + 0.22);
}

/**
 * Velocity at which turbulence carries drops to the wall, over the friction velocity [-], against
 * tau u*^2 / nu: McCoy & Hanratty (1977), Int. J. Multiphase Flow 3:319 (from memory).
 */
export function depositionVelocity(tauPlus: number): number {
  if (tauPlus < 0.2) return 0;
  if (tauPlus < 22.9) return 3.25e-4 * tauPlus * tauPlus;
  return tauPlus < 15000 ? 0.17 : 20.7 / Math.sqrt(tauPlus);
}
