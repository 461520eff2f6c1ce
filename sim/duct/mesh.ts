/** The finite-volume mesh of a duct: geometry only. */
import {
  circleArea,
  diameterAt,
  lengthOf,
  type Profile,
  slendernessTo,
  volumeTo,
} from './profile.ts';

export interface Mesh {
  /** Number of cells n. */
  cells: number;
  /** Total length [m]. */
  length: number;
  /** Cell length, the same for all [m]. */
  dx: number;
  /** Areas of the n + 1 faces [m^2]. */
  faceArea: Float64Array;
  /** Volumes of the n cells [m^3]. */
  volume: Float64Array;
  /** Mean areas of the n cells, volume over length [m^2]. */
  meanArea: Float64Array;
  /** 1 / V of each cell [1/m^3], n. */
  perVolume: Float64Array;
  /** Diameter of the circle of each cell's mean area [m], n. */
  diameter: Float64Array;
  /** One over it [1/m], n. */
  perDiameter: Float64Array;
  /** Area of the neighbour towards x = 0 over the cell's own [-], n; at the end, the face's. */
  lowRatio: Float64Array;
  /** Area of the neighbour away from x = 0 over the cell's own [-], n; at the end, the face's. */
  highRatio: Float64Array;
  /** The cell's own area over that of its face towards x = 0 [-], n. */
  toLow: Float64Array;
  /** The cell's own area over that of its face away from x = 0 [-], n. */
  toHigh: Float64Array;
}

/** Fewest cells of a duct: a slope needs neighbours on both sides. */
const FEWEST_CELLS = 3;

/** Cells of at most `largestCell` [m] along a profile. */
export function meshOf(profile: Profile, largestCell: number): Mesh {
  const length = lengthOf(profile);
  const cells = Math.max(FEWEST_CELLS, Math.ceil(length / largestCell - 1e-9));
  const dx = length / cells;
  const faceArea = Float64Array.from({ length: cells + 1 }, (_, i) =>
    i === 0 || i === cells
      ? circleArea(diameterAt(profile, i * dx))
      : inertialArea(profile, i * dx, dx),
  );
  const volume = Float64Array.from(
    { length: cells },
    (_, i) => volumeTo(profile, (i + 1) * dx) - volumeTo(profile, i * dx),
  );
  const meanArea = volume.map((v) => v / dx);
  const diameter = meanArea.map((area) => Math.sqrt((4 * area) / Math.PI));
  return {
    cells,
    length,
    dx,
    faceArea,
    volume,
    meanArea,
    perVolume: volume.map((v) => 1 / v),
    diameter,
    perDiameter: diameter.map((d) => 1 / d),
    lowRatio: meanArea.map((area, i) => (meanArea[i - 1] ?? faceArea[0]!) / area),
    highRatio: meanArea.map((area, i) => (meanArea[i + 1] ?? faceArea[cells]!) / area),
    toLow: meanArea.map((area, i) => area / faceArea[i]!),
    toHigh: meanArea.map((area, i) => area / faceArea[i + 1]!),
  };
}

/**
 * Area of an inner face, such that gas between the centres of its cells resists acceleration as in
 * the duct: dx / A = integral of dx / A. A flare shorter than a cell then has its right acoustic
 * length; a mean of the area would make it too short.
 */
function inertialArea(profile: Profile, x: number, dx: number): number {
  return dx / (slendernessTo(profile, x + dx / 2) - slendernessTo(profile, x - dx / 2));
}
