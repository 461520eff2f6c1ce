/**
 * Operating points: cycles until trapped mass and pressure at valve closing repeat, first on meshes of
 * four times and twice the cell, then on the mesh asked for, and the figures of the last cycle there
 * with their audit.
 *
 * Volumetric efficiency = fresh air trapped at intake closing / (ambient density x swept volume).
 */
import { sweptVolume } from '../cylinder/crank.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import type { Audit } from './audit.ts';
import { placed, Run } from './cycle.ts';
import { inLanes } from './lanes.ts';
import { type EngineModel, engineModel, type Solved } from './plan.ts';
import { type SettledState, type SettleRule, Settling } from './settle.ts';
import { takeOver } from './takeOver.ts';

export interface PointResult {
  /** Engine speed [rpm]. */
  speed: number;
  /** Volumetric efficiency against ambient air [-]. */
  volumetricEfficiency: number;
  /** Cylinder pressure at intake closing [Pa]. */
  pressureAtClosing: number;
  /** Temperature of the charge at intake closing [K]. */
  chargeTemperature: number;
  /** Burned products of the last cycle in the charge [-]. */
  residualFraction: number;
  /** Gas pushed from the cylinder back into the port, as a share of the charge [-]. */
  backflow: number;
  /** Gas blown out of the mouth, as a share of the charge [-]. */
  mouthOutflow: number;
  /** Indicated torque of the engine, gas exchange included [N m]; compare, do not quote. */
  indicatedTorque: number;
  /** Whether trapped mass and pressure repeated within the stated change. */
  settled: boolean;
  /** Cycles computed. */
  cycles: number;
  /**
   * What the mesh is estimated to change of volumetric efficiency, as a share of it: a third of the
   * difference to the mesh of twice the cell, the scheme being of second order; NaN if that failed.
   */
  meshError: number;
  audit: Audit;
  /** What the injectors' spray did, where there are injectors. */
  spray?: SprayCycle;
}

export interface PointOptions {
  /** Which cylinders are solved; figures are those of the first. */
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
interface SettledPoint {
  result: PointResult;
  model: EngineModel;
  column: Float64Array;
}

/** How speeds of one model get from their starts to their ends. */
export type Driver = (
  model: EngineModel,
  starts: readonly Start[],
  rule: SettleRule,
) => (End | NonPhysicalStateError)[];

export interface Start {
  speed: number;
  column: Float64Array;
  /** Whether the charge has its fuel. */
  fuelled: boolean;
}

export interface End {
  state: SettledState;
  column: Float64Array;
}

/** Cell sizes of the meshes over the one asked for, coarsest first. */
const CASCADE = [4, 2, 1];

export function settleSpeeds(
  spec: EngineSpecification,
  speeds: readonly number[],
  solved: Solved | undefined,
  drive: Driver,
): (SettledPoint | NonPhysicalStateError)[] {
  const histories: (End | NonPhysicalStateError)[][] = speeds.map(() => []);
  let last: EngineModel | undefined;
  for (const [level, factor] of CASCADE.entries()) {
    const model = engineModel(meshed(spec, factor), solved);
    const rest = model.network.layout.column.slice();
    const starts = speeds.map((speed, i): Start => {
      const before = histories[i]!.at(-1);
      if (!last || !before || before instanceof Error)
        return { speed, column: rest.slice(), fuelled: false };
      last.network.load(before.column);
      takeOver(model.network, last.network);
      return { speed, column: model.network.layout.column.slice(), fuelled: true };
    });
    drive(model, starts, ruleAt(level, spec)).forEach((end, i) => {
      histories[i]!.push(end);
    });
    last = model;
  }
  return histories.map((ends, i) => {
    const end = ends.at(-1)!;
    if (end instanceof Error) return end;
    const coarser = ends.at(-2)!;
    const air = coarser instanceof Error ? Number.NaN : coarser.state.line.trapped.air;
    const result = pointResult(last!, speeds[i]!, end.state, air);
    return { result, model: last!, column: end.column };
  });
}

/** On coarse meshes only a start is sought. */
function ruleAt(level: number, { numerics }: EngineSpecification): SettleRule {
  const { settle: limit, maximumCycles: most } = numerics;
  if (level === 0) return { alike: 3, limit: 2 * limit, most };
  return { alike: 2, limit, most };
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

/** One speed after the other, in TypeScript. */
export const solo: Driver = (model, starts, rule) =>
  starts.map(({ speed, column, fuelled }) => {
    const { network } = model;
    network.load(column);
    const settling = new Settling(model, speed, rule);
    settling.begin(fuelled);
    for (;;) {
      try {
        network.run(Number.MAX_SAFE_INTEGER);
      } catch (error) {
        if (!(error instanceof NonPhysicalStateError)) throw error;
        return placed(error, network.layout.column) as NonPhysicalStateError;
      }
      const state = settling.arrive();
      if (state) return { state, column: network.layout.column.slice() };
    }
  });

function pointResult(
  { spec, working }: EngineModel,
  speed: number,
  state: SettledState,
  coarseAir: number,
): PointResult {
  const { trapped, work, backflow, mouthOutflow } = state.line;
  const { pressure, temperature } = spec.ambient;
  const density = pressure / (working.gas.gasConstant(0, 0) * temperature);
  const charge = trapped.air + trapped.burned + trapped.fuel;
  return {
    speed,
    volumetricEfficiency: trapped.air / (density * sweptVolume(spec.cylinder)),
    pressureAtClosing: trapped.pressure,
    chargeTemperature: trapped.temperature,
    residualFraction: trapped.burned / charge,
    backflow: backflow / charge,
    mouthOutflow: mouthOutflow / charge,
    indicatedTorque: (work * spec.cylinder.count) / (4 * Math.PI),
    settled: state.settled,
    cycles: state.cycles,
    meshError: Math.abs(coarseAir / trapped.air - 1) / 3,
    audit: state.audit,
    ...(state.spray && { spray: state.spray }),
  };
}

/** Runs speeds of one engine, side by side where WebAssembly has lanes. */
export function runSpeeds(
  spec: EngineSpecification,
  speeds: readonly number[],
  drive: Driver = inLanes,
): (PointResult | NonPhysicalStateError)[] {
  return settleSpeeds(spec, speeds, undefined, drive).map((point) =>
    point instanceof Error ? point : point.result,
  );
}
