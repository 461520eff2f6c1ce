/** Two set-ups weighed against each other at the speeds of a file, and between them until that is known. */
import type { Target } from '../decision/target.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointRunner } from '../sweep/runner.ts';
import type { LengthCurve, SweepObserver } from '../sweep/sweep.ts';
import { Contest, type Resolution } from './contest.ts';
import { Curves } from './curves.ts';
import type { SetUpCurve, Weighed } from './weigh.ts';

export interface PairQuestion {
  engines: readonly [ours: EngineSpecification, theirs: EngineSpecification];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Whether points are computed between the speeds. */
  refine?: boolean;
}

export interface Pair {
  ours: SetUpCurve;
  theirs: SetUpCurve;
  /** Ours against theirs. */
  weighed: Weighed;
  /** How well both are known between the speeds; absent where nothing was refined. */
  resolution?: Resolution;
}

/** Names of the two among the curves. */
const [OURS, THEIRS] = [0, 1];

export async function resolvedPair(
  { engines, speeds, target, refine = false }: PairQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Pair> {
  const engineOf = (name: number) => engines[name]!;
  const curves = new Curves({ speeds, target, own: THEIRS, engineOf }, runner, observer);
  const contest = new Contest({ refine, mayWin: (name) => name === OURS }, curves);
  await curves.add([OURS, THEIRS]);
  const resolution = await contest.conclude();
  const { length: _, ...weighed } = curves.weigh(curves.at(OURS));
  return {
    ours: unnamed(curves.at(OURS)),
    theirs: unnamed(curves.at(THEIRS)),
    weighed,
    ...(resolution && { resolution }),
  };
}

function unnamed({ length: _, ...curve }: LengthCurve): SetUpCurve {
  return curve;
}
