/**
 * Inertial length of a mouth: the flare and the air outside, as a length of the bore below the flare.
 *
 *   dp = rho l du/dt,   l = int (a / r)^2 dx + E a + E_lip a
 *
 *   u  velocity in the bore [m/s]      a  radius of the bore [m]      r(x)  radius of the flare [m]
 *   E  what plane waves in the flare leave out, air outside counted, in bore radii [-]
 *   E_lip  what a rim rolled on, outwards and back, adds [-]
 *
 * The flare is a quarter ellipse, tangent to the bore and square to it at the rim. No published table
 * for flares was found. Source: low-frequency potential flow, solved by tests/exact/mouthLength.test.ts,
 * which gives the plain end of Levine & Schwinger (1948), E = 0.6127, and each row below. Plane waves
 * with the end correction of the rim, 0.6127 rim radii, miss 4 to 5 mm of it in a usual flare.
 *
 * Depth to 1.5 bores, overhang to 0.75 bores; beyond, the last row holds. Thin wall, still air,
 * ka well below 1.
 */
import { sin } from '../elementary/angles.ts';
import { square } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';

/** A mouth [m]; depth and overhang are 0 for a plain cut end. */
export interface MouthShape {
  /** Diameter of the bore below the flare. */
  bore: number;
  /** Depth of the flare along the axis. */
  depth: number;
  /** How far the rim stands out beyond the bore. */
  overhang: number;
  /** Radius over which the rim is rolled back; absent: a sharp rim. */
  lip?: number;
}

/** E [-] against depth (rows) and overhang (columns), both in bore radii. */
export const MOUTH_LENGTH_TABLE = {
  depth: [0, 0.1, 0.2, 0.4, 0.8, 1.6, 3],
  overhang: [0, 0.1, 0.2, 0.4, 0.8, 1.5],
  beyond: [
    [0.6127, 0.6471, 0.6676, 0.6958, 0.7267, 0.7579],
    [0.6127, 0.6241, 0.6398, 0.6642, 0.6953, 0.7262],
    [0.6127, 0.6131, 0.6228, 0.6417, 0.6697, 0.6996],
    [0.6127, 0.6011, 0.6017, 0.6101, 0.6297, 0.6564],
    [0.6127, 0.5895, 0.5793, 0.5725, 0.5763, 0.5932],
    [0.6127, 0.5798, 0.5592, 0.5352, 0.5169, 0.5152],
    [0.6127, 0.5731, 0.5448, 0.5068, 0.4675, 0.4437],
  ],
} as const;

/** E_lip [-] of a roll through 135 deg against its radius (columns) and overhang (rows), in bore radii. */
export const LIP_TABLE = {
  lip: [0, 0.05, 0.1, 0.2, 0.3],
  overhang: [0, 0.1, 0.25, 0.5, 1],
  added: [
    [0, 0.0151, 0.0293, 0.0451, 0.0536],
    [0, 0.0138, 0.0221, 0.0344, 0.0432],
    [0, 0.0102, 0.0167, 0.0261, 0.0331],
    [0, 0.0069, 0.0115, 0.0183, 0.0235],
    [0, 0.0038, 0.0066, 0.0107, 0.014],
  ],
} as const;

/** Greatest error of the length between rows [share of it]; measured half-way between them. */
export const MOUTH_LENGTH_SPREAD = 0.005;

/** Length of the bore with the inertia of flare and outside air [m]. */
export function mouthLength({ bore, depth, overhang, lip = 0 }: MouthShape): number {
  const a = bore / 2;
  return (
    flareLength(bore, depth, overhang) + a * beyondPlaneWaves(depth / a, overhang / a, lip / a)
  );
}

/**
 * What plane waves in the flare leave out as an end correction of the rim [rim radii]: the same inertia
 * as a piece of pipe of the rim's bore in front of it.
 */
export function rimCorrection(mouth: MouthShape): number {
  const a = mouth.bore / 2;
  const rim = a + mouth.overhang;
  const outside = mouthLength(mouth) - flareLength(mouth.bore, mouth.depth, mouth.overhang);
  return (outside * rim) / (a * a);
}

/** E + E_lip [-]; all in bore radii. */
function beyondPlaneWaves(depth: number, overhang: number, lip: number): number {
  const { beyond, ...table } = MOUTH_LENGTH_TABLE;
  const E = interpolateLinear(
    table.depth,
    beyond.map((row) => interpolateLinear(table.overhang, row, overhang)),
    depth,
  );
  const added = LIP_TABLE.added.map((row) => interpolateLinear(LIP_TABLE.lip, row, lip));
  return E + interpolateLinear(LIP_TABLE.overhang, added, overhang);
}

/** Steps of Simpson's rule: 1e-6 of the length. */
const STEPS = 32;

/** int (a / r)^2 dx of the flare alone [m], in the angle of the ellipse. */
export function flareLength(bore: number, depth: number, overhang: number): number {
  const share = (2 * overhang) / bore;
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) {
    const sine = sin(((Math.PI / 2) * i) / STEPS);
    const weight = i === 0 || i === STEPS ? 1 : i % 2 === 0 ? 2 : 4;
    sum += (weight * sine) / square(1 + share * (1 - sine));
  }
  return (depth * sum * Math.PI) / (6 * STEPS);
}
