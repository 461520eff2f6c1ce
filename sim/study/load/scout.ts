/**
 * Where the air swings with speed, seen ahead on coarse cells: at openings where waves count, at more speeds than the
 * table will have. What is computed so chooses the speeds and is then forgotten.
 */

import { type KnotWishes, lineError, lineKnots } from '../../decision/lineKnots.ts';
import { type Figures, type Step, stepErrors, transposed } from '../../decision/loadGrid.ts';
import { power } from '../../elementary/powers.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { LoadQuestion } from './ask.ts';
import { airOf } from './cell.ts';
import type { LoadPoint } from './compute.ts';

/** Air at some openings [deg] and many speeds [rpm], [angle][speed]. */
export interface Scouted {
  angles: readonly number[];
  speeds: readonly number[];
  air: Figures;
}

/** Cells over those of the file, and the change from cycle to cycle that is near enough. Our own choice: docs/load.md. */
const COARSE = { cell: 4, settle: 0.005 };
/** The widest of the first openings: behind a plate nearly shut there are no waves to speak of. */
const OPENINGS = 4;
/** Speeds for each that the table may have; in one ratio, for waves lie the closer the slower the engine turns. Our own choice. */
const SPEEDS_EACH = 3;

export function coarse(engine: EngineSpecification): EngineSpecification {
  const { intakeCell, exhaustCell, settle } = engine.numerics;
  const numerics = {
    ...engine.numerics,
    intakeCell: COARSE.cell * intakeCell,
    exhaustCell: COARSE.cell * exhaustCell,
    settle: Math.max(settle, COARSE.settle),
  };
  return { ...engine, numerics };
}

/** @param point computes the coarse engine */
export async function scout(
  { from, to, mostSpeeds }: LoadQuestion,
  firstAngles: readonly number[],
  rounded: (speed: number) => number,
  point: LoadPoint,
): Promise<Scouted> {
  const angles = firstAngles.slice(-OPENINGS);
  const steps = SPEEDS_EACH * mostSpeeds - 1;
  const inner = Array.from({ length: steps - 1 }, (_, i) =>
    rounded(from * power(to / from, (i + 1) / steps)),
  );
  const speeds = [...new Set([from, ...inner, to])].sort((a, b) => a - b);
  const air = await Promise.all(
    angles.map((angle) =>
      Promise.all(speeds.map(async (speed) => airOf(await point(angle, speed)))),
    ),
  );
  return { angles, speeds, air };
}

/** Speeds that a table has at least: what coarse cells do not see may bend there all the same. Our own choice. */
const LEAST = 7;

/** As few of those speeds as lines within `limit` want, at most so many. */
export function scoutedSpeeds({ speeds, air }: Scouted, wishes: KnotWishes): number[] {
  const kept = lineKnots(speeds, air, wishes);
  while (kept.length < Math.min(LEAST, speeds.length)) {
    const gaps = kept.slice(1).map((k, i) => k - kept[i]!);
    const widest = gaps.indexOf(Math.max(...gaps));
    kept.splice(widest + 1, 0, kept[widest]! + (gaps[widest]! >> 1));
  }
  return kept.map((i) => speeds[i]!);
}

/** Steps of speed and what lines err there: as seen ahead, and nearer to the stop than that by the bend of the table itself. */
export function scoutedSteps(
  scouted: Scouted,
  { angles, speeds, air }: { angles: readonly number[]; speeds: readonly number[]; air: Figures },
): Step[] {
  const shut = air.filter((_, i) => angles[i]! < scouted.angles[0]!);
  const bends = stepErrors(speeds, transposed(air));
  return stepErrors(speeds, transposed(shut)).map((step, i) => {
    const [j, k] = [speeds[i]!, speeds[i + 1]!].map((speed) => scouted.speeds.indexOf(speed));
    if (j! < 0 || k! < 0) return bends[i]!;
    const { error, at, row } = lineError(scouted.speeds, scouted.air, j!, k!);
    if (error <= step.error) return step;
    const across = angles.indexOf(scouted.angles[row]!);
    return { ...step, error, across, worst: scouted.speeds[at]! };
  });
}
