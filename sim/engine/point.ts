/**
 * One operating point: cycles until trapped mass and pressure at valve closing repeat, then the
 * figures of the last cycle with its audit.
 *
 * Volumetric efficiency = fresh air trapped at intake closing / (ambient density x swept volume).
 */
import { sweptVolume } from '../cylinder/crank.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';
import { FILM_SETTLED } from '../spray/spray.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import { type Audit, audit, resetLedgers, stored } from './audit.ts';
import { type LineCycle, type OnStep, type Run, runCycle, startRun } from './cycle.ts';
import { type EngineModel, engineModel, type Solved } from './model.ts';

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
  /** Told of each step of the last cycle; one more cycle is run for it. */
  onStep?: (model: EngineModel, report: Parameters<OnStep>[0]) => void;
}

/** Runs one point. Throws NonPhysicalStateError where the computation fails. */
export function runPoint(
  spec: EngineSpecification,
  speed: number,
  options: PointOptions = {},
): PointResult {
  const model = engineModel(spec, speed, options.solved);
  const coarse = settledOnCoarseMesh(spec, speed, options.solved);
  const run = startRun(model, coarse?.model);
  const state = settle(run, spec.numerics.settle);
  const { onStep } = options;
  if (onStep) runCycle(run, (report) => onStep(model, report));
  return pointResult(model, state, coarse?.air ?? Number.NaN);
}

/**
 * The same point on a mesh of twice the cell: a quarter of the work, and all but the last cycles
 * that settling takes can be spent there. Undefined where so coarse a mesh fails.
 */
function settledOnCoarseMesh(
  spec: EngineSpecification,
  speed: number,
  solved: Solved | undefined,
): { model: EngineModel; air: number } | undefined {
  const { intakeCell, exhaustCell, settle: limit } = spec.numerics;
  const numerics = { ...spec.numerics, intakeCell: 2 * intakeCell, exhaustCell: 2 * exhaustCell };
  try {
    const run = startRun(engineModel({ ...spec, numerics }, speed, solved));
    const { line } = settle(run, limit);
    return { model: run.model, air: line.trapped.air };
  } catch (error) {
    if (error instanceof NonPhysicalStateError) return undefined;
    throw error;
  }
}

interface SettledState {
  line: LineCycle;
  audit: Audit;
  settled: boolean;
  cycles: number;
}

/** Fewest cycles: the start must have been flushed out. */
const FEWEST_CYCLES = 3;

/**
 * Cycles on until three in a row lie within the limit of each other: a drift has slowed by then, and
 * an engine that swings between two cycles for ever is judged by the width of its swing.
 */
function settle(run: Run, limit: number): SettledState {
  const { maximumCycles } = run.model.spec.numerics;
  const lines: LineCycle[] = [];
  for (let cycles = 1; ; cycles++) {
    resetLedgers(run.model);
    const before = stored(run.model);
    const line = runCycle(run)[0]!;
    lines.push(line);
    const still = spread(lines.slice(-FEWEST_CYCLES)) < limit && sprayRepeats(run);
    const settled = cycles >= FEWEST_CYCLES && still;
    if (settled || cycles >= maximumCycles) {
      return { line, audit: audit(run.model, before), settled, cycles };
    }
  }
}

/** How far apart cycles lie in trapped mass or pressure, whichever is more [-]. */
function spread(cycles: readonly LineCycle[]): number {
  const relative = (values: number[]) => Math.max(...values) / Math.min(...values) - 1;
  return Math.max(
    relative(cycles.map(({ trapped }) => trapped.air)),
    relative(cycles.map(({ trapped }) => trapped.pressure)),
  );
}

/** Whether the mixture is held and the films lie still. */
function sprayRepeats(run: Run): boolean {
  return run.model.lines.every(({ spray }) => {
    if (!spray?.cycle) return true;
    const { delivered, needed, filmImbalance } = spray.cycle;
    return filmImbalance < FILM_SETTLED && Math.abs(delivered - needed) < FILM_SETTLED * needed;
  });
}

function pointResult(model: EngineModel, state: SettledState, coarseAir: number): PointResult {
  const { spec, speed, working } = model;
  const { trapped, work, backflow, mouthOutflow } = state.line;
  const { pressure, temperature } = spec.ambient;
  const density = pressure / (working.gas.gasConstant(0, 0) * temperature);
  const charge = trapped.air + trapped.burned + trapped.fuel;
  const spray = model.lines[0]!.spray?.cycle;
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
    ...(spray && { spray }),
  };
}
