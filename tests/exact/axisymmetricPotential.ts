/**
 * Potential flow from all around into a thin-walled round pipe, plain or flared, with or without a
 * wall before its mouth: the low-frequency end correction, from first principles.
 *
 * The wall is a sheet of vortex rings whose stream function is even along it:
 *
 *   sum over rings  Gamma psi(r, z; R, Z) = a^2 / 2       unit velocity deep in the bore a
 *   psi = sqrt(r R) / 2 pi ((2/k - k) K(k) - (2/k) E(k)),  k^2 = 4 r R / ((r + R)^2 + (z - Z)^2)
 *   phi(z) = Gamma / 2 (1 - (z - Z) / sqrt(R^2 + (z - Z)^2))   on the axis, 0 far away
 *   l   = phi deep in the pipe, carried on at unit velocity to where the bore begins
 *
 * r, z of the point, R, Z of the ring, both in bore radii; the mouth lies at z = 0, the pipe below.
 * A wall at z = h is the image of every ring in it, turning the other way. Sources: Lamb,
 * Hydrodynamics, sec. 161 (vortex rings); the sheet's strength goes as the root of the distance from
 * the edge, which running along the wall as a square takes out.
 */
import { Matrix, solve } from 'ml-matrix';
import { interpolateLinear } from '../../sim/interpolation.ts';

/** A mouth in bore radii. */
export interface Mouth {
  /** Depth and overhang of a quarter-ellipse flare; 0 for a plain cut end. */
  depth: number;
  overhang: number;
  /** Radius over which the rim is rolled on, outwards and back; 0 for a sharp rim. */
  lip: number;
  /** Distance from the rim plane to a wall in front; infinite where there is none. */
  wall: number;
}

export const PLAIN: Mouth = { depth: 0, overhang: 0, lip: 0, wall: Number.POSITIVE_INFINITY };

interface Point {
  r: number;
  z: number;
}

/** Straight pipe whose sheet is solved for, beyond the flare; what is left decays as exp(-3.8 z). */
const STRAIGHT = 6;
/** How far below the flare the flow counts as even: the rest is exp(-3.8 x 4). */
const DEEP = 4;
/** Angle over which a lip rolls on beyond the rim. */
const ROLL = 0.75 * Math.PI;
/** Where the far tail of the sheet, as strong as deep in the pipe, becomes a line of dipoles. */
const TAIL = 80;

/** Inertial length of flare and outside, in bore radii, from `panels` panels along the wall. */
export function mouthLength(mouth: Mouth, panels: number): number {
  const at = wallOf(mouth);
  const centre = (i: number) => (i + 0.5) / panels;
  const rows = Array.from({ length: panels }, (_, i) => {
    const here = at(centre(i));
    const row = Array.from({ length: panels }, (_, j) =>
      panelStream(mouth, at, here, [j / panels, (j + 1) / panels], i === j),
    );
    return { row, rest: 0.5 - tailStream(mouth, here) };
  });
  const sheet = solve(
    new Matrix(rows.map(({ row }) => row)),
    Matrix.columnVector(rows.map(({ rest }) => rest)),
  ).to1DArray();
  const deep = -mouth.depth - DEEP;
  const phi = sheet.reduce(
    (sum, strength, i) => sum + (strength * ringPotential(mouth, at(centre(i)), deep)) / panels,
    tailPotential(mouth, deep),
  );
  return phi - DEEP;
}

/** The limit for ever finer panels, the error falling as their square. */
export function mouthLengthLimit(mouth: Partial<Mouth>, panels = 40): number {
  const whole = { ...PLAIN, ...mouth };
  const [coarse, fine] = [mouthLength(whole, panels), mouthLength(whole, 2 * panels)];
  return fine + (fine - coarse) / 3;
}

/** Place on the wall against t from 0 at the free edge to 1; the way from the edge goes as t^2. */
function wallOf(mouth: Mouth): (t: number) => Point {
  const points = outline(mouth);
  const way = [0];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    way.push(way[i - 1]! + Math.hypot(b.r - a.r, b.z - a.z));
  }
  const rs = points.map(({ r }) => r);
  const zs = points.map(({ z }) => z);
  return (t) => {
    const s = t * t * way.at(-1)!;
    return { r: interpolateLinear(way, rs, s), z: interpolateLinear(way, zs, s) };
  };
}

