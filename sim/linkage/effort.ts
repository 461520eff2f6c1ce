/**
 * What the foot feels on the way out and on the way back, at a creep.
 *
 *   pull at the shaft   (T -+ friction) / arm, + on the way out
 *   through the sheath  F e^(mu theta) out, F e^(-mu theta) back, theta all bends together
 *   at the pad          F arm/length + T_pedal/length +- friction
 *
 * Source: Euler's rope friction (capstan equation), from memory. No weight, no mass, no air on the plates;
 * cable and links neither stretch nor have play.
 */
import { exp } from '../elementary/powers.ts';
import type { Cable, Linkage, Shaft } from './linkage.ts';
import { armAt, pullAt, torqueOf } from './torque.ts';

/** One place of the travel. */
export interface EffortPoint {
  /** Angle of the plates from shut [rad]. */
  angle: number;
  /** Of the foot [m]. */
  travel: number;
  /** At the pad [N]. */
  out: number;
  back: number;
  /** Pull of the cable at the shafts on the way out [N]. */
  pull: number;
  /** Of all springs on the shafts, less nothing [N m]. */
  closing: number;
}

/** By what the pull grows through the bends of the sheath [-]. */
export const sheathFactor = ({ bends, friction }: Cable): number => exp(friction * bends);

/** Friction of some shafts together [N m]. */
export function frictionOf(shafts: readonly Shaft[]): number {
  return shafts.reduce((sum, { friction }) => sum + friction, 0);
}

/** Angle of the pedal with the plates at an angle [rad]; the cable leaves it by a quadrant. */
export function pedalAngle({ cable, pedal }: Linkage, angle: number): number {
  return pullAt(cable.lever, angle) / pedal.arm;
}

/** Foot travel with the plates at an angle [m]. */
export function footTravel(linkage: Linkage, angle: number): number {
  return linkage.pedal.length * pedalAngle(linkage, angle);
}

export function effortAt(linkage: Linkage, angle: number): EffortPoint {
  const { pedal, cable, shafts } = linkage;
  const closing = torqueOf(
    shafts.flatMap(({ springs }) => springs),
    angle,
  );
  const friction = frictionOf(shafts);
  const arm = armAt(cable.lever, angle);
  const factor = sheathFactor(cable);
  const own = torqueOf(pedal.springs, pedalAngle(linkage, angle)) / pedal.length;
  const atPad = (force: number) => (force * pedal.arm) / pedal.length + own;
  // A cable only pulls: plates that friction holds leave it slack.
  const pull = Math.max(closing + friction, 0) / arm;
  const left = Math.max(closing - friction, 0) / arm;
  return {
    angle,
    travel: footTravel(linkage, angle),
    out: atPad(pull * factor) + pedal.friction,
    back: atPad(left / factor) - pedal.friction,
    pull,
    closing,
  };
}

/** Places of the travel, both ends counted; enough for a smooth line. */
export const PLACES = 41;

/** Angles from shut to wide open [rad], evenly. */
export function anglesOf({ opening }: Linkage): number[] {
  return Array.from({ length: PLACES }, (_, i) => (opening * i) / (PLACES - 1));
}

export function effortCurve(linkage: Linkage): EffortPoint[] {
  return anglesOf(linkage).map((angle) => effortAt(linkage, angle));
}
