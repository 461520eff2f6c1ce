/** Lengths by their mean in the band alone, at the speeds of a file and between them for those in contest. */
import { bandsOf, type Target } from '../../decision/target.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointOutcome, PointRunner } from '../../sweep/runner.ts';
import { allPoints, type SweepObserver, withLength } from '../../sweep/sweep.ts';
import { Contest, type Resolution } from '../contest.ts';
import { Curves } from '../curves.ts';

interface InBand {
  /** Its own length is the one that the others are weighed against. */
  engine: EngineSpecification;
  lengths: readonly number[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  refine: boolean;
}

/** A length's mean in the band; coarse where it is known at the speeds of the file alone and others better. */
export interface LengthMean {
  mean: number;
  coarse: boolean;
}

export interface LengthMeans {
  /** One a length. */
  means: LengthMean[];
  /** Absent where nothing was refined. */
  resolution?: Resolution;
  /** Every point of the lengths. */
  outcomes: PointOutcome[];
}

export async function lengthsInBand(
  { engine, lengths, speeds, target, refine }: InBand,
  runner: PointRunner,
  observer: SweepObserver,
): Promise<LengthMeans> {
  const own = engine.intake.trumpet.length;
  // What is asked is the mean: no speeds outside the band, and no floors there.
  const asked = { speeds: speedsAcross(speeds, target), target: { ...target, floors: [] }, own };
  const engineOf = (length: number) => (length === own ? engine : withLength(engine, length));
  const curves = new Curves({ ...asked, engineOf }, runner, observer);
  const mayWin = (length: number) => lengths.includes(length);
  await curves.add([...new Set([...lengths, own])]);
  const contest = new Contest({ refine, mayWin }, curves);
  const resolution = lengths.length > 0 ? await contest.conclude() : undefined;
  return {
    means: lengths.map((length) => {
      const { bandMean: mean, known } = curves.weigh(curves.at(length));
      return { mean, coarse: known === 'sweep' };
    }),
    ...(resolution && { resolution }),
    outcomes: curves.all.filter(({ length }) => mayWin(length)).flatMap(allPoints),
  };
}

/** Speeds of the bands, with those beside them where they end between two. */
function speedsAcross(speeds: readonly number[], target: Target): number[] {
  const bands = bandsOf(target);
  const from = Math.min(...bands.map((band) => band.from));
  const to = Math.max(...bands.map((band) => band.to));
  const first = Math.max(
    speeds.findLastIndex((speed) => speed <= from),
    0,
  );
  const last = speeds.findIndex((speed) => speed >= to);
  return speeds.slice(first, last < 0 ? undefined : last + 1);
}

/** Points that are asked for twice computed once. */
export function onceOnly(runner: PointRunner): PointRunner {
  const known = new Map<EngineSpecification, Map<number, Promise<PointOutcome>>>();
  return {
    run(job) {
      const own = known.get(job.engine) ?? new Map<number, Promise<PointOutcome>>();
      known.set(job.engine, own);
      const outcome = own.get(job.speed) ?? runner.run(job);
      own.set(job.speed, outcome);
      return outcome;
    },
  };
}