/** The wall's outline from its free edge: over the lip to the rim, down the flare, along the pipe. */
function outline({ depth, overhang, lip }: Mouth): Point[] {
  const rim = 1 + overhang;
  const fine = Array.from({ length: 301 }, (_, i) => i / 300);
  const roll = fine.map((x) => {
    const angle = ROLL * (1 - x);
    return { r: rim + lip * Math.sin(angle), z: lip * (Math.cos(angle) - 1) };
  });
  const flare = fine.map((x) => {
    const angle = (x * Math.PI) / 2;
    return { r: 1 + overhang * (1 - Math.sin(angle)), z: -depth * (1 - Math.cos(angle)) };
  });
  const end = { r: 1, z: -depth - STRAIGHT };
  return [...(lip > 0 ? roll : []), ...(overhang > 0 ? flare : [{ r: 1, z: 0 }]), end];
}

/** Stream function at `here` of a panel of unit strength a unit of t, its image counted. */
function panelStream(
  mouth: Mouth,
  at: (t: number) => Point,
  here: Point,
  [from, to]: [number, number],
  own: boolean,
): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  if (!own) return half * gauss((x) => ringStream(mouth, here, at(middle + half * x)));
  // The point lies in the middle: each half by x = v^3, which takes the logarithm out.
  const side = (sign: number) =>
    gauss((x) => {
      const v = (x + 1) / 2;
      return 1.5 * v * v * ringStream(mouth, here, at(middle + sign * half * v ** 3));
    });
  return half * (side(1) + side(-1));
}

/** Stream function at `here` of the sheet beyond the panels, as strong as deep in the pipe. */
function tailStream(mouth: Mouth, here: Point): number {
  const start = mouth.depth + STRAIGHT;
  let sum = here.r ** 2 / (8 * (TAIL + here.z) ** 2);
  for (let from = start; from < TAIL; ) {
    const to = Math.min(TAIL, 1.5 * from);
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    sum += half * gauss((x) => ringStream(mouth, here, { r: 1, z: -middle - half * x }));
    from = to;
  }
  return sum;
}

/** Stream function at a point of a ring of unit strength, less that of its image in the wall. */
function ringStream({ wall }: Mouth, here: Point, ring: Point): number {
  const own = freeRingStream(here, ring);
  if (!Number.isFinite(wall)) return own;
  return own - freeRingStream(here, { r: ring.r, z: 2 * wall - ring.z });
}

function freeRingStream({ r, z }: Point, { r: R, z: Z }: Point): number {
  const kk = (4 * r * R) / ((r + R) ** 2 + (z - Z) ** 2);
  const rest = ((r - R) ** 2 + (z - Z) ** 2) / ((r + R) ** 2 + (z - Z) ** 2);
  const k = Math.sqrt(kk);
  const { K, E } = ellipticIntegrals(rest);
  return (Math.sqrt(r * R) / (2 * Math.PI)) * ((2 / k - k) * K - (2 / k) * E);
}

/** Potential on the axis at z of a ring of unit strength, less that of its image in the wall. */
function ringPotential({ wall }: Mouth, ring: Point, z: number): number {
  const own = 0.5 * (1 - (z - ring.z) / Math.hypot(ring.r, z - ring.z));
  if (!Number.isFinite(wall)) return own;
  const image = 2 * wall - ring.z;
  return own + 0.5 * (1 + (z - image) / Math.hypot(ring.r, z - image));
}

/** The same of the tail, from the end of the panels to minus infinity. */
function tailPotential({ depth, wall }: Mouth, z: number): number {
  const start = -depth - STRAIGHT;
  const own = 0.5 * (Math.hypot(1, z - start) - (z - start));
  if (!Number.isFinite(wall)) return own;
  const image = z - (2 * wall - start);
  return own + 0.5 * (Math.hypot(1, image) + image);
}

/** K and E by the arithmetic-geometric mean; `rest` is 1 - k^2. */
function ellipticIntegrals(rest: number): { K: number; E: number } {
  let [a, b, weight] = [1, Math.sqrt(rest), 0.5];
  let sum = weight * (1 - rest);
  while (Math.abs(a - b) > 1e-15 * a) {
    const c = (a - b) / 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    weight *= 2;
    sum += weight * c * c;
  }
  const K = Math.PI / (2 * a);
  return { K, E: K * (1 - sum) };
}

/** Integral over -1 < x < 1, Gauss-Legendre with six points. */
function gauss(f: (x: number) => number): number {
  return GAUSS.reduce((sum, [x, weight]) => sum + weight * (f(x) + f(-x)), 0);
}

const GAUSS = [
  [0.2386191860831969, 0.467913934572691],
  [0.6612093864662645, 0.3607615730481386],
  [0.932469514203152, 0.1713244923791704],
] as const;
