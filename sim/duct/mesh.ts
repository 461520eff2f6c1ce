/** The finite-volume mesh of a duct: geometry only. */
import { circleArea, diameterAt, lengthOf, type Profile, volumeTo } from './profile.ts';

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
  /** Diameter of the circle of each cell's mean area [m], n. */
  diameter: Float64Array;
  /** (A_right - A_left) / V of each cell [1/m], n. */
  areaGradient: Float64Array;
}

/** Fewest cells of a duct: a slope needs neighbours on both sides. */
const FEWEST_CELLS = 3;

/** Cells of at most `largestCell` [m] along a profile. */
export function meshOf(profile: Profile, largestCell: number): Mesh {
  const length = lengthOf(profile);
  const cells = Math.max(FEWEST_CELLS, Math.ceil(length / largestCell - 1e-9));
  const dx = length / cells;
  const faceArea = Float64Array.from({ length: cells + 1 }, (_, i) =>
    circleArea(diameterAt(profile, i * dx)),
  );
  const volume = Float64Array.from(
    { length: cells },
    (_, i) => volumeTo(profile, (i + 1) * dx) - volumeTo(profile, i * dx),
  );
  return {
    cells,
    length,
    dx,
    faceArea,
    volume,
    diameter: volume.map((v) => Math.sqrt((4 * v) / (Math.PI * dx))),
    areaGradient: volume.map((v, i) => (faceArea[i + 1]! - faceArea[i]!) / v),
  };
}
