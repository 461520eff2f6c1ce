/**
 * Plates that move while the engine is held at one speed: on from the settled state at one angle, what
 * every cylinder closes on cycle after cycle, and the pressure that a sensor is under. All cylinders are
 * solved, in TypeScript: in lanes no plate moves.
 */
import { wrapAngle } from '../crankAngle.ts';
import { sweptVolume } from '../cylinder/crank.ts';
import { plateGrowth, throttleArea } from '../loss/throttlePlate.ts';
import type { EngineSpecification, ThrottleSpecification } from '../specification.ts';
import * as AT from '../step/layout.ts';
import { Run } from './cycle.ts';
import { inLanes } from './lanes.ts';
import type { EngineModel } from './plan.ts';
import { type PointResult, settleSpeeds } from './point.ts';

export interface PlateMove {
  /** Plates at the angle that they start from. */
  engine: EngineSpecification;
  /** [rpm] */
  speed: number;
  /** Angle that they end at [deg], and time that they take [s]; straight in time. */
  to: number;
  seconds: number;
  /** Cycles to follow. */
  cycles: number;
}

/** A cylinder at its intake closing. */
export interface CaughtCharge {
  /** Its place in the firing order, from 0. */
  place: number;
  /** Since plates began to move [s]. */
  time: number;
  /** Volumetric efficiency [-]. */
  filling: number;
}

export interface MovedPlates {
  /** Settled before, and at the angle that they end at. */
  before: PointResult;
  after: PointResult;
  /** On the finest mesh as they are, as the charges are: filling before and after [-]. */
  fillings: { before: number; after: number };
  charges: CaughtCharge[];
  /** Time from a closing to the firing dead centre of its charge [s]. */
  untilFiring: number;
  /** From one cycle before plates began to move [s], and pressure behind the one plate in the chamber, or behind all in their mean [Pa]. */
  signal: { time: number; pressure: number }[];
}

/** How often plates are moved and the pressure noted [deg]. */
const STRIDE = 10;

/** Throws NonPhysicalStateError where the computation fails. */
export function movePlates(move: PlateMove): MovedPlates {
  const { engine, speed, to } = move;
  const [before, after] = [engine, withPlates(engine, to)].map((spec) => {
    const point = settleSpeeds(spec, [speed], 'all', inLanes)[0]!;
    if (point instanceof Error) throw point;
    return point;
  });
  const { model, column } = before!;
  model.network.load(column);
  return {
    before: before!.result,
    after: after!.result,
    fillings: {
      before: before!.finest.volumetricEfficiency,
      after: after!.finest.volumetricEfficiency,
    },
    untilFiring: (720 - model.start) / (6 * speed),
    ...followed(model, move),
  };
}

/** One cycle with plates at rest, then those that are asked for, from the state that the model holds. */
function followed(model: EngineModel, move: PlateMove): Pick<MovedPlates, 'signal' | 'charges'> {
  const { speed, cycles } = move;
  const run = new Run(model, speed);
  run.start(true);
  run.stride = STRIDE;
  const perDegree = 1 / (6 * speed);
  const signal: MovedPlates['signal'] = [];
  let time = -720 * perDegree;
  let last = model.start;
  let angle = pedalled(model.spec).angle;
  run.onStop = (crankAngle) => {
    time += wrapAngle(crankAngle - last) * perDegree;
    last = crankAngle;
    const next = angleAt(move, time);
    if (next !== angle) setPlates(model, next);
    angle = next;
    signal.push({ time, pressure: sensed(model) });
  };
  run.cycle();
  const fullest = fullCharge(model);
  const charges = Array.from({ length: cycles }, (_, k) =>
    run.cycle().map((report, place): CaughtCharge => {
      const turned = 720 * k + (model.lines[place]!.phase || 720);
      return { place, time: turned * perDegree, filling: report.trapped.air / fullest };
    }),
  ).flat();
  return { signal, charges: charges.sort((a, b) => a.time - b.time) };
}

/** The throttle that the pedal moves. */
export const pedalled = ({ intake }: EngineSpecification): ThrottleSpecification =>
  intake.chamber?.throttle ?? intake.throttle;

/** The engine with the plates that the pedal moves at another angle [deg]. */
export function withPlates(engine: EngineSpecification, angle: number): EngineSpecification {
  const { intake } = engine;
  const { chamber } = intake;
  const moved = { ...pedalled(engine), angle };
  return {
    ...engine,
    intake: chamber?.throttle
      ? { ...intake, chamber: { ...chamber, throttle: moved } }
      : { ...intake, throttle: moved },
  };
}

function angleAt({ engine, to, seconds }: PlateMove, time: number): number {
  const from = pedalled(engine).angle;
  if (time <= 0) return from;
  return from + (to - from) * (time < seconds ? time / seconds : 1);
}

/** Area and table of growth of every plate at an angle. */
function setPlates({ spec, plates, network }: EngineModel, angle: number): void {
  const throttle = pedalled(spec);
  const area = throttleArea(throttle, angle);
  const growth = plateGrowth(throttle, angle);
  const { N, K } = network.layout;
  for (const plate of plates) {
    if (plate.kind !== 'constriction') continue;
    plate.throat.slots.fill(area, AT.T_AREA, AT.T_AREA + 2);
    const record = N[N[AT.NODES_AT]! + network.nodes.indexOf(plate)]!;
    K.set(growth, N[record + AT.FIRST_END + plate.ends.length + 1]!);
  }
}

function sensed({ spec, chamber, lines }: EngineModel): number {
  if (chamber && spec.intake.chamber?.throttle) return chamber.pressure;
  return lines.reduce((sum, { runner }) => sum + runner.prim.p.at(0), 0) / lines.length;
}

/** Fresh air of a cylinder full of ambient air [kg]. */
function fullCharge({ spec, working }: EngineModel): number {
  const { pressure, temperature } = spec.ambient;
  return (pressure / (working.gas.gasConstant(0, 0) * temperature)) * sweptVolume(spec.cylinder);
}
