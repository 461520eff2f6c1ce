/**
 * Torques of springs on what they turn.
 *
 *   lever    arm r cos(a - a0), deflection r (sin(a - a0) - sin(-a0)); quadrant r and r a
 *   spring   (preload + rate deflection) arm, or preload + rate a of a torsion spring
 *
 * Beyond 90 degrees from square the arm is negative: the spring has gone over centre and holds open.
 */
import { cos, sin } from '../elementary/angles.ts';
import type { Lever, Spring } from './linkage.ts';

/** Arm of the pull at an angle [m]; negative beyond the centre. */
export function armAt({ radius, squareAt }: Lever, angle: number): number {
  return squareAt === undefined ? radius : radius * cos(angle - squareAt);
}

/** How far the pull has moved since the angle 0 [m]. */
export function pullAt({ radius, squareAt }: Lever, angle: number): number {
  return squareAt === undefined ? radius * angle : radius * (sin(angle - squareAt) + sin(squareAt));
}

/** Force [N] of one of the springs, or moment [N m] of a torsion spring, at an angle. */
export function loadOf({ rate, preload, lever }: Spring, angle: number): number {
  return preload + rate * (lever ? pullAt(lever, angle) : angle);
}

/** Closing torque of one of the springs at an angle [N m]. */
export function torqueOfOne(spring: Spring, angle: number): number {
  const load = loadOf(spring, angle);
  return spring.lever ? load * armAt(spring.lever, angle) : load;
}

/** Closing torque of all of them [N m]. */
export function torqueOf(springs: readonly Spring[], angle: number): number {
  return springs.reduce((sum, spring) => sum + spring.count * torqueOfOne(spring, angle), 0);
}
