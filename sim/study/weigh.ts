/** Curves against each other, at the speeds at which all of them are known. */
import { smoothAt } from '../decision/smooth.ts';
import { scores, type Target } from '../decision/target.ts';
import { percentOver, tradeOff, type WeighedLength } from '../decision/tradeOff.ts';
import { allPoints, type LengthCurve, type Reach } from '../sweep/sweep.ts';
import { rangesOf } from './refinement.ts';

/** Speeds at which smooth curves are set against each other [rpm]. */
const FINE = 10;

export interface Asked {
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
}

/** All that was computed of a set-up. */
export type SetUpCurve = Omit<LengthCurve, 'length'>;

export type Weighed = Omit<WeighedLength, 'length'>;

/** One curve against another. */
export function weighedAgainst(asked: Asked, curve: SetUpCurve, baseline: SetUpCurve): Weighed {
  const at = speedsKnown(asked, [curve, baseline]);
  const [ours, own] = [curve, baseline].map((one) => scoresAt(asked.target, one, at));
  const weighed = tradeOff(at, ours!, own!, asked.target);
  if (!baseline.resolved) return weighed;
  const known = leastReach([curve, baseline]);
  if (known) return { ...weighed, known };
  // Its mean is that of few speeds; the baseline's is known better.
  const { bandMean } = weighedAgainst(asked, baseline, baseline);
  return { ...weighed, known: 'sweep', gainPercent: percentOver(weighed.bandMean, bandMean) };
}

/** The speeds at which curves are known [rpm]: close together where all are resolved. */
export function speedsKnown(asked: Asked, curves: readonly SetUpCurve[]): number[] {
  const reach = leastReach(curves);
  return reach ? readSpeeds(asked, curves, reach) : [...asked.speeds];
}

/** The speeds asked for, and close together in a reach. */
export function readSpeeds(asked: Asked, curves: readonly SetUpCurve[], reach: Reach): number[] {
  const computed = curves.flatMap(({ between = [] }) => between.map(({ speed }) => speed));
  const fine = rangesOf(asked, reach).flatMap(({ from, to }) =>
    Array.from({ length: Math.ceil((to - from) / FINE) }, (_, i) => from + FINE * i),
  );
  const near = [...computed, ...fine].filter(insideOf(asked, reach));
  return rising([...asked.speeds, ...near]);
}

export function insideOf(asked: Asked, reach: Reach): (speed: number) => boolean {
  const parts = rangesOf(asked, reach);
  return (speed) => parts.some(({ from, to }) => speed >= from && speed <= to);
}

/** The score of a curve at speeds within its own [rpm], rising. */
export function scoresAt({ score }: Target, curve: SetUpCurve, at: readonly number[]): number[] {
  const points = allPoints(curve);
  return smoothAt(
    points.map(({ speed }) => speed),
    scores(points, score),
    at,
  );
}

export const rising = (speeds: readonly number[]) => [...new Set(speeds)].sort((a, b) => a - b);

function leastReach(curves: readonly SetUpCurve[]): Reach | undefined {
  if (curves.some(({ resolved }) => !resolved)) return undefined;
  return curves.every(({ resolved }) => resolved === 'all') ? 'all' : 'bands';
}
