/**
 * Running the engine: from one intake closing to the next, landing on every closing of every
 * cylinder solved, where the trapped charge is noted and fuelled.
 *
 * A run never steps by itself: it says how far to go, whoever takes the steps tells it that it has
 * come there with the parts of the model up to date, and it says how far to go next.
 */

import { CYCLE, wrapAngle } from '../crankAngle.ts';
import type { TrappedCharge } from '../cylinder/cylinder.ts';
import { NonPhysicalStateError } from '../errors.ts';
import { SPRAY_STEP, type Spray } from '../spray/spray.ts';
import * as AT from '../step/layout.ts';
import { resetLedgers } from './audit.ts';
import type { CylinderLine } from './cylinderLine.ts';
import { lineSpray } from './lineSpray.ts';
import type { EngineModel } from './plan.ts';

/** What one line did over a cycle. */
export interface LineCycle {
  trapped: TrappedCharge;
  /** Work on the piston over the cycle [J]. */
  work: number;
  /** Gas that flowed from the cylinder back into the port [kg]. */
  backflow: number;
  /** Gas that flowed out of the mouth [kg]. */
  mouthOutflow: number;
  /** Mean pressure over time behind the plate [Pa]. */
  portPressure: number;
}

/** The mean over all cylinders of the engine of what each line did. */
export function meanCycle({ lines }: EngineModel, cycles: readonly LineCycle[]): LineCycle {
  const count = lines.reduce((sum, { like }) => sum + like.length, 0);
  return weightedCycle(cycles, (i) => lines[i]!.like.length / count);
}

/** The mean of cycles, each with its share; shares add up to one. */
export function weightedCycle(
  cycles: readonly LineCycle[],
  share: (i: number) => number,
): LineCycle {
  const mean = (of: (cycle: LineCycle) => number) =>
    cycles.reduce((sum, cycle, i) => sum + share(i) * of(cycle), 0);
  return {
    trapped: {
      pressure: mean(({ trapped }) => trapped.pressure),
      temperature: mean(({ trapped }) => trapped.temperature),
      air: mean(({ trapped }) => trapped.air),
      burned: mean(({ trapped }) => trapped.burned),
      fuel: mean(({ trapped }) => trapped.fuel),
    },
    work: mean(({ work }) => work),
    backflow: mean(({ backflow }) => backflow),
    mouthOutflow: mean(({ mouthOutflow }) => mouthOutflow),
    portPressure: mean(({ portPressure }) => portPressure),
  };
}

/** An engine at a speed, under way. */
export class Run {
  readonly model: EngineModel;
  /** Engine speed [rpm]. */
  readonly speed: number;
  /** Injectors, drops and films of each line; none where fuel joins at valve closing. */
  readonly sprays: readonly Spray[];
  /** Called at every stop with the crank angle [deg]; stops are at most `stride` [deg] apart. */
  onStop?: (crankAngle: number) => void;
  stride = Number.POSITIVE_INFINITY;
  private readonly closings: readonly Closing[];
  private reports: LineCycle[] = [];
  /** Degrees after the cycle's start: here, and where to stop next; closings passed. */
  private at = 0;
  private stop = 0;
  private passed = 0;

  constructor(model: EngineModel, speed: number) {
    this.model = model;
    this.speed = speed;
    this.sprays = model.lines.flatMap((line) => lineSpray(model, speed, line) ?? []);
    if (this.sprays.length > 0) this.stride = SPRAY_STEP * 6 * speed;
    this.closings = closingsOf(model);
  }

  /** Sets the model, which holds a state already, to this speed; `fuelled`: its charge has fuel. */
  start(fuelled: boolean): void {
    const { model, speed } = this;
    const { column } = model.network.layout;
    column[AT.CRANK] = model.start;
    column[AT.CRANK_RATE] = 6 * speed;
    column[AT.TIME] = 0;
    for (const { cylinder } of model.lines) cylinder.setSpeed(speed);
    if (fuelled) return;
    const { gas, airFuelRatio } = model.working;
    for (const { cylinder } of model.lines) {
      const { air } = cylinder.close(gas, model.start);
      cylinder.addFuel(gas, air / airFuelRatio);
    }
  }

