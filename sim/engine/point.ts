/**
 * One operating point: cycles until trapped mass and pressure at valve closing repeat, then the
 * figures of the last cycle with its audit.
 *
 * Volumetric efficiency = fresh air trapped at intake closing / (ambient density x swept volume).
 */
import { sweptVolume } from '../cylinder/crank.ts';
import type { EngineSpecification } from '../specification.ts';
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
  audit: Audit;
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
  const run = startRun(model);
  const state = settle(run);
  const { onStep } = options;
  if (onStep) runCycle(run, (report) => onStep(model, report));
  return pointResult(model, state);
}

interface SettledState {
  line: LineCycle;
  audit: Audit;
  settled: boolean;
  cycles: number;
}

/** Fewest cycles: the start must have been flushed out. */
const FEWEST_CYCLES = 3;

function settle(run: Run): SettledState {
  const { settle: limit, maximumCycles } = run.model.spec.numerics;
  let last: LineCycle | undefined;
  for (let cycles = 1; ; cycles++) {
    resetLedgers(run.model);
    const before = stored(run.model);
    const line = runCycle(run)[0]!;
    const settled = cycles >= FEWEST_CYCLES && last !== undefined && repeats(last, line, limit);
    if (settled || cycles >= maximumCycles) {
      return { line, audit: audit(run.model, before), settled, cycles };
    }
    last = line;
  }
}

function repeats(a: LineCycle, b: LineCycle, limit: number): boolean {
  const change = (x: number, y: number) => Math.abs(x - y) / Math.abs(y);
  return (
    change(a.trapped.air, b.trapped.air) < limit &&
    change(a.trapped.pressure, b.trapped.pressure) < limit
  );
}

function pointResult(model: EngineModel, state: SettledState): PointResult {
  const { spec, speed, working } = model;
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
    audit: state.audit,
  };
}
