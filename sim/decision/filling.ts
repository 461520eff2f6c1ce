/**
 * Whether the air caught is of the amount that an engine can catch.
 *
 *   filling = VE * (p0 / T0) / (pf / Tf)
 *
 *   VE      volumetric efficiency against ambient air [-]     p0, T0  ambient air [Pa], [K]
 *   pf, Tf  air that the trumpets breathe [Pa], [K]
 *
 * Below 0.4 and above 1.4 at full throttle no engine is known; common practice, no source. An answer
 * there is most often a slip in the file.
 */
import type { CylinderFigures, PointResult } from '../engine/point.ts';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';

export const POSSIBLE_FILLING = [0.4, 1.4] as const;

/** Air caught over what the cylinder would hold of the air that the trumpets breathe [-]. */
export function fillingOf(
  { ambient, intake: { feed } }: EngineSpecification,
  volumetricEfficiency: number,
): number {
  const outside = ambient.pressure / ambient.temperature;
  return (volumetricEfficiency * outside) / (feed.pressure / feed.temperature);
}

/** Most less least that a cylinder catches over what they catch on average [-]; undefined where all are alike. */
export function fillingSpread({
  cylinders,
  volumetricEfficiency,
}: PointResult): number | undefined {
  if (!cylinders) return undefined;
  const { fullest, emptiest } = extremes(cylinders);
  return (fullest.volumetricEfficiency - emptiest.volumetricEfficiency) / volumetricEfficiency;
}

/** The cylinders that catch most and least. */
export function extremes(cylinders: readonly CylinderFigures[]) {
  const rising = cylinders.toSorted((a, b) => a.volumetricEfficiency - b.volumetricEfficiency);
  return { emptiest: rising[0]!, fullest: rising.at(-1)! };
}

/** Plate angle from which the throttle counts as open [deg]. */
const OPEN = 60;

/** The points whose filling is not believed; none with the throttle part shut. */
export function strangeFillings(
  engine: EngineSpecification,
  outcomes: readonly PointOutcome[],
): { speed: number; filling: number }[] {
  if (engine.intake.throttle.angle < OPEN) return [];
  const [low, high] = POSSIBLE_FILLING;
  return outcomes
    .flatMap((outcome) => (isFailure(outcome) ? [] : [outcome]))
    .map(({ speed, volumetricEfficiency }) => {
      return { speed, filling: fillingOf(engine, volumetricEfficiency) };
    })
    .filter(({ filling }) => filling < low || filling > high);
}
