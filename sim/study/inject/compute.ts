/**
 * The injector question: near the valve, above the trumpet, or both, over speed at full load.
 *
 * Every placement is run as the file has its injectors, only the share moves. What the outer one
 * does to the air is split by runs with one effect alone:
 *
 *   cooling       heat drawn from the gas as it enters the cylinder: no wave feels it
 *   displacement  vapour joins the gas as it enters the cylinder, no heat is drawn
 *   wave shift    what is left of the full run: colder, heavier gas tunes to lower speeds, and drag
 */
import { sweptVolume } from '../../cylinder/crank.ts';
import { type PlacementChoice, placementChoice } from '../../decision/placementChoice.ts';
import { IDLE_AIR, type PulseFigures, pulseFigures } from '../../decision/pulseWidth.ts';
import type { FilmModel } from '../../decision/tipIn.ts';
import type { PointResult } from '../../engine/point.ts';
import { type FuelName, fuelNamed } from '../../gas/fuel.ts';
import type {
  EngineSpecification,
  InjectorsSpecification,
  SprayCouplingSpecification,
} from '../../specification.ts';
import { outerShare } from '../../spray/staging.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../units.ts';

export interface PlacementQuestion {
  engine: EngineSpecification;
  injectors: InjectorsSpecification;
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
}

/** Where the fuel comes from; `none` is fuel as vapour at valve closing, to compare with. */
export type Placement = 'none' | 'near' | 'above' | 'both';

/** Change of volumetric efficiency against no evaporation before valve closing [-], one a speed. */
export interface EffectSplit {
  cooling: (number | undefined)[];
  displacement: (number | undefined)[];
  waveShift: (number | undefined)[];
  total: (number | undefined)[];
}

/** One placement at part load. */
export interface PartLoad extends FilmModel {
  placement: 'near' | 'above';
  outcome: PointOutcome;
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
}

export interface Uncertainty {
  /** Half-width in volumetric efficiency [-]. */
  value: number;
  /** Of it: drop sizes a third off either way; scatter of parcels and settling. */
  dropSize: number;
  scatter: number;
  /** Speeds at which drop sizes were varied [rpm]. */
  speeds: number[];
}

/** Data sheets state drop sizes to about this factor; common practice, no source. */
const DROP_SIZE_FACTOR = 1.3;
/** Scatter by parcels and settling: twice the change at which a point counts as settled. */
const SCATTER_OVER_SETTLE = 2;
/** Plate angle of the part-load runs [deg]; common practice, no source. */
const PART_THROTTLE = 22;

export async function placementStudy(
  question: PlacementQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<PlacementStudy> {
  const { engine, injectors, speeds } = question;
  if (injectors.list.length < 2) throw new RangeError('placement needs two injectors a cylinder');
  const run = counted(runner, observer);
  const variants = variantsOf(question);
  const partSpeed = speeds[0]!;
  const part = (share: number) => run(throttled(withShare(engine, injectors, share)), partSpeed);
  const checked = [...new Set([speeds[speeds.length >> 1]!, speeds[speeds.length - 1]!])];
  const sized = (factor: number) => (share: number, speed: number) =>
    run(withShare(engine, withDropSize(injectors, factor), share), speed);
  const [tables, smaller, larger, partNear, partAbove] = await Promise.all([
    Promise.all(
      Object.values(variants).map((make) => Promise.all(speeds.map((n) => run(make(n), n)))),
    ),
    Promise.all(checked.map((n) => gainOf(sized(1 / DROP_SIZE_FACTOR), n))),
    Promise.all(checked.map((n) => gainOf(sized(DROP_SIZE_FACTOR), n))),
    part(0),
    part(1),
  ]);
  const [none, near, above, both, cooled, displaced] = tables as [
    PointOutcome[],
    PointOutcome[],
    PointOutcome[],
    PointOutcome[],
    PointOutcome[],
    PointOutcome[],
  ];
  const stagedShare = speeds.map((n) => outerShare(injectors.staging, n, FULL_LOAD));
  const uncertainty = uncertaintyOf(engine, checked, smaller, larger);
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
    partLoad: {
      speed: partSpeed,
      throttleAngle: PART_THROTTLE,
      points: [partLoad('near', partNear), partLoad('above', partAbove)],
    },
    pulses: pulsesOf(question, near),
  };
}

/** Load at which `both` is staged: full [-]. */
const FULL_LOAD = 1;

/** Runs points that are asked for more than once only once, and counts them. */
function counted(runner: PointRunner, observer: SweepObserver) {
  const running = new Map<string, Promise<PointOutcome>>();
  return (engine: EngineSpecification, speed: number): Promise<PointOutcome> => {
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

/** Every table of runs: what engine to run at a speed. */
function variantsOf({ engine, injectors }: PlacementQuestion) {
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

function uncertaintyOf(
  engine: EngineSpecification,
  speeds: number[],
  smaller: (number | undefined)[],
  larger: (number | undefined)[],
): Uncertainty {
  const halves = smaller.map((small, i) => Math.abs((small ?? 0) - (larger[i] ?? 0)) / 2);
  const dropSize = Math.max(...halves);
  const scatter = SCATTER_OVER_SETTLE * engine.numerics.settle;
  return { value: Math.hypot(dropSize, scatter), dropSize, scatter, speeds };
}

function effectSplit(
  none: PointOutcome[],
  above: PointOutcome[],
  cooled: PointOutcome[],
  displaced: PointOutcome[],
): EffectSplit {
  const against = (table: PointOutcome[]) => table.map((point, i) => difference(point, none[i]!));
  const cooling = against(cooled);
  const displacement = against(displaced);
  const total = against(above);
  const waveShift = total.map((all, i) => {
    const [c, d] = [cooling[i], displacement[i]];
    return all === undefined || c === undefined || d === undefined ? undefined : all - c - d;
  });
  return { cooling, displacement, waveShift, total };
}

/** Difference of volumetric efficiency [-]; undefined where a run failed. */
export function difference(a: PointOutcome, b: PointOutcome): number | undefined {
  return isFailure(a) || isFailure(b) ? undefined : a.volumetricEfficiency - b.volumetricEfficiency;
}

function partLoad(placement: 'near' | 'above', outcome: PointOutcome): PartLoad {
  const spray = isFailure(outcome) ? undefined : outcome.spray;
  return { placement, outcome, share: spray?.filmShare ?? 0, time: spray?.filmTime ?? 0 };
}

/** Every injector alone at the highest speed and at idle. */
function pulsesOf({ engine, injectors, speeds }: PlacementQuestion, near: PointOutcome[]) {
  const top = speeds[speeds.length - 1]!;
  const last = near[near.length - 1]!;
  const ratio = fuelNamed(engine.combustion.fuel as FuelName).stoichiometricAirFuelRatio;
  const { pressure, temperature } = engine.ambient;
  const air = (pressure / (DRY_AIR_GAS_CONSTANT * temperature)) * sweptVolume(engine.cylinder);
  const fallback = air / (ratio * engine.combustion.lambda);
  const full = isFailure(last) ? fallback : (last.spray?.needed ?? fallback);
  return injectors.list.map((injector) =>
    pulseFigures(injector, full, top, (IDLE_AIR * air) / ratio),
  );
}

/** The figures of a point's spray, or undefined where it failed. */
export function sprayOf(outcome: PointOutcome): PointResult['spray'] {
  return isFailure(outcome) ? undefined : outcome.spray;
}

/** Whether every point computed has settled. */
export function placementSettled(study: PlacementStudy): boolean {
  return Object.values(study.outcomes)
    .flat()
    .every((outcome) => !isFailure(outcome) && outcome.settled);
}
