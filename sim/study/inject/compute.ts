/**
 * The injector question: near the valve, above the trumpet, or both, over speed at full load.
 *
 * Every placement is run as the file has its injectors, only the share moves; what the outer one does to
 * the air is split by runs with one effect alone (decision/placementEffects.ts).
 */
import { type PlacementChoice, placementChoice } from '../../decision/placementChoice.ts';
import {
  difference,
  type EffectSplit,
  effectSplit,
  type PartLoad,
  partLoad,
  pulsesOf,
  type Uncertainty,
  uncertaintyOf,
} from '../../decision/placementEffects.ts';
import type { PulseFigures } from '../../decision/pulseWidth.ts';
import type { InjectorsSpecification, SprayCouplingSpecification } from '../../injectors.ts';
import type { EngineSpecification } from '../../specification.ts';
import { outerShare } from '../../spray/staging.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Placement, Trial } from './ask.ts';
import { type Tried, tried } from './tried.ts';

export interface PlacementQuestion {
  engine: EngineSpecification;
  injectors: InjectorsSpecification;
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  /** Values of a key of the injectors to try besides. */
  trial?: Trial;
}

export interface PlacementStudy {
  speeds: number[];
  /** Names of the injectors compared. */
  near: string;
  above: string;
  outcomes: Record<Placement, PointOutcome[]>;
  /** Share of the outer injector that `both` was run with at each speed [-]. */
  stagedShare: number[];
  split: EffectSplit;
  /** What the difference between placements is uncertain by [-], with the runs behind it. */
  uncertainty: Uncertainty;
  choice: PlacementChoice;
  partLoad: { speed: number; throttleAngle: number; points: PartLoad[] };
  pulses: PulseFigures[];
  /** What came of the values that were to be tried. */
  tried?: Tried;
}

/** Data sheets state drop sizes to about this factor; common practice, no source. */
const DROP_SIZE_FACTOR = 1.3;
/** Plate angle of the part-load runs [deg]; common practice, no source. */
const PART_THROTTLE = 22;

