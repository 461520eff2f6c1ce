/**
 * What a mouth loses to the flow itself, quasi-steady: a jet on the way out, a vena contracta on the
 * way in. Pressure at the end of the bore above that of the still air, beside that of the air's inertia
 * and radiation (sim/loss/mouthRadiation.ts):
 *
 *   out   p = rho u^2 / 2 (K_out - 1)        K_out = (a / r_s)^4
 *   in    p = - rho u^2 / 2 (1 + K_in)       K_in  = (1/Cc - 1)^2, or a handbook's (sim/loss/entryLoss.ts)
 *   sine  Re z = 2/(3 pi) (K_in + K_out) M   of both ways, resistance over rho c; M = peak u / c
 *
 *   u    velocity in the bore, positive outwards [m/s]     a    radius of the bore [m]
 *   K    loss in dynamic heads of the bore [-]             r_s  radius where the flow leaves the flare [m]
 *   Cc   area of the vena contracta over that of the bore [-]
 *
 * The flow leaves the wall where it turns away from the axis by more than a diffuser bears: 10 deg, as
 * conical diffusers stall from some 7 to 10 deg of half angle (Kline, Abbott & Fox, J. Basic Eng. 81
 * (1959) 321, from memory). Rounding the edges governs the loss, and the loss is that of separation
 * (Atig, Dalmont & Gilbert, C. R. Mecanique 332 (2004) 299, abstract; Disselhorst & van Wijngaarden,
 * J. Fluid Mech. 99 (1980) 293, from memory). Quasi-steady where gas moves further than the edge is
 * round, u > omega times its radius: all strong waves of an intake. Growing flow clings longer: the
 * spread reaches to 30 deg (our own, no source). Re z: derived here, the work over a sine.
 *
 * Length: a steady jet out of a plain end has an end correction of 0.2554 a sqrt(1 - M^2) in the limit
 * of low frequency, against 0.6133 a at rest (Rienstra 1983, seen by Peters, Hirschberg, Reijnen &
 * Wijnands, J. Fluid Mech. 256 (1993) 499; figure from memory). Gas that swings to and fro has no
 * steady jet: 0.2554 is the least it can be, counted from where the flow leaves the wall.
 */
import { atan2, sin, tan } from '../../sim/elementary/angles.ts';
import { square } from '../../sim/elementary/powers.ts';
import { type MouthShape, mouthLength } from '../../sim/loss/mouthLength.ts';

/** Losses of a mouth in dynamic heads of its bore [-]. */
export interface MouthLosses {
  entryLoss: number;
  exitLoss: number;
}

/** Wall's angle to the axis at which the flow leaves it [deg]: least, usual, greatest. */
export const SEPARATION = { least: 5, usual: 10, greatest: 30 } as const;

/** End correction of a plain end that blows a steady jet, low frequency [radii]. */
export const END_CORRECTION_JET = 0.2554;

/** Quasi-steady pressure at the end of the bore above the still air's [Pa]. */
export function quasiSteadyPressure(
  velocity: number,
  density: number,
  { entryLoss, exitLoss }: MouthLosses,
): number {
  const heads = velocity > 0 ? exitLoss - 1 : -1 - entryLoss;
  return 0.5 * density * velocity * velocity * heads;
}

/** Radius at which the flow that leaves through a flare parts from it [m]. */
function partingRadius({ bore, depth, overhang }: MouthShape, angle: number): number {
  const a = bore / 2;
  if (depth <= 0 || overhang <= 0) return a;
  // Quarter ellipse r = a + b (1 - sin t), x = d (1 - cos t): its slope is (b / d) cot t.
  const t = atan2(overhang, depth * tan((angle * Math.PI) / 180));
  return a + overhang * (1 - sin(t));
}

/** Loss of the jet [dynamic heads of the bore] where the flow parts at this angle [deg]. */
export function exitLoss(mouth: MouthShape, angle: number = SEPARATION.usual): number {
  return square(square(mouth.bore / 2 / partingRadius(mouth, angle)));
}

/** Greatest and least loss of the jet [dynamic heads of the bore]. */
export function exitLossSpread(mouth: MouthShape): { low: number; high: number } {
  return { low: exitLoss(mouth, SEPARATION.greatest), high: exitLoss(mouth, SEPARATION.least) };
}

/** Loss [dynamic heads] behind a vena contracta of this share of the bore's area [-]. */
export function contractionLoss(contraction: number): number {
  return square(1 / contraction - 1);
}

/** Resistance of a sine over rho c [-]; `mach` its peak velocity over the speed of sound. */
export function sineResistance({ entryLoss, exitLoss }: MouthLosses, mach: number): number {
  return (2 / (3 * Math.PI)) * (entryLoss + exitLoss) * mach;
}

/**
 * Inertial length [m] while gas leaves: at most that of potential flow through the flare, at least
 * that of a steady jet from the foot of the flare.
 */
export function outflowLengthSpread(mouth: MouthShape): { low: number; high: number } {
  const high = mouthLength(mouth);
  return { low: Math.min(high, (END_CORRECTION_JET * mouth.bore) / 2), high };
}
