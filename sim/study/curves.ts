/**
 * The curves of set-ups that differ in a length or in other keys: swept at the speeds asked for, then
 * refined between them where the answer turns on it, and weighed against the baseline by what is known of both.
 */
import type { Sampling } from '../decision/sampleCurves.ts';
import { smoothAt } from '../decision/smooth.ts';
import { scores, type Target } from '../decision/target.ts';
import { percentOver, tradeOff, type WeighedLength } from '../decision/tradeOff.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointRunner } from '../sweep/runner.ts';
import {
  allPoints,
  type LengthCurve,
  type Reach,
  type SweepObserver,
  sweep,
} from '../sweep/sweep.ts';
import { type Pains, Refinement, rangesOf } from './refinement.ts';

/** Speeds at which smooth curves are set against each other [rpm]. */
const FINE = 10;

/** What is weighed. */
export interface SetUps {
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Name of the set-up that the others are weighed against. */
  own: number;
  /** The set-up of a name: a length [m], or a place in a list. */
  engineOf(name: number): EngineSpecification;
}

export class Curves {
  private readonly byLength = new Map<number, LengthCurve>();
  private readonly engines = new Map<number, EngineSpecification>();
  private readonly refinement: Refinement;
  private readonly question: SetUps;
  private readonly runner: PointRunner;
  private readonly observer: SweepObserver;
  private readonly own: number;

  constructor(question: SetUps, runner: PointRunner, observer: SweepObserver) {
    this.question = question;
    this.runner = runner;
    this.observer = observer;
    this.own = question.own;
    this.refinement = new Refinement(question, runner, observer);
  }

  /** By rising length. */
  get all(): LengthCurve[] {
    return [...this.byLength.values()].sort((a, b) => a.length - b.length);
  }

  at(length: number): LengthCurve {
    return this.byLength.get(length)!;
  }

  get baseline(): LengthCurve {
    return this.at(this.own);
  }

  /** Computes set-ups at the speeds of the question. */
  async add(lengths: readonly number[]): Promise<void> {
    const open = lengths.filter((length) => !this.byLength.has(length));
    const engines = open.map((length) => this.engineOf(length));
    const table = await sweep(engines, this.question.speeds, this.runner, this.observer);
    open.forEach((length, i) => {
      this.byLength.set(length, { length, outcomes: table[i]! });
    });
  }

  /** Computes between the speeds of the question until the curves are resolved. */
  async refine(lengths: readonly number[], reach: Reach, pains?: Pains): Promise<void> {
    const curves = lengths.map((length) => this.at(length));
    const engines = lengths.map((length) => this.engineOf(length));
    const refined = await this.refinement.refine(engines, curves, reach, pains);
    for (const curve of refined) this.byLength.set(curve.length, curve);
  }

  /** Every length against the baseline, rising. */
  weighed(target = this.question.target): WeighedLength[] {
    return this.all.map((curve) => this.weigh(curve, this.baseline, target));
  }

  weigh(
    curve: LengthCurve,
    baseline = this.baseline,
    target = this.question.target,
  ): WeighedLength {
    const at = this.speedsFor(curve, baseline);
    const [ours, own] = [this.figures(curve, at), this.figures(baseline, at)];
    const weighed = { length: curve.length, ...tradeOff(at, ours, own, target) };
    if (!baseline.resolved) return weighed;
    const known = leastReach([curve, baseline]);
    if (known) return { ...weighed, known };
    // Its mean is that of few speeds; the baseline's is known better.
    const { bandMean } = this.weigh(baseline, baseline, target);
    const gainPercent = percentOver(weighed.bandMean, bandMean);
    return { ...weighed, known: 'sweep', gainPercent };
  }

  /** The speeds at which both curves are known [rpm]: close together where both are resolved. */
  speedsFor(...curves: readonly LengthCurve[]): number[] {
    const reach = leastReach(curves);
    return reach ? this.readSpeeds(curves, reach) : [...this.question.speeds];
  }

  /** At which speeds samples of set-ups like these are known in the bands as these are, where any is resolved. */
  sampling(): Sampling | undefined {
    const curves = this.all.filter(({ resolved }) => resolved);
    if (curves.length === 0) return undefined;
    const own = new Set(this.question.speeds);
    const inside = this.insideOf('bands');
    const speedsOf = (of: readonly LengthCurve[]) => {
      const all = of.flatMap((curve) => allPoints(curve).map(({ speed }) => speed));
      return rising(all.filter((speed) => own.has(speed) || inside(speed)));
    };
    const before = curves.map((curve) => this.before(curve));
    const read = this.readSpeeds(curves, 'bands');
    return { speeds: speedsOf(curves), before: speedsOf(before), read };
  }

  /** The speeds of the question, and close together in a reach. */
  private readSpeeds(curves: readonly LengthCurve[], reach: Reach): number[] {
    const parts = rangesOf(this.question, reach);
    const computed = curves.flatMap(({ between = [] }) => between.map(({ speed }) => speed));
    const fine = parts.flatMap(({ from, to }) =>
      Array.from({ length: Math.ceil((to - from) / FINE) }, (_, i) => from + FINE * i),
    );
    const near = [...computed, ...fine].filter(this.insideOf(reach));
    return rising([...this.question.speeds, ...near]);
  }

  private insideOf(reach: Reach) {
    const parts = rangesOf(this.question, reach);
    return (speed: number) => parts.some(({ from, to }) => speed >= from && speed <= to);
  }

  /** The score of a curve at speeds within its own [rpm], rising. */
  figures(curve: LengthCurve, at: readonly number[]): number[] {
    const points = allPoints(curve);
    return smoothAt(
      points.map(({ speed }) => speed),
      scores(points, this.question.target.score),
      at,
    );
  }

  /** The curve as it was before its last halvings. */
  before(curve: LengthCurve): LengthCurve {
    return this.refinement.before(curve);
  }

  /** Lengths whose curves are in doubt where they were to be resolved. */
  open(): number[] {
    return this.all
      .filter(
        (curve) => curve.resolved && this.refinement.isOpen(this.engineOf(curve.length), curve),
      )
      .map(({ length }) => length);
  }

  private engineOf(length: number): EngineSpecification {
    const engine = this.engines.get(length) ?? this.question.engineOf(length);
    this.engines.set(length, engine);
    return engine;
  }
}

const rising = (speeds: readonly number[]) => [...new Set(speeds)].sort((a, b) => a - b);

function leastReach(curves: readonly LengthCurve[]): Reach | undefined {
  if (curves.some(({ resolved }) => !resolved)) return undefined;
  return curves.every(({ resolved }) => resolved === 'all') ? 'all' : 'bands';
}
