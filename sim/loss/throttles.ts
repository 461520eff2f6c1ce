/**
 * The family of throttles: what each leaves open, how many sharp openings lie one behind the other, and what it
 * loses wide open. A new one is a file with its area and a line here, in `THROTTLE_KINDS` and in
 * report/throttleOutline.ts. Sources: beside each figure, and in the file of each area.
 */
import { circleArea } from '../duct/profile.ts';
import { asin, cos } from '../elementary/angles.ts';
import { square } from '../elementary/powers.ts';
import type { ThrottleSpecification } from '../specification.ts';
import { barrelOpenArea } from './barrel.ts';
import { butterflyOpenArea } from './butterfly.ts';
import { slideOpenArea } from './slide.ts';

export type Plate = Omit<ThrottleSpecification, 'length' | 'shaftPosition' | 'angle'>;

interface Throttle {
  /** How it is called. */
  noun: string;
  /** On what it lies when air presses on it. */
  carriedBy: string;
  /** Open area [m^2] at an angle [deg], 90 being wide open. */
  openArea(plate: Plate, angle: number): number;
  /** Share of the bore that its edges leave to the jet, for the contraction [-]. */
  edges(plate: Plate, angle: number): number;
  /** Sharp openings of that area, one behind the other. */
  openings: number;
  /** Loss wide open, dynamic heads of the bore [-]; `shaft` its diameter over the bore. */
  openLoss(shaft: number): number;
}

const RADIANS = Math.PI / 180;

const butterfly: Throttle = {
  noun: 'plate',
  carriedBy: 'with its shaft into the bearings',
  openArea: butterflyOpenArea,
  // What the plate alone leaves open: a round shaft contracts nothing.
  edges: ({ closedAngle }, angle) =>
    1 - cos(Math.max(angle, closedAngle) * RADIANS) / cos(closedAngle * RADIANS),
  openings: 1,
  openLoss: (shaft) => PLATE_DRAG + shaftLoss(shaft),
};

const slide: Throttle = {
  noun: 'slide',
  carriedBy: 'onto its guides',
  openArea: slideOpenArea,
  edges: (plate, angle) => slideOpenArea(plate, angle) / circleArea(plate.bore),
  openings: 1,
  openLoss: () => OPEN_GATE,
};

const barrelOf = (plate: Plate) => ({
  ...plate,
  barrelDiameter: plate.barrelDiameter ?? USUAL_BARREL * plate.bore,
});

const barrel: Throttle = {
  noun: 'barrel',
  carriedBy: 'into its bearings',
  openArea: (plate, angle) => barrelOpenArea(barrelOf(plate), angle),
  edges: (plate, angle) => barrelOpenArea(barrelOf(plate), angle) / circleArea(plate.bore),
  openings: 2,
  openLoss: () => OPEN_BALL,
};

const THROTTLES = { butterfly, slide, barrel } satisfies Record<ThrottleKind, Throttle>;

export const THROTTLE_KINDS = ['butterfly', 'slide', 'barrel'] as const;
export type ThrottleKind = (typeof THROTTLE_KINDS)[number];

/** What is known of the throttle of a body; a butterfly where nothing is said. */
export function throttleOf({ kind }: Pick<Plate, 'kind'>): Throttle {
  return THROTTLES[kind ?? 'butterfly'];
}

/** Barrel over bore; common practice, no source. */
export const USUAL_BARREL = 1.5;

/** Loss of a thin plate wide open [dynamic heads], fitted to Weisbach's valves at 5 and 10 deg from open. */
const PLATE_DRAG = 0.2;
/** Of a gate valve wide open: Perry's Chemical Engineers' Handbook (from memory). */
const OPEN_GATE = 0.17;
/** Of a ball valve of full bore wide open: handbooks of fittings, three friction factors (from memory). */
const OPEN_BALL = 0.05;

/**
 * Loss of the open plate's shaft [dynamic heads]: Borda-Carnot from the free area to the full bore.
 *
 * The area of a strip of width d across a circle of diameter D is exact:
 * covered = (2/pi) (asin(k) + k sqrt(1 - k^2)) with k = d/D.
 *
 * @param k shaft diameter over bore [-]
 */
function shaftLoss(k: number): number {
  const free = 1 - (2 / Math.PI) * (asin(k) + k * Math.sqrt(1 - k * k));
  return square(1 / free - 1);
}
