/** The pedal question: what the foot feels, and whether every plate shuts with any one part gone. */
import { type Closing, closings } from '../../linkage/closing.ts';
import { bendingStress, borneStress, shearStress } from '../../linkage/coil.ts';
import {
  anglesOf,
  type EffortPoint,
  effortCurve,
  footTravel,
  pedalAngle,
  sheathFactor,
} from '../../linkage/effort.ts';
import type { Linkage, Spring } from '../../linkage/linkage.ts';
import { loadOf, torqueOfOne } from '../../linkage/torque.ts';

/** One spring at the ends of the travel. */
export interface SpringFigures {
  spring: Spring;
  /** What it stands on. */
  place: string;
  /** Of each: torque about what it stands on, shut and wide open [N m]. */
  shut: number;
  open: number;
  /** Greatest stress of the wire, and what it bears [Pa]; undefined where not known. */
  stress: number | undefined;
  borne: number | undefined;
}

export interface PedalStudy {
  linkage: Linkage;
  curve: EffortPoint[];
  closings: Closing[];
  springs: SpringFigures[];
  /** By what the cable's friction parts the way out from the way back [-]. */
  hysteresis: number;
  /** Angle that the foot reaches at the stop of the pedal [rad from shut]; undefined without a stop. */
  reached: number | undefined;
}

export function pedalStudyOf(linkage: Linkage): PedalStudy {
  const factor = sheathFactor(linkage.cable);
  return {
    linkage,
    curve: effortCurve(linkage),
    closings: closings(linkage),
    springs: springFigures(linkage),
    hysteresis: factor * factor,
    reached: reachedAngle(linkage),
  };
}

function springFigures(linkage: Linkage): SpringFigures[] {
  const angles = anglesOf(linkage);
  const turned = angles.map((angle) => pedalAngle(linkage, angle));
  return [
    ...linkage.shafts.flatMap(({ name, springs }) =>
      springs.map((spring) => figuresOf(spring, name, angles)),
    ),
    ...linkage.pedal.springs.map((spring) => figuresOf(spring, 'pedal', turned)),
  ];
}

function figuresOf(spring: Spring, place: string, angles: readonly number[]): SpringFigures {
  const { coil, kind } = spring;
  const load = Math.max(...angles.map((angle) => loadOf(spring, angle)));
  const stress = kind === 'torsion' ? bendingStress : shearStress;
  return {
    spring,
    place,
    shut: torqueOfOne(spring, angles[0]!),
    open: torqueOfOne(spring, angles.at(-1)!),
    stress: coil && stress(coil, load),
    borne: coil && borneStress(kind, coil),
  };
}

/** Halvings that bring an angle of a right angle to 1e-9 of it. */
const HALVINGS = 30;

function reachedAngle(linkage: Linkage): number | undefined {
  const { opening, pedal } = linkage;
  if (pedal.travel === undefined) return undefined;
  if (footTravel(linkage, opening) <= pedal.travel) return opening;
  let [low, high] = [0, opening];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (footTravel(linkage, middle) > pedal.travel) high = middle;
    else low = middle;
  }
  return low;
}

/** What is not drawn shut, one entry a shaft and part gone. */
export function stuck({ closings: all }: PedalStudy): Closing[] {
  return all.filter(({ left }) => left <= 0);
}
