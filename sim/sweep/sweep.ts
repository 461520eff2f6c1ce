/** Engines by speeds: every point of a table of variants. */
import type { EngineSpecification } from '../specification.ts';
import type { PointJob, PointOutcome, PointRunner } from './runner.ts';

/** Told as points come in, in whatever order they finish. */
export interface SweepObserver {
  /** How many points there are to do; may be called again when more are added. */
  onTotal?(points: number): void;
  onPoint?(variant: number, speed: number, outcome: PointOutcome): void;
}

/** The engine with another trumpet length [m]. */
export function withLength(engine: EngineSpecification, length: number): EngineSpecification {
  const trumpet = { ...engine.intake.trumpet, length };
  return { ...engine, intake: { ...engine.intake, trumpet } };
}

/** Engines by number, perhaps made only when they are asked for; an array will do. */
export interface Engines {
  readonly length: number;
  at(index: number): EngineSpecification | undefined;
}

/** One place of the table and its job. */
export interface TablePoint extends PointJob {
  /** Variant. */
  i: number;
  /** Speed. */
  j: number;
}

/** A place whose engine is made when it is asked for. */
export class LatePoint implements TablePoint {
  readonly i: number;
  readonly j: number;
  readonly speed: number;
  private readonly engines: Engines;

  constructor(engines: Engines, i: number, j: number, speed: number) {
    this.engines = engines;
    this.i = i;
    this.j = j;
    this.speed = speed;
  }

  get engine(): EngineSpecification {
    return this.engines.at(this.i)!;
  }
}

/**
 * The points of a table in the order in which they start. Low speeds come first: they take longest,
 * and a long point at the end would leave workers idle.
 */
export function tablePoints(variants: Engines, speeds: readonly number[]): TablePoint[] {
  const points = speeds.flatMap((speed, j) =>
    Array.from({ length: variants.length }, (_, i) => new LatePoint(variants, i, j, speed)),
  );
  return points.sort((a, b) => a.speed - b.speed);
}

/** Runs every variant at every speed [rpm]; the table is [variant][speed]. */
export async function sweep(
  variants: readonly EngineSpecification[],
  speeds: readonly number[],
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<PointOutcome[][]> {
  const table = variants.map(() => new Array<PointOutcome>(speeds.length));
  const points = tablePoints(variants, speeds);
  observer.onTotal?.(points.length);
  await Promise.all(
    points.map(async ({ engine, speed, i, j }) => {
      const outcome = await runner.run({ engine, speed });
      table[i]![j] = outcome;
      observer.onPoint?.(i, speed, outcome);
    }),
  );
  return table;
}

/** One length at all speeds. */
export interface LengthCurve {
  /** Trumpet length, rim plane to body face [m]. */
  length: number;
  /** One a speed of the sweep. */
  outcomes: PointOutcome[];
  /** What refinement computed between those speeds, rising; absent where it did nothing. */
  between?: PointOutcome[];
  /** Over what the curve is resolved; absent where it is known at the speeds of the sweep alone. */
  resolved?: Reach;
}

/** The bands with their surroundings and the floors, or all speeds. */
export type Reach = 'bands' | 'all';

/** Every point of a curve, by rising speed. */
export function allPoints({
  outcomes,
  between = [],
}: Pick<LengthCurve, 'outcomes' | 'between'>): PointOutcome[] {
  return [...outcomes, ...between].sort((a, b) => a.speed - b.speed);
}

/** Curves of the given lengths [m]. */
export async function runLengths(
  engine: EngineSpecification,
  lengths: readonly number[],
  speeds: readonly number[],
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<LengthCurve[]> {
  const variants = lengths.map((length) => withLength(engine, length));
  const table = await sweep(variants, speeds, runner, observer);
  return lengths.map((length, i) => ({ length, outcomes: table[i]! }));
}
