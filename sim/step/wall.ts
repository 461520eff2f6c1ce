/**
 * Friction and heat at the wall of a duct.
 *
 *   force per volume  = -(2 f / D + K' / 2) rho u |u|      f Fanning factor, K' loss heads per metre
 *   heat per volume   = (4 / D) h (Tw - T)
 *   h = cp rho |u| St,   St = 0.07 Re^(-1/4) / Pr          unsteady flow counted, Depcik & Assanis (2002)
 *   1 / sqrt(f) = -3.6 log10((eps / 3.7 D)^1.11 + 6.9 / Re)  turbulent, Haaland (1983)
 *   f = 16 / Re                                            laminar; the larger of the two is used
 *
 * Sources: Haaland (1983), J. Fluids Eng. 105:89 (within 2 % of Colebrook, Re 4e3 to 1e8), a steady,
 * fully developed law used in unsteady flow: common practice. Heat: Depcik & Assanis, A Universal Heat
 * Transfer Correlation for Intake and Exhaust Flows in a Spark-Ignition Internal Combustion Engine, SAE
 * 2002-01-0372: one constant fitted to data of intakes and exhausts, correlation coefficients 0.845 and 0.800
 * (abstract); twice the heat of steady flow at Re of 5e4; the data lie between Re of some 1e3 and 1e5 (from
 * memory), below 100 it is held. Viscosity: Sutherland's law (gas/viscosity.ts) by a cubic, fitted
 * there; the logarithm by a cubic of the mantissa (lanes.ts), f within 0.05 %.
 */
import { abs, type I, K, log2Quick, max, min, type R, sqrt, type V, X } from './lanes.ts';
import {
  DIAMETER,
  MOMENTUM,
  PER_DIAMETER,
  PIPE_HEAT,
  ROUGH_TERM,
  RUB,
  STIR,
  T,
  WALL_TEMPERATURE,
} from './layout.ts';

/** 4 x 0.07 / Pr with Pr = 0.71 (gas/viscosity.ts) [-]. */
const STANTON: R = 0.39436619718309857;
/** One over the lowest Reynolds number: gas all but at rest. */
const HIGHEST_PER_RE: R = 0.01;
/** (log2(10) / 3.6)^2: the law with the logarithm to base 2. */
const TURBULENT: R = 0.851486;
/** Viscosity of air [1e-5 Pa s] as a cubic of T / 1000 K. */
const MU: R = 0.3916679126063845;
const MU_1: R = 5.5074823864277205;
const MU_2: R = -2.1844822994960795;
const MU_3: R = 0.44803168097210977;

/** One over the Reynolds number of a cell [-], from its momentum [kg/m2 s], T [K], diameter [m]. */
function perReynolds(momentum: V, temperature: V, diameter: R): V {
  const t: V = temperature * 0.001;
  const viscosity: V = 1e-5 * (MU + t * (MU_1 + t * (MU_2 + t * MU_3)));
  return min(HIGHEST_PER_RE, viscosity / (abs(momentum) * diameter + 1e-12));
}

/** Fanning factor [-] from one over the Reynolds number and the roughness term. */
export function fanning(perRe: V, roughTerm: R): V {
  const log: V = log2Quick(roughTerm + 6.9 * perRe);
  return max(16 * perRe, TURBULENT / (log * log));
}

/** What a cell's wall does: Fanning factor over diameter, and share of heat given up a metre. */
export function wallLaws(x: I, k: I): void {
  const perDiameter: R = K[k + PER_DIAMETER];
  const perRe: V = perReynolds(X[x + MOMENTUM], X[x + T], K[k + DIAMETER]);
  X[x + RUB] = fanning(perRe, K[k + ROUGH_TERM]) * perDiameter;
  if (K[k + WALL_TEMPERATURE] > 0)
    X[x + STIR] = STANTON * K[PIPE_HEAT] * perDiameter * sqrt(sqrt(perRe));
}
