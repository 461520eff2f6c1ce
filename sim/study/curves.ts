/**
 * The curves of set-ups that differ in a length or in other keys: swept at the speeds asked for, then
 * refined between them where the answer turns on it, and weighed against the baseline by what is known of both.
 */
import type { Sampling } from '../decision/sampleCurves.ts';
import type { Target } from '../decision/target.ts';
import type { WeighedLength } from '../decision/tradeOff.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointRunner } from '../sweep/runner.ts';
import {
  allPoints,
  type LengthCurve,
  type Reach,
  type SweepObserver,
  sweep,
} from '../sweep/sweep.ts';
import { type Pains, Refinement } from './refinement.ts';
import { insideOf, readSpeeds, rising, scoresAt, speedsKnown, weighedAgainst } from './weigh.ts';

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
    return {
      length: curve.length,
      ...weighedAgainst({ ...this.question, target }, curve, baseline),
    };
  }

  /** The speeds at which curves are known [rpm]: close together where all are resolved. */
  speedsFor(...curves: readonly LengthCurve[]): number[] {
    return speedsKnown(this.question, curves);
  }

  /** At which speeds samples of set-ups like these are known in the bands as these are, where any is resolved. */
  sampling(): Sampling | undefined {
    const curves = this.all.filter(({ resolved }) => resolved);
    if (curves.length === 0) return undefined;
    const own = new Set(this.question.speeds);
    const inside = insideOf(this.question, 'bands');
    const speedsOf = (of: readonly LengthCurve[]) => {
      const all = of.flatMap((curve) => allPoints(curve).map(({ speed }) => speed));
      return rising(all.filter((speed) => own.has(speed) || inside(speed)));
    };
    const before = curves.map((curve) => this.before(curve));
    const read = readSpeeds(this.question, curves, 'bands');
    return { speeds: speedsOf(curves), before: speedsOf(before), read };
  }

  /** The score of a curve at speeds within its own [rpm], rising. */
  figures(curve: LengthCurve, at: readonly number[]): number[] {
    return scoresAt(this.question.target, curve, at);
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
