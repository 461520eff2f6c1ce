/**
 * Slider-crank kinematics. Piston distance from top dead centre at crank angle theta:
 *
 *   x = a (1 - cos theta) + l - sqrt(l^2 - a^2 sin^2 theta),   a = stroke / 2, l = rod length
 *   V = V_displaced / (CR - 1) + x pi B^2 / 4
 *
 * Source: Heywood (1988), sec. 2.2, eqs. 2.4-2.6 (from memory).
 */

import { circleArea } from '../duct/profile.ts';
import { cos, sin } from '../elementary/angles.ts';
import { square } from '../elementary/powers.ts';

export interface CrankGeometry {
  /** Bore [m]. */
  bore: number;
  /** Stroke [m]. */
  stroke: number;
  /** Connecting rod length between centres [m]. */
  rodLength: number;
  /** Compression ratio [-]. */
  compressionRatio: number;
}

const RADIANS = Math.PI / 180;

/** Distance of the piston from top dead centre [m] at a crank angle [deg]. */
function pistonDistance(g: CrankGeometry, crankAngle: number): number {
  const a = g.stroke / 2;
  const theta = crankAngle * RADIANS;
  const sine = a * sin(theta);
  return a * (1 - cos(theta)) + g.rodLength - Math.sqrt(square(g.rodLength) - sine * sine);
}

/** Swept volume of one cylinder [m^3]. */
export function sweptVolume(g: CrankGeometry): number {
  return circleArea(g.bore) * g.stroke;
}

/** Cylinder volume [m^3] at a crank angle [deg]. */
export function cylinderVolume(g: CrankGeometry, crankAngle: number): number {
  const clearance = sweptVolume(g) / (g.compressionRatio - 1);
  return clearance + circleArea(g.bore) * pistonDistance(g, crankAngle);
}

/** Mean piston speed [m/s] at a speed [rpm]. */
export function meanPistonSpeed(g: CrankGeometry, speed: number): number {
  return (2 * g.stroke * speed) / 60;
}