  /** Begins a cycle: resets what is summed over it and sets how far to go. */
  beginCycle(): void {
    const { model } = this;
    resetLedgers(this);
    this.reports = model.lines.map(emptyCycle);
    this.at = 0;
    this.passed = 0;
    this.aim();
  }

  /** At a stop: does what is due there; returns the reports of the lines once the cycle is over. */
  arrive(): LineCycle[] | undefined {
    const { model } = this;
    const dt = (this.stop - this.at) / (6 * this.speed);
    this.at = this.stop;
    const angle = wrapAngle(model.start + this.at);
    model.network.layout.column[AT.CRANK] = angle;
    this.sprays.forEach((spray, j) => {
      spray.follow(dt, model.lines[j]!.cylinder.ownAngle(angle));
    });
    this.onStop?.(angle);
    const { after, line, index } = this.closings[this.passed]!;
    if (this.at === after) {
      this.reports[index]!.trapped = closeLine(model, line, this.sprays[index]);
      this.passed++;
    }
    if (this.passed < this.closings.length) {
      this.aim();
      return undefined;
    }
    return this.finish();
  }

  /** Runs a cycle in this thread, in TypeScript. Throws NonPhysicalStateError. */
  cycle(): LineCycle[] {
    const { network } = this.model;
    this.beginCycle();
    for (;;) {
      try {
        network.run(Number.MAX_SAFE_INTEGER);
      } catch (error) {
        throw placed(error, network.layout.column);
      }
      const reports = this.arrive();
      if (reports) return reports;
    }
  }

  /** Sets the next stop. The last two before a closing share what is left. */
  private aim(): void {
    const { at, stride } = this;
    const next = this.closings[this.passed]!.after;
    const left = next - at;
    const hop = left > 2 * stride ? stride : left > stride ? left / 2 : left;
    this.stop = hop === left ? next : at + hop;
    this.model.network.layout.column[AT.CRANK_LEFT] = this.stop - at;
  }

  private finish(): LineCycle[] {
    this.model.lines.forEach((line, j) => {
      const report = this.reports[j]!;
      report.work = line.cylinder.ledger.work;
      report.backflow = line.intakeValve.sums.in;
      report.mouthOutflow = line.mouth.sums.out;
      report.portPressure = (line.behindPlate.sums.pressure * this.speed) / 120;
    });
    return this.reports;
  }
}

/** An intake closing: degrees after the cycle's start, and whose. */
interface Closing {
  after: number;
  line: CylinderLine;
  index: number;
}

/** The intake closings of a cycle in order; the first line's is last. */
function closingsOf(model: EngineModel): Closing[] {
  return model.lines
    .map((line, index) => ({ line, index, after: wrapAngle(line.phase) || CYCLE }))
    .sort((a, b) => a.after - b.after);
}

/** The error with time and crank angle added. */
export function placed(error: unknown, column: Float64Array): unknown {
  if (!(error instanceof NonPhysicalStateError)) return error;
  const [time, crankAngle] = [column[AT.TIME]!, column[AT.CRANK_MIDDLE]!];
  return new NonPhysicalStateError({ ...error.state, time, crankAngle });
}

function closeLine(model: EngineModel, line: CylinderLine, spray?: Spray): TrappedCharge {
  const { gas, airFuelRatio } = model.working;
  const { cylinder } = line;
  const angle = model.start + line.phase;
  const trapped = cylinder.close(gas, angle);
  const needed = trapped.air / airFuelRatio;
  if (!spray) {
    cylinder.addFuel(gas, needed);
    return trapped;
  }
  // Fuel that has come by itself counts; the rest is added, so that the mixture always burns as stated.
  const liquid = spray.close(trapped.air, cylinder.ownAngle(angle));
  const rest = Math.max(needed - trapped.fuel - liquid, 0);
  cylinder.addFuel(gas, rest, liquid, needed);
  return trapped;
}

function emptyCycle(): LineCycle {
  return {
    trapped: { pressure: 0, temperature: 0, air: 0, burned: 0, fuel: 0 },
    work: 0,
    backflow: 0,
    mouthOutflow: 0,
    portPressure: 0,
  };
}
