/**
 * The air in front of a mouth as drops there feel it, distance z from its plane and r from its axis.
 *
 *   inflow    q = U (1 - l / m), v_r / u = -r (l + m) / (2 n m^2), with m^2 = l^2 + a^2, n^2 = 1 - r^2 / m^2
 *             l: half the short axis of the spheroid through z, r whose foci are the rim, (r / m)^2 + (z / l)^2 = 1
 *   outflow   a jet as far as its front, u = U / (1 + exp(4 (r - a) / b)), b = 0.18 z; beyond it the air that
 *             it pushes, as a mouth of twice the area would do there at half the speed
 *   front     goes on at U / 2
 *
 * with U the velocity in the mouth and a its radius. The inflow is that of a disc of sinks, exact on the axis and far
 * away; tests/spray/mouthFlow.test.ts holds it to the disc itself elsewhere. A jet that meets air at rest of its own
 * density pushes it at half its speed, and what comes behind spreads over twice the area. Outflows of an engine are a
 * few diameters long, so their jet still has its core, and a mixing layer around it.
 * Left out: the puff that goes on after the flow has turned, what a jet draws in from beside it (a few per cent of U),
 * its turbulence, wind, and the neighbour's mouth.
 * Sources: potential flow; half the speed: Birkhoff et al., J. Appl. Phys. 19 (1948) 563, and for puffs out of a pipe
 * Gharib, Rambod & Shariff, J. Fluid Mech. 360 (1998) 121; 0.18: Brown & Roshko, J. Fluid Mech. 64 (1974) 775. From
 * memory; the papers were not at hand.
 */
import { exp, hypot } from '../elementary/powers.ts';

/** Speed of a jet's front over that of the jet [-]. */
export const FRONT = 1 / 2;
/** Thickness of the mixing layer over the distance [-]. */
const SPREAD = 0.18;

/** A mouth and what passes through it. */
export interface MouthState {
  /** Radius [m]. */
  radius: number;
  /** Velocity in it [m/s], positive inwards. */
  speed: number;
  /** How far the jet has come since the flow last turned out [m]. */
  front: number;
}

/** Velocity along the line, positive towards the mouth, and away from its axis [m/s]. */
export interface MouthFlow {
  u: number;
  across: number;
}

/** Sets `out` to the velocity at z > 0, r [m]. */
export function mouthFlow(out: MouthFlow, z: number, r: number, mouth: MouthState): void {
  const { radius, speed, front } = mouth;
  if (speed >= 0) discOfSinks(out, z, r, radius, speed);
  else if (z > front) discOfSinks(out, z - front, r, radius / Math.sqrt(FRONT), FRONT * speed);
  else {
    out.u = speed / (1 + exp((4 * (r - radius)) / (SPREAD * z)));
    out.across = 0;
  }
}

/** Of sources, where the speed is below 0. */
function discOfSinks(out: MouthFlow, z: number, r: number, radius: number, speed: number): void {
  const beyond = 0.5 * (z * z + r * r - radius * radius);
  const axis = Math.sqrt(Math.max(beyond + hypot(beyond, radius * z), 0));
  const long = hypot(axis, radius);
  const along = 2 * long * Math.sqrt(Math.max(long * long - r * r, 0));
  const inwards = r * (axis + long);
  const per = (speed * (1 - axis / long)) / hypot(along, inwards);
  out.u = per * along;
  out.across = -per * inwards;
}
