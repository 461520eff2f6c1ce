/**
 * What one body that differs does to air, mixture, torque and exhaust of its cylinder: a plate that is off, a worn
 * shaft, a bleed screw, a trumpet of another length; at idle, at part load, wide open.
 */

import { sweptVolume } from '../../cylinder/crank.ts';
import { jointMixture, spreadOf } from '../../decision/mixtureShares.ts';
import { portFilling } from '../../decision/portFilling.ts';
import type { Target } from '../../decision/target.ts';
import { throughPoints } from '../../decision/throughPoints.ts';
import { exp, log } from '../../elementary/powers.ts';
import type { PointResult } from '../../engine/point.ts';
import { throttleArea } from '../../loss/throttlePlate.ts';
import { spreadLoss } from '../../mixture/mixtureTorque.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { exhaustTemperature } from './exhaust.ts';
import { FAULTS, type Fault } from './faults.ts';

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
  /** Points with each of the faults that this engine can have. */
  faults: { fault: Fault; outcome: PointOutcome }[];
}

/** One body that differs at a load. */
export interface BodyEffect {
  load: SpreadLoad;
  /** Growth of air and of torque of that cylinder, fuel following [-]; undefined where a point is no answer. */
  air: number | undefined;
  torque: number | undefined;
  /** With the fuel of the others, all together at the mixture of the file: its lambda and theirs [-]. */
  lambda: number | undefined;
  others: number | undefined;
  /** Torque of one published engine that this spread of mixture costs [N m]. */
  cost: number | undefined;
  /** How much hotter its exhaust runs than theirs, with these mixtures [K]. */
  hotter: number | undefined;
}

/** One plate off by an error [deg]; wide open it falls short by it, else it stands open too far. */
export interface SpreadRow extends BodyEffect {
  error: number;
}

/** One body with a fault. */
export interface FaultRow extends BodyEffect {
  fault: Fault;
}

export interface SpreadStudy {
  /** Cylinders of the engine. */
  cylinders: number;
  loads: SpreadLoad[];
  rows: SpreadRow[];
  faults: FaultRow[];
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
  computer: Computer,
  observer: SweepObserver = {},
): Promise<SpreadStudy> {
  const { engine } = question;
  const possible = FAULTS.filter((fault) => fault.of(engine));
  const wanted = loadsOf(question);
  observer.onTotal?.(wanted.length * (OFFSETS.length + possible.length));
  const loads = await Promise.all(
    wanted.map(async (load): Promise<SpreadLoad> => {
      const run = async (one: EngineSpecification) => {
        const outcome = await computer.run({ engine: one, speed: load.speed });
        observer.onPoint?.(0, load.speed, outcome);
        return outcome;
      };
      const outcomes = OFFSETS.map((offset) => run(offBy(engine, load, offset)));
      const faults = possible.map(async (fault) => ({
        fault,
        outcome: await run(fault.of(offBy(engine, load, 0))!),
      }));
      return { ...load, outcomes: await Promise.all(outcomes), faults: await Promise.all(faults) };
    }),
  );
  const heats = await Promise.all(loads.map((load) => heated(engine, load, computer)));
  return {
    cylinders: engine.cylinder.count,
    loads,
    rows: heats.flatMap(({ rows }) => rows),
    faults: heats.flatMap(({ faults }) => faults),
  };
}

type WantedLoad = Pick<SpreadLoad, 'name' | 'speed' | 'angle'>;

/** The engine with its plates at the angle of a load and so much off. */
const offBy = (engine: EngineSpecification, { angle }: WantedLoad, offset: number) =>
  withAngle(engine, angle + way(angle) * offset);

