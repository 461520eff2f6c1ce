/**
 * Running the engine: from one intake closing to the next, landing on every closing of every
 * cylinder solved, where the trapped charge is noted and fuelled.
 */
import type { TrappedCharge } from '../cylinder/cylinder.ts';
import { CYCLE, wrapAngle } from '../cylinder/valveLift.ts';
import { NonPhysicalStateError } from '../errors.ts';
import type { CylinderLine, EngineModel } from './model.ts';
import { takeOver } from './takeOver.ts';

/** What is told of each step once it is taken. */
export interface StepReport {
  /** Crank angle at the end of the step, counted on from the start of the run [deg]. */
  crankAngle: number;
  /** Length of the step [s]. */
  dt: number;
}

export type OnStep = (report: StepReport) => void;

/** What one line did over a cycle. */
export interface LineCycle {
  trapped: TrappedCharge;
  /** Work on the piston over the cycle [J]. */
  work: number;
  /** Gas that flowed from the cylinder back into the port [kg]. */
  backflow: number;
  /** Gas that flowed out of the mouth [kg]. */
  mouthOutflow: number;
}

/** The engine under way. */
export interface Run {
  model: EngineModel;
  /** Crank angle counted on from the start [deg]. */
  crankAngle: number;
  /** Simulated time [s]. */
  time: number;
}

/** Starts from rest, or from the settled state of the same engine on another mesh. */
export function startRun(model: EngineModel, settled?: EngineModel): Run {
  if (settled) {
    takeOver(model, settled);
    return { model, crankAngle: model.start, time: 0 };
  }
  const { gas, airFuelRatio } = model.working;
  for (const { cylinder } of model.lines) {
    const { air } = cylinder.close(gas, model.start);
    cylinder.addFuel(gas, air / airFuelRatio);
  }
  return { model, crankAngle: model.start, time: 0 };
}

/** One cycle; reports each line in the order of the model's lines. */
export function runCycle(run: Run, onStep?: OnStep): LineCycle[] {
  const { model } = run;
  const from = run.crankAngle;
  const reports = model.lines.map((): LineCycle => emptyCycle());
  const tally: OnStep = (report) => {
    model.lines.forEach((line, j) => {
      tallyBackflow(line, reports[j]!, report.dt);
    });
    onStep?.(report);
  };
  const workBefore = model.lines.map((line) => line.cylinder.ledger.work);
  for (const { line, after, index } of closings(model)) {
    advanceTo(run, from + after, tally);
    closeLine(model, line, reports[index]!);
  }
  model.lines.forEach((line, j) => {
    reports[j]!.work = line.cylinder.ledger.work - workBefore[j]!;
  });
  return reports;
}

/** The intake closings of a cycle in order, by degrees after its start; the first line's is last. */
function closings(model: EngineModel): { line: CylinderLine; after: number; index: number }[] {
  return model.lines
    .map((line, index) => ({ line, index, after: wrapAngle(line.phase) || CYCLE }))
    .sort((a, b) => a.after - b.after);
}

function closeLine(model: EngineModel, line: CylinderLine, report: LineCycle): void {
  const { gas, airFuelRatio } = model.working;
  const { cylinder, spray } = line;
  const angle = model.start + line.phase;
  report.trapped = cylinder.close(gas, angle);
  const needed = report.trapped.air / airFuelRatio;
  if (!spray) {
    cylinder.addFuel(gas, needed);
    return;
  }
  // Fuel that has come by itself counts; the rest is added, so that the mixture always burns as stated.
  const liquid = spray.close(report.trapped.air, cylinder.ownAngle(angle));
  const rest = Math.max(needed - cylinder.contents.fuel - liquid, 0);
  cylinder.addFuel(gas, rest, liquid, needed);
}

function advanceTo(run: Run, crankAngle: number, onStep: OnStep): void {
  const { network, speed, spec } = run.model;
  const degreesPerSecond = 6 * speed;
  const start = run.crankAngle;
  let left = (crankAngle - start) / degreesPerSecond;
  while (left > 0) {
    const longest = spec.numerics.courant * network.longestStep();
    // The last two steps share what is left, so that none is tiny.
    const dt = left > 2 * longest ? longest : left > longest ? left / 2 : left;
    const crankStep = dt * degreesPerSecond;
    const middle = wrapAngle(crankAngle - left * degreesPerSecond + 0.5 * crankStep);
    try {
      network.step({ crankAngle: middle, crankStep, dt });
    } catch (error) {
      throw placed(error, run.time + dt, middle);
    }
    left = dt === left ? 0 : left - dt;
    run.time += dt;
    run.crankAngle = crankAngle - left * degreesPerSecond;
    for (const { spray, cylinder } of run.model.lines) {
      spray?.follow(dt, cylinder.ownAngle(run.crankAngle));
    }
    onStep({ crankAngle: run.crankAngle, dt });
  }
}

/** The error with time and crank angle added. */
function placed(error: unknown, time: number, crankAngle: number): unknown {
  if (!(error instanceof NonPhysicalStateError)) return error;
  return new NonPhysicalStateError({ ...error.state, time, crankAngle });
}

function tallyBackflow(line: CylinderLine, report: LineCycle, dt: number): void {
  const atValve = line.intakeValve.flow.mass;
  if (atValve < 0) report.backflow -= atValve * dt;
  const atMouth = line.mouth.flow.mass;
  if (atMouth > 0) report.mouthOutflow += atMouth * dt;
}

function emptyCycle(): LineCycle {
  return {
    trapped: { pressure: 0, temperature: 0, air: 0, burned: 0, fuel: 0 },
    work: 0,
    backflow: 0,
    mouthOutflow: 0,
  };
}
