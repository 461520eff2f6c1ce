/**
 * Friction and heat at the wall of a duct.
 *
 *   force per volume  = -(2 f / D + K' / 2) rho u |u|      f Fanning factor, K' loss heads per metre
 *   heat per volume   = (4 / D) h (Tw - T)
 *   h = cp rho |u| (f / 2) Pr^(-2/3)                       Reynolds-Colburn analogy
 *   1 / sqrt(f) = -3.6 log10((eps / 3.7 D)^1.11 + 6.9 / Re)  turbulent, Haaland (1983)
 *   f = 16 / Re                                            laminar; the larger of the two is used
 *
 * Sources: Haaland (1983), J. Fluids Eng. 105:89 (within 2 % of Colebrook, Re 4e3 to 1e8); Colburn
 * (1933). Both are steady, fully developed laws used in unsteady flow: common practice. Viscosity:
 * Sutherland's law (gas/viscosity.ts) by a cubic, fitted there; the logarithm by a cubic of the
 * mantissa (lanes.ts), f within 0.05 %.
 */
import { abs, type I, K, log2Quick, max, min, type R, type V, X } from './lanes.ts';
import { DIAMETER, MOMENTUM, PER_DIAMETER, ROUGH_TERM, RUB, T } from './layout.ts';

/** 4 (1/2) Pr^(-2/3) with Pr = 0.71 (gas/viscosity.ts): heat per friction [-]. */
export const HEAT_PER_FRICTION: R = 2.5130396903;
/** One over the lowest Reynolds number: gas all but at rest. */
const HIGHEST_PER_RE: R = 0.01;
/** (log2(10) / 3.6)^2: the law with the logarithm to base 2. */
const TURBULENT: R = 0.851486;
/** Viscosity of air [1e-5 Pa s] as a cubic of T / 1000 K. */
const MU: R = 0.3916679126063845;
const MU_1: R = 5.5074823864277205;
const MU_2: R = -2.1844822994960795;
const MU_3: R = 0.44803168097210977;

/** Fanning factor [-] from momentum [kg/m2 s], T [K], diameter [m], roughness term [-]. */
export function fanning(momentum: V, temperature: V, diameter: R, roughTerm: R): V {
  const t: V = temperature * 0.001;
  const viscosity: V = 1e-5 * (MU + t * (MU_1 + t * (MU_2 + t * MU_3)));
  const perRe: V = min(HIGHEST_PER_RE, viscosity / (abs(momentum) * diameter + 1e-12));
  const log: V = log2Quick(roughTerm + 6.9 * perRe);
  return max(16 * perRe, TURBULENT / (log * log));
}

/** Friction of a cell's wall: Fanning factor over diameter [1/m]. */
export function wallFriction(x: I, k: I): void {
  const friction: V = fanning(X[x + MOMENTUM], X[x + T], K[k + DIAMETER], K[k + ROUGH_TERM]);
  X[x + RUB] = friction * K[k + PER_DIAMETER];
}
