/**
 * Points between the speeds of a sweep, where a curve is in doubt (decision/resolution.ts). Every curve
 * is refined by itself, all of them side by side.
 */
import { FLOOR_REACH } from '../decision/floor.ts';
import { isOpen, type ResolutionRule, speedsBetween } from '../decision/resolution.ts';
import { widestStep } from '../decision/ripple.ts';
import { bandsOf, scores, type Target } from '../decision/target.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointRunner } from '../sweep/runner.ts';
import { allPoints, type LengthCurve, type Reach, type SweepObserver } from '../sweep/sweep.ts';

/** How closely a curve is looked at. */
export interface Pains {
  /** Doubt that is left in it, as a share of it [-]. */
  tolerance: number;
  /** Speeds about which it is looked at more closely [rpm], and the share of the usual distance there. */
  closer: readonly number[];
  closest: number;
}

/** Two curves in doubt by a quarter of a per cent make half a point of loss. */
export const USUAL: Pains = { tolerance: 0.0025, closer: [], closest: 1 };

/** How far a band is moved to see what becomes of the answer [rpm], and so resolved about it. */
export const BAND_MOVE = 400;

/** What is refined: its speeds and what is asked of them. */
interface Refined {
  /** Speeds of the sweep [rpm], rising. */
  speeds: readonly number[];
  target: Target;
}

/** Ranges of speed that a reach covers, rising and apart [rpm]. */
export function rangesOf({ speeds, target }: Refined, reach: Reach) {
  const [first, last] = [speeds[0]!, speeds.at(-1)!];
  if (reach === 'all') return [{ from: first, to: last }];
  const about = (from: number, to: number, by: number) => ({
    from: Math.max(from - by, first),
    to: Math.min(to + by, last),
  });
  const parts = [
    ...bandsOf(target).map(({ from, to }) => about(from, to, BAND_MOVE)),
    ...(target.floors ?? []).map(({ speed }) => about(speed, speed, FLOOR_REACH)),
  ].sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of parts) {
    const before = joined.at(-1);
    if (before && from <= before.to) before.to = Math.max(before.to, to);
    else joined.push({ from, to });
  }
  return joined;
}

export class Refinement {
  private readonly asked: Refined;
  private readonly runner: PointRunner;
  private readonly observer: SweepObserver;
  /** In which round a speed was added, by length. */
  private readonly rounds = new Map<number, Map<number, number>>();
  private readonly pains = new Map<number, Pains>();

  constructor(asked: Refined, runner: PointRunner, observer: SweepObserver) {
    this.asked = asked;
    this.runner = runner;
    this.observer = observer;
  }

  /** The curves with what they lacked; `engines` one a curve. */
  async refine(
    engines: readonly EngineSpecification[],
    curves: readonly LengthCurve[],
    reach: Reach,
    pains: Pains = USUAL,
  ): Promise<LengthCurve[]> {
    let known = curves.map((curve) => ({ ...curve, resolved: reach }));
    for (const { length } of curves) this.pains.set(length, pains);
    for (;;) {
      const jobs = known.flatMap((curve, i) => {
        const engine = engines[i]!;
        return this.lacking(engine, curve).map((speed) => ({ engine, speed, i }));
      });
      if (jobs.length === 0) return known;
      this.observer.onTotal?.(jobs.length);
      const outcomes = await Promise.all(
        jobs.map(async ({ engine, speed, i }) => {
          const outcome = await this.runner.run({ engine, speed });
          this.observer.onPoint?.(i, speed, outcome);
          return outcome;
        }),
      );
      known = known.map((curve, i) => {
        const fresh = outcomes.filter((_, k) => jobs[k]!.i === i);
        this.note(
          curve.length,
          fresh.map(({ speed }) => speed),
        );
        const between = [...(curve.between ?? []), ...fresh].sort((a, b) => a.speed - b.speed);
        return { ...curve, between };
      });
    }
  }

  /**
   * The curve without the points that no other stands on: what it was before its last halvings; where
   * there were none, with every second of its points.
   */
  before(curve: LengthCurve): LengthCurve {
    const rounds = this.rounds.get(curve.length);
    const { outcomes, between = [] } = curve;
    if (!rounds) {
      const last = outcomes.length - 1;
      const kept = outcomes.filter((_, i) => i % 2 === 0 || i === last);
      return { ...curve, outcomes: [], between: kept };
    }
    const speeds = allPoints(curve).map(({ speed }) => speed);
    const round = (i: number) => rounds.get(speeds[i]!) ?? 0;
    const last = new Set(speeds.filter((_, i) => round(i) > Math.max(round(i - 1), round(i + 1))));
    return { ...curve, between: between.filter(({ speed }) => !last.has(speed)) };
  }

  /** Whether the curve is in doubt with usual pains, however closely it was looked at. */
  isOpen(engine: EngineSpecification, curve: LengthCurve): boolean {
    return isOpen(...this.figures(curve), this.rule(engine, curve, USUAL));
  }

  private lacking(engine: EngineSpecification, curve: LengthCurve): number[] {
    return speedsBetween(...this.figures(curve), this.rule(engine, curve));
  }

  private figures(curve: LengthCurve): [number[], number[]] {
    const points = allPoints(curve);
    return [points.map(({ speed }) => speed), scores(points, this.asked.target.score)];
  }

  private rule(
    engine: EngineSpecification,
    { length, resolved }: LengthCurve,
    pains = this.pains.get(length) ?? USUAL,
  ): ResolutionRule {
    const parts = rangesOf(this.asked, resolved ?? 'all');
    const { tolerance, closer, closest } = pains;
    const near = (from: number, to: number) => closer.some((at) => at >= from && at <= to);
    return {
      // What settling leaves in a point is no ripple.
      tolerance: Math.max(tolerance, engine.numerics.settle),
      widest: (from, to) => widestStep(engine, from) * (near(from, to) ? closest : 1),
      matters: (from, to) => parts.some((part) => to > part.from && from < part.to),
    };
  }

  private note(length: number, speeds: readonly number[]): void {
    const rounds = this.rounds.get(length) ?? new Map<number, number>();
    const round = 1 + Math.max(0, ...rounds.values());
    for (const speed of speeds) rounds.set(speed, round);
    this.rounds.set(length, rounds);
  }
}