export async function placementStudy(
  question: PlacementQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<PlacementStudy> {
  const { injectors, speeds } = question;
  if (injectors.list.length < 2) throw new RangeError('placement needs two injectors a cylinder');
  const run = counted(runner, observer);
  const [variants, uncertainty, part, tables] = await Promise.all([
    everyVariant(question, run),
    dropsUncertainty(question, run),
    atPartLoad(question, run),
    everyTried(question, run),
  ]);
  const { none, near, above, both, cooled, displaced } = variants;
  const stagedShare = speeds.map((n) => outerShare(injectors.staging, n, FULL_LOAD));
  const outer = injectors.list[injectors.list.length - 1]!;
  return {
    speeds: [...speeds],
    near: injectors.list[0]!.name,
    above: outer.name,
    outcomes: { none, near, above, both },
    stagedShare,
    split: effectSplit(none, above, cooled, displaced),
    uncertainty,
    choice: placementChoice({ speeds, near, above, both, stagedShare, uncertainty, outer }),
    partLoad: part,
    pulses: pulsesOf(question, near),
    ...(question.trial && {
      tried: tried(question.trial, tables, variants[question.trial.placement], uncertainty.scatter),
    }),
  };
}

type Run = (engine: EngineSpecification, speed: number) => Promise<PointOutcome>;

/** Every table of runs, a point a speed. */
async function everyVariant(question: PlacementQuestion, run: Run) {
  const variants = Object.entries(variantsOf(question));
  const tables = await Promise.all(
    variants.map(([, make]) => Promise.all(question.speeds.map((n) => run(make(n), n)))),
  );
  const named = variants.map(([name], i) => [name, tables[i]!]);
  return Object.fromEntries(named) as Record<Variant, PointOutcome[]>;
}

/** A table of runs a value that is to be tried. */
async function everyTried({ engine, speeds, trial }: PlacementQuestion, run: Run) {
  if (!trial) return [];
  return Promise.all(
    trial.injectors.map((injectors) => {
      const make = variantsOf({ engine, injectors })[trial.placement];
      return Promise.all(speeds.map((n) => run(make(n), n)));
    }),
  );
}

/** What the gain moves by with drops smaller and larger, at a middle and the highest speed. */
async function dropsUncertainty({ engine, injectors, speeds }: PlacementQuestion, run: Run) {
  const checked = [...new Set([speeds[speeds.length >> 1]!, speeds[speeds.length - 1]!])];
  const sized = (factor: number) => (share: number, speed: number) =>
    run(withShare(engine, withDropSize(injectors, factor), share), speed);
  const gains = (factor: number) => Promise.all(checked.map((n) => gainOf(sized(factor), n)));
  const [smaller, larger] = await Promise.all([
    gains(1 / DROP_SIZE_FACTOR),
    gains(DROP_SIZE_FACTOR),
  ]);
  return uncertaintyOf(engine, checked, smaller, larger);
}

/** Either injector alone behind a plate that is partly shut, at the lowest speed. */
async function atPartLoad({ engine, injectors, speeds }: PlacementQuestion, run: Run) {
  const speed = speeds[0]!;
  const at = (share: number) => run(throttled(withShare(engine, injectors, share)), speed);
  const [near, above] = await Promise.all([at(0), at(1)]);
  const points = [partLoad('near', near), partLoad('above', above)];
  return { speed, throttleAngle: PART_THROTTLE, points };
}

/** Load at which `both` is staged: full [-]. */
const FULL_LOAD = 1;

/** Runs points that are asked for more than once only once, and counts them. */
function counted(runner: PointRunner, observer: SweepObserver): Run {
  const running = new Map<string, Promise<PointOutcome>>();
  return (engine, speed) => {
    const key = `${speed} ${JSON.stringify(engine.injectors ?? null)} ${engine.intake.throttle.angle}`;
    const known = running.get(key);
    if (known) return known;
    const job = runner.run({ engine, speed }).then((outcome) => {
      observer.onPoint?.(0, speed, outcome);
      return outcome;
    });
    running.set(key, job);
    observer.onTotal?.(running.size);
    return job;
  };
}

type Variant = keyof ReturnType<typeof variantsOf>;

/** Every table of runs: what engine to run at a speed. */
function variantsOf({ engine, injectors }: Pick<PlacementQuestion, 'engine' | 'injectors'>) {
  const alone = (coupling: SprayCouplingSpecification) => () =>
    withShare(engine, { ...injectors, coupling }, 1);
  return {
    none: () => engine,
    near: () => withShare(engine, injectors, 0),
    above: () => withShare(engine, injectors, 1),
    both: (speed: number) =>
      withShare(engine, injectors, outerShare(injectors.staging, speed, FULL_LOAD)),
    cooled: alone({ heat: 'valve', vapour: 'off' }),
    displaced: alone({ heat: 'off', vapour: 'valve' }),
  };
}

/** The engine with its injectors, the outermost giving a fixed share [-]. */
export function withShare(
  engine: EngineSpecification,
  injectors: InjectorsSpecification,
  share: number,
): EngineSpecification {
  const staging = { speed: [0], share: [share], fromLoad: 0, loadBlend: 0 };
  return { ...engine, injectors: { ...injectors, staging } };
}

function withDropSize(injectors: InjectorsSpecification, factor: number): InjectorsSpecification {
  const list = injectors.list.map((injector) => ({
    ...injector,
    sauterDiameter: injector.sauterDiameter * factor,
  }));
  return { ...injectors, list };
}

function throttled(engine: EngineSpecification): EngineSpecification {
  const throttle = { ...engine.intake.throttle, angle: PART_THROTTLE };
  return { ...engine, intake: { ...engine.intake, throttle } };
}

/** Gain of the outer injector at a speed with altered drops [-], undefined where a run failed. */
async function gainOf(
  run: (share: number, speed: number) => Promise<PointOutcome>,
  speed: number,
): Promise<number | undefined> {
  const [near, above] = await Promise.all([run(0, speed), run(1, speed)]);
  return difference(above, near);
}

/** Points of every placement, and of the values tried. */
export function placementOutcomes({ outcomes, tried }: PlacementStudy): PointOutcome[] {
  const values = tried?.values.flatMap((value) => value.outcomes) ?? [];
  return [...Object.values(outcomes).flat(), ...values];
}

/** Whether every point computed has settled. */
export function placementSettled(study: PlacementStudy): boolean {
  return placementOutcomes(study).every((outcome) => !isFailure(outcome) && outcome.settled);
}