/** Rows of a load with how hot exhausts run. */
async function heated(
  engine: EngineSpecification,
  load: SpreadLoad,
  computer: Computer,
): Promise<{ rows: SpreadRow[]; faults: FaultRow[] }> {
  const rows = ERRORS.map((error) => spreadRow(engine, load, error));
  const faults = load.faults.map(({ fault, outcome }) => faultRow(engine, load, fault, outcome));
  const hot = (one: EngineSpecification, lambda: number | undefined) =>
    lambda === undefined ? undefined : exhaustTemperature(computer, one, load.speed, lambda);
  const solved = rows.filter(({ error }) => (OFFSETS as readonly number[]).includes(error));
  const farthest = solved.at(-1)!;
  const [base, others, own, faulty] = await Promise.all([
    hot(offBy(engine, load, 0), engine.combustion.lambda),
    hot(offBy(engine, load, 0), farthest.others),
    Promise.all(solved.map(({ error, lambda }) => hot(offBy(engine, load, error), lambda))),
    Promise.all(faults.map(({ fault, lambda }) => hot(fault.of(offBy(engine, load, 0))!, lambda))),
  ]);
  const theirs = othersHeat(engine.combustion.lambda, base, farthest.others, others);
  const less = (mine: number | undefined, lambda: number | undefined) => {
    const rest = theirs(lambda);
    return mine === undefined || rest === undefined ? undefined : mine - rest;
  };
  return {
    rows: rows.map((row) => ({
      ...row,
      hotter: less(
        throughThree([0, ...solved.map(({ error }) => error)], [base, ...own], row.error),
        row.others,
      ),
    })),
    faults: faults.map((row, i) => ({ ...row, hotter: less(faulty[i], row.others) })),
  };
}

/** Exhaust of the cylinders that do not differ against their lambda: straight between two. */
function othersHeat(
  lambda: number,
  base: number | undefined,
  far: number | undefined,
  farther: number | undefined,
) {
  return (at: number | undefined) => {
    if (at === undefined || base === undefined || far === undefined) return undefined;
    // Where air does not change, mixture does not.
    if (Math.abs(far - lambda) < LEAST_CHANGE) return base;
    return farther === undefined
      ? undefined
      : base + ((farther - base) * (at - lambda)) / (far - lambda);
  };
}

const LEAST_CHANGE = 0.001;

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
  return { error, ...effectOf(engine, load, air, torque) };
}

function faultRow(
  engine: EngineSpecification,
  load: SpreadLoad,
  fault: Fault,
  outcome: PointOutcome,
): FaultRow {
  const sound = load.outcomes[0]!;
  const over = (figure: (point: PointResult) => number) =>
    isFailure(outcome) || isFailure(sound) || !outcome.settled || !sound.settled
      ? undefined
      : figure(outcome) / figure(sound) - 1;
  const air = over((point) => point.volumetricEfficiency);
  return {
    fault,
    ...effectOf(
      engine,
      load,
      air,
      over((point) => point.indicatedTorque),
    ),
  };
}

/** What more air in one cylinder makes of the mixtures, fuel being as for the others. */
function effectOf(
  engine: EngineSpecification,
  load: SpreadLoad,
  air: number | undefined,
  torque: number | undefined,
): BodyEffect {
  const none = { lambda: undefined, others: undefined, cost: undefined, hotter: undefined };
  if (air === undefined) return { load, air, torque: undefined, ...none };
  const shares = Array.from({ length: engine.cylinder.count }, (_, i) => (i === 0 ? 1 + air : 1));
  const joint = jointMixture(
    shares,
    shares.map(() => 1),
  );
  const lambdas = shares.map((share) => (engine.combustion.lambda * share) / joint);
  return {
    ...{ load, air, torque, hotter: undefined },
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
  const at = throughThree(xs, ys.map(log), x)!;
  return exp(at - log(ys[0]!)) - 1;
}

/** The parabola through three points; undefined where one of them is. */
function throughThree(
  xs: readonly number[],
  ys: readonly (number | undefined)[],
  x: number,
): number | undefined {
  const known = ys.flatMap((y, i) => (y === undefined ? [] : [{ x: xs[i]!, y }]));
  return known.length < ys.length ? undefined : throughPoints(known, x);
}
