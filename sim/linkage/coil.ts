/**
 * Coil springs of round wire: compression, tension and torsion.
 *
 *   d  wire [m]   D  mean coil diameter [m]   n  active coils [-]   w = D/d  spring index [-]
 *   G, E  shear and tension modulus [Pa]   F  force [N]   M  moment [N m]
 *   rate           R = G d^4 / (8 D^3 n)             moment rate  M/phi = E d^4 / (64 D n)
 *   shear stress   tau = k 8 F D / (pi d^3)          bending      sigma = q 32 M / (pi d^3)
 *                  k = (w + 0.5)/(w - 0.75)                       q = (w + 0.07)/(w - 0.75)
 *
 * Free legs of a torsion spring of length l1 + l2 together add (l1 + l2)/(3 pi D) coils. No friction
 * between coils; the workshop form with 10.8 in place of 64/(2 pi) = 10.186 holds 6 % of it.
 *
 * Sources: EN 13906-1, -2 and -3, from memory. Range: 4 <= w <= 20, small pitch.
 */
import { cube, log10, square } from '../elementary/powers.ts';

/** What is known of a wire. */
interface WireKind {
  /** Shear and tension modulus [Pa]. */
  shear: number;
  tension: number;
  /** Least tensile strength [Pa] of a wire of diameter d [m]; absent where it is not known here. */
  strength?(d: number): number;
}

const MPA = 1e6;
const MILLIMETRE = 1e-3;

/**
 * Drawn unalloyed wire (EN 10270-1; strength of class SM, 1980 - 740 log10(d/mm) N/mm2), oil hardened and
 * tempered (EN 10270-2), stainless 1.4310 (EN 10270-3); all from memory.
 */
export const WIRES = {
  drawn: {
    shear: 81500 * MPA,
    tension: 206000 * MPA,
    strength: (d) => (1980 - 740 * log10(d / MILLIMETRE)) * MPA,
  },
  tempered: { shear: 79500 * MPA, tension: 206000 * MPA },
  stainless: { shear: 70000 * MPA, tension: 180000 * MPA },
} as const satisfies Record<string, WireKind>;

export type WireName = keyof typeof WIRES;
export type CoilKind = 'compression' | 'tension' | 'torsion';

export interface Coil {
  material: WireName;
  /** Wire diameter [m]. */
  wire: number;
  /** Mean coil diameter [m]. */
  diameter: number;
  /** Active coils [-]. */
  coils: number;
  /** Free legs of a torsion spring, both together [m]. */
  legs: number;
}

/** Spring indices between which the formulas hold; EN 13906-1 and -3, from memory. */
export const INDEX_RANGE = [4, 20] as const;

const springIndex = ({ wire, diameter }: Coil): number => diameter / wire;

const fourth = (x: number) => square(square(x));

/** Force over deflection of a compression or tension spring [N/m]. */
export function forceRate({ material, wire, diameter, coils }: Coil): number {
  return (WIRES[material].shear * fourth(wire)) / (8 * cube(diameter) * coils);
}

/** Moment over angle of a torsion spring [N m/rad]. */
export function momentRate({ material, wire, diameter, coils, legs }: Coil): number {
  const bent = coils + legs / (3 * Math.PI * diameter);
  return (WIRES[material].tension * fourth(wire)) / (64 * diameter * bent);
}

/** Greatest shear stress under a force [N], curvature counted [Pa]. */
export function shearStress(coil: Coil, force: number): number {
  const w = springIndex(coil);
  return (((w + 0.5) / (w - 0.75)) * 8 * force * coil.diameter) / (Math.PI * cube(coil.wire));
}

/** Greatest bending stress under a moment [N m], curvature counted [Pa]. */
export function bendingStress(coil: Coil, moment: number): number {
  const w = springIndex(coil);
  return (((w + 0.07) / (w - 0.75)) * 32 * moment) / (Math.PI * cube(coil.wire));
}

/** Share of the tensile strength that a wire bears at rest; EN 13906-1, -2 and -3, from memory [-]. */
const BORNE: Record<CoilKind, number> = { compression: 0.56, tension: 0.45, torsion: 0.7 };

/** Stress that the wire bears at rest [Pa]; undefined where its strength is not known here. */
export function borneStress(kind: CoilKind, { material, wire }: Coil): number | undefined {
  const known: WireKind = WIRES[material];
  const strength = known.strength?.(wire);
  return strength === undefined ? undefined : BORNE[kind] * strength;
}
