/**
 * Operating points: cycles until trapped mass and pressure at valve closing repeat, first on meshes of
 * four times and twice the cell, then on the mesh asked for; the figures of the last cycle there, carried
 * on by what the meshes differ, with their audit.
 */
import type { NonPhysicalStateError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import type { Audit } from './audit.ts';
import { meanCycle, Run } from './cycle.ts';
import type { Driver, End, Start } from './driver.ts';
import { inLanes } from './lanes.ts';
import { cylindersDiffer } from './manifolds.ts';
import { airOnDays, type OtherDay } from './otherDays.ts';
import { type EngineModel, engineModel, type Solved } from './plan.ts';
import {
  beyond,
  type CycleFigures,
  type CylinderFigures,
  cylindersOf,
  figuresOf,
} from './pointFigures.ts';
import type { SettledState } from './settle.ts';

import { takeOver } from './takeOver.ts';

export type { CycleFigures, CylinderFigures } from './pointFigures.ts';

/** Figures of the engine: means over its cylinders. */
export interface PointResult extends CycleFigures {
  /** Engine speed [rpm]. */
  speed: number;
  /** Where cylinders differ, those that do alike, in the order they fire. */
  cylinders?: readonly CylinderFigures[];
  /** Whether trapped mass and pressure repeated within the stated change. */
  settled: boolean;
  /** Given where the point failed as asked, and was computed with smaller steps and the strongest limiter. */
  careful?: true;
  /** Cycles computed on the finest mesh. */
  cycles: number;
  /**
   * Estimated error of volumetric efficiency from mesh and settling, as a share of it: the difference
   * to the mesh of twice the cell, and the change at which cycles count as settled; NaN where that
   * mesh failed. At least the error found against a quarter of the cell at nine points of ten
   * (docs/speed.md).
   */
  meshError: number;
  audit: Audit;
  /** What the injectors' spray did, where there are injectors. */
  spray?: SprayCycle;
  /** Air on the days asked for over that of this one [-], on the mesh of twice the cell; NaN where that fails. */
  onDays?: readonly number[];
}

/** What is asked of points besides. */
export interface PointWishes {
  /** Days on which their air is wanted too. */
  days?: readonly OtherDay[];
  /** Whether their ends are sought ahead of the cycles: another way to what repeats, so never beside points without. */
  hastened?: boolean;
}

export interface PointOptions {
  /** Which cylinders are solved. */
  solved?: Solved;
  /** Told of every stop of one more cycle, at most `stride` [deg] apart. */
  onStop?: (model: EngineModel, crankAngle: number) => void;
  stride?: number;
}

/** Runs one point. Throws NonPhysicalStateError where the computation fails. */
export function runPoint(
  spec: EngineSpecification,
  speed: number,
  options: PointOptions = {},
): PointResult {
  const point = settleSpeeds(spec, [speed], options.solved, inLanes)[0]!;
  if (point instanceof Error) throw point;
  const { onStop } = options;
  if (onStop) {
    const { model, column } = point;
    model.network.load(column);
    const run = new Run(model, speed);
    run.start(true);
    run.stride = options.stride ?? run.stride;
    run.onStop = (crankAngle) => onStop(model, crankAngle);
    run.cycle();
  }
  return point.result;
}

/** A speed that has come to its end on the finest mesh. */
export interface SettledPoint {
  result: PointResult;
  /** The figures of the finest mesh as they are. */
  finest: CycleFigures;
  model: EngineModel;
  column: Float64Array;
}

type Settled = SettledPoint | NonPhysicalStateError;

/**
 * The meshes, coarsest first: their cells over those asked for, and how near each other two cycles
 * come there, over the change at which a point counts as settled. Two alike can lie on a slow drift (a
 * joint's echoes bring what was sent into it a cycle later, a port behind a shut plate fills for
 * cycles), so both whose figures count ask for less; on the coarsest only a start is sought.
 */
const CASCADE = [
  { cell: 4, change: 8 },
  { cell: 2, change: 1 / 2 },
  { cell: 1, change: 2 / 3 },
];

/** Other days are compared with this one on cells of twice the length: both lose the same there. */
const DAYS_CELL = 2;

/**
 * What a point that fails is computed with in turn, beside the strongest limiter: shares of the steps asked, at last
 * with the flux that blurs most (step/faces.ts).
 */
const CAREFULLY = [{ share: 1 / 2 }, { share: 1 / 10, flux: 'rusanov' }];

/** Every speed; those that fail as asked once and twice more with smaller steps and the strongest limiter. */
export function settleSpeeds(
  spec: EngineSpecification,
  speeds: readonly number[],
  solved: Solved | undefined,
  drive: Driver,
  wishes: PointWishes = {},
): Settled[] {
  const points = settleOnce(spec, speeds, solved, drive, wishes);
  for (const { share, ...blurred } of CAREFULLY) {
    const failed = points.flatMap((point, i) => (point instanceof Error ? [i] : []));
    if (failed.length === 0) break;
    const numerics = {
      ...spec.numerics,
      courant: share * spec.numerics.courant,
      limiter: 'minmod',
      ...blurred,
    };
    const chosen = failed.map((i) => speeds[i]!);
    const again = settleOnce({ ...spec, numerics }, chosen, solved, drive, wishes);
    failed.forEach((i, j) => {
      const point = again[j]!;
      if (!(point instanceof Error))
        points[i] = { ...point, result: { ...point.result, careful: true } };
    });
  }
  return points;
}

/**
 * Most cycles with injectors: what has not settled by then is fog in front of the mouth, and every cycle of it takes
 * longer than the one before. Our own choice, no source.
 */
const MOST_SPRAYED = 40;

/** The same on a finer mesh, where fog did not settle on the coarser one: enough where that mesh alone was the reason. Our own choice. */
const MOST_FOGGED = 8;

function settleOnce(
  spec: EngineSpecification,
  speeds: readonly number[],
  solved: Solved | undefined,
  drive: Driver,
  { days = [], hastened = false }: PointWishes,
): Settled[] {
  const histories: (End | NonPhysicalStateError)[][] = speeds.map(() => []);
  let last: EngineModel | undefined;
  let airs: number[][] = [];
  const { settle, maximumCycles } = spec.numerics;
  const most = spec.injectors ? Math.min(maximumCycles, MOST_SPRAYED) : maximumCycles;
  for (const { cell, change } of CASCADE) {
    const model = engineModel(meshed(spec, cell), solved);
    const rest = model.network.layout.column.slice();
    const starts = speeds.map((speed, i): Start => {
      const before = histories[i]!.at(-1);
      return last && before && !(before instanceof Error)
        ? goingOn(model, last, before, speed)
        : { speed, column: rest.slice(), fuelled: false };
    });
    // Parcels of drops scatter: cycles come no closer than the stated change.
    const limit = spec.injectors ? settle : change * settle;
    const ahead = hastened && cell < CASCADE[0]!.cell;
    const rule = { limit, most, held: cell === 1, hastened: ahead };
    const ends = drive(model, starts, rule);
    for (const [i, end] of ends.entries()) histories[i]!.push(end);
    if (cell === DAYS_CELL && days.length > 0)
      airs = airOnDays(model, ends, days, { speeds, solved, drive, limit, hastened });
    last = model;
  }
  return histories.map((ends, i) => {
    const end = ends.at(-1)!;
    if (end instanceof Error) return end;
    const coarser = ends.at(-2)!;
    const twice = coarser instanceof Error ? undefined : coarser.state;
    const point = pointResult(last!, speeds[i]!, end.state, twice);
    const result = days.length > 0 ? { ...point, onDays: airs[i]! } : point;
    const finest = figuresOf(last!, meanCycle(last!, end.state.lines));
    return { result, finest, model: last!, column: end.column };
  });
}

/** Where a finer mesh starts: at the end of the coarser one. */
function goingOn(model: EngineModel, coarser: EngineModel, end: End, speed: number): Start {
  coarser.network.load(end.column);
  takeOver(model.network, coarser.network);
  const { sprays, state } = end;
  const column = model.network.layout.column.slice();
  const fogged = model.spec.injectors && !state.settled;
  return { speed, column, fuelled: true, sprays, ...(fogged && { most: MOST_FOGGED }) };
}

function meshed(spec: EngineSpecification, factor: number): EngineSpecification {
  const { intakeCell, exhaustCell } = spec.numerics;
  const numerics = {
    ...spec.numerics,
    intakeCell: factor * intakeCell,
    exhaustCell: factor * exhaustCell,
  };
  return { ...spec, numerics };
}

function pointResult(
  model: EngineModel,
  speed: number,
  fine: SettledState,
  twice: SettledState | undefined,
): PointResult {
  const { lines, settled, cycles, audit, spray } = fine;
  const here = figuresOf(model, meanCycle(model, lines));
  const coarse = twice && figuresOf(model, meanCycle(model, twice.lines));
  const carried = settled && twice?.settled ? twice : undefined;
  const difference = Math.abs(
    (coarse?.volumetricEfficiency ?? Number.NaN) / here.volumetricEfficiency - 1,
  );
  return {
    speed,
    ...(carried ? beyond(here, coarse!) : here),
    ...(cylindersDiffer(model.spec) && { cylinders: cylindersOf(model, lines, carried?.lines) }),
    settled,
    cycles,
    meshError: difference + model.spec.numerics.settle,
    audit,
    ...(spray && { spray }),
  };
}

/** Runs speeds of one engine, side by side where WebAssembly has lanes. */
export function runSpeeds(
  spec: EngineSpecification,
  speeds: readonly number[],
  drive: Driver = inLanes,
  wishes: PointWishes = {},
): (PointResult | NonPhysicalStateError)[] {
  return settleSpeeds(spec, speeds, undefined, drive, wishes).map((point) =>
    point instanceof Error ? point : point.result,
  );
}
