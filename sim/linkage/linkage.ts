/**
 * From the driver's foot to the plates as data: a pedal, a cable in its sheath, shafts with plates joined
 * by links, springs on any of them. Angles in radians from the pedal released and the plates shut.
 */
import type { Coil, CoilKind } from './coil.ts';

/**
 * A lever that something pulls on. Without `squareAt` it is a quadrant, whose arm stays; with it the pull
 * keeps its direction and the arm is radius cos(angle - squareAt).
 */
export interface Lever {
  /** [m] */
  radius: number;
  /** Angle at which the pull stands square to the lever [rad]. */
  squareAt?: number;
}

/** One spring, or several alike that pull side by side. */
export interface Spring {
  name: string;
  kind: CoilKind;
  /** How many are alike [-]. */
  count: number;
  /** Of each: force over deflection [N/m], or moment over angle [N m/rad] of a torsion spring. */
  rate: number;
  /** Of each, released: force [N], or moment [N m] of a torsion spring. */
  preload: number;
  /** What a compression or tension spring pulls on; absent with a torsion spring. */
  lever?: Lever;
  /** Wire and coil; absent where the rate was measured. */
  coil?: Coil;
}

/** One shaft with its plates. */
export interface Shaft {
  name: string;
  /** [-] */
  plates: number;
  /** Place in the list of the shaft that a link joins it to; absent where the cable pulls. */
  drivenBy?: number;
  /** Friction of bearings and seals [N m]. */
  friction: number;
  springs: readonly Spring[];
}

export interface Cable {
  /** All bends together [rad]. */
  bends: number;
  /** Coefficient of friction in the sheath [-]. */
  friction: number;
  /** What it pulls on at the first shaft. */
  lever: Lever;
}

export interface Pedal {
  /** From the pivot to the middle of the foot pad [m]. */
  length: number;
  /** From the pivot to the cable [m]. */
  arm: number;
  /** Foot travel to the floor or a stop [m]; absent where it is not known. */
  travel?: number;
  /** Friction of its pivot, felt at the pad [N]. */
  friction: number;
  springs: readonly Spring[];
}

export interface Linkage {
  pedal: Pedal;
  cable: Cable;
  /** The first is pulled by the cable; links turn shafts by equal angles. */
  shafts: readonly Shaft[];
  /** From shut to wide open [rad]. */
  opening: number;
}
