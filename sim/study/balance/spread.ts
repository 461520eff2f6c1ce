/** What one plate that is off does to air, mixture and torque: at idle, at part load, wide open. */

import { sweptVolume } from '../../cylinder/crank.ts';
import { jointMixture, spreadOf } from '../../decision/mixtureShares.ts';
import { portFilling } from '../../decision/portFilling.ts';
import type { Target } from '../../decision/target.ts';
import { exp, log } from '../../elementary/powers.ts';
import type { PointResult } from '../../engine/point.ts';
import { throttleArea } from '../../loss/throttlePlate.ts';
import { spreadLoss } from '../../mixture/mixtureTorque.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';

export interface SpreadQuestion {
  engine: EngineSpecification;
  /** Engine speeds of the scenario [rpm], rising. */
  speeds: readonly number[];
  target: Target;
}

/** A load at which a plate is off. */
export interface SpreadLoad {
  name: 'idle' | 'part load' | 'wide open';
  speed: number;
  angle: number;
  /** Points with the plate off by OFFSETS. */
  outcomes: PointOutcome[];
}

/** One plate off by an error at a load. */
export interface SpreadRow {
  load: SpreadLoad;
  /** [deg]; wide open the plate falls short by it, else it stands open too far. */
  error: number;
  /** Growth of air and of torque of that cylinder, fuel following [-]; undefined where a point is no answer. */
  air: number | undefined;
  torque: number | undefined;
  /** With the fuel of the others, all together at the mixture of the file: its lambda and theirs [-]. */
  lambda: number | undefined;
  others: number | undefined;
  /** Torque of one published engine that this spread of mixture costs [N m]. */
  cost: number | undefined;
}

export interface SpreadStudy {
  /** Cylinders of the engine. */
  cylinders: number;
  loads: SpreadLoad[];
  rows: SpreadRow[];
}

/** Errors told of [deg], and those that are solved, between which curves are laid. */
const ERRORS = [0.05, 0.1, 0.2, 0.5] as const;
export const OFFSETS = [0, 0.2, 0.5] as const;

/** Idle: air by swept volume [kg/s m^3] at a speed [rpm]; U.S. DOE, Fact 861 (2015), engines of 2.0 and 4.6 litres. */
const IDLE_AIR = { flow: 0.95, speed: 750 };
/** Idle of engines with one plate a cylinder [rpm]; opening above the stop at part load [deg]: common practice, no source. */
const IDLE_SPEED = 1000;
const PART_OPENING = 12;
const WIDE_OPEN = 90;
/** All but shut, a port takes tens of cycles to settle. */
const IDLE_CYCLES = 80;

export async function spreadStudy(
  question: SpreadQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<SpreadStudy> {
  const wanted = loadsOf(question);
  observer.onTotal?.(wanted.length * OFFSETS.length);
  const loads = await Promise.all(
    wanted.map(async (load) => ({
      ...load,
      outcomes: await Promise.all(
        OFFSETS.map(async (offset) => {
          const engine = withAngle(question.engine, load.angle + way(load.angle) * offset);
          const outcome = await runner.run({ engine, speed: load.speed });
          observer.onPoint?.(0, load.speed, outcome);
          return outcome;
        }),
      ),
    })),
  );
  const { engine } = question;
  return {
    cylinders: engine.cylinder.count,
    loads,
    rows: loads.flatMap((load) => ERRORS.map((error) => spreadRow(engine, load, error))),
  };
}

type WantedLoad = Omit<SpreadLoad, 'outcomes'>;

function loadsOf({ engine, speeds, target }: SpreadQuestion): WantedLoad[] {
  const { closedAngle } = engine.intake.throttle;
  return [
    { name: 'idle', speed: IDLE_SPEED, angle: idleAngle(engine) },
    { name: 'part load', speed: speeds[0]!, angle: closedAngle + PART_OPENING },
    { name: 'wide open', speed: (target.from + target.to) / 2, angle: WIDE_OPEN },
  ];
}

/** The angle at which a cylinder draws the idle air of its size [deg], to a hundredth. */
function idleAngle(engine: EngineSpecification): number {
  const wanted = (IDLE_AIR.flow * sweptVolume(engine.cylinder) * IDLE_SPEED) / IDLE_AIR.speed;
  const { closedAngle } = engine.intake.throttle;
  let [low, high] = [closedAngle, closedAngle + 2 * PART_OPENING];
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (portFilling(engine, IDLE_SPEED, middle).flow < wanted) low = middle;
    else high = middle;
  }
  return high;
}

/** Open too far, or where there is no farther, short. */
const way = (angle: number) => (angle + OFFSETS[2] > WIDE_OPEN ? -1 : 1);

function withAngle(engine: EngineSpecification, angle: number): EngineSpecification {
  const throttle = { ...engine.intake.throttle, angle };
  const maximumCycles = Math.max(engine.numerics.maximumCycles, IDLE_CYCLES);
  return {
    ...engine,
    intake: { ...engine.intake, throttle },
    numerics: { ...engine.numerics, maximumCycles },
  };
}

function spreadRow(engine: EngineSpecification, load: SpreadLoad, error: number): SpreadRow {
  const air = growth(engine, load, error, (point) => point.volumetricEfficiency);
  const torque = growth(engine, load, error, (point) => point.indicatedTorque);
  if (air === undefined) {
    const none = { torque: undefined, lambda: undefined, others: undefined, cost: undefined };
    return { load, error, air, ...none };
  }
  const shares = Array.from({ length: engine.cylinder.count }, (_, i) => (i === 0 ? 1 + air : 1));
  const joint = jointMixture(
    shares,
    shares.map(() => 1),
  );
  const lambdas = shares.map((share) => (engine.combustion.lambda * share) / joint);
  return {
    ...{ load, error, air, torque },
    lambda: lambdas[0],
    others: lambdas[1],
    cost: spreadLoss(spreadOf(lambdas)),
  };
}

/**
 * Growth of a figure with the plate off by an error, along the parabola of its logarithm over that of the
 * effective area through the three points; undefined where one is no answer.
 */
function growth(
  { intake }: EngineSpecification,
  { angle, outcomes }: SpreadLoad,
  error: number,
  figure: (point: PointResult) => number,
): number | undefined {
  const points = outcomes.filter((one): one is PointResult => !isFailure(one) && one.settled);
  const ys = points.map(figure);
  if (ys.length < OFFSETS.length || ys.some((y) => y <= 0)) return undefined;
  const area = (offset: number) => log(throttleArea(intake.throttle, angle + way(angle) * offset));
  const xs = OFFSETS.map(area);
  const x = area(error);
  const [a, b, c] = xs as [number, number, number];
  const [f, g, h] = ys.map(log) as [number, number, number];
  const at =
    (f * (x - b) * (x - c)) / ((a - b) * (a - c)) +
    (g * (x - a) * (x - c)) / ((b - a) * (b - c)) +
    (h * (x - a) * (x - b)) / ((c - a) * (c - b));
  return exp(at - f) - 1;
}
