/**
 * Plates that move while the engine is held at one speed: on from the settled state at one angle, what
 * every cylinder closes on cycle after cycle, and the pressure that a sensor is under. All cylinders are
 * solved, in TypeScript: in lanes no plate moves.
 */
import { wrapAngle } from '../crankAngle.ts';
import { sweptVolume } from '../cylinder/crank.ts';
import { plateGrowth, throttleArea } from '../loss/throttlePlate.ts';
import type { EngineSpecification } from '../specification.ts';
import * as AT from '../step/layout.ts';
import { Run } from './cycle.ts';
import type { EngineModel } from './plan.ts';
import { type AtRest, pedalled, STRIDE, sensedPressure, settledAt } from './platesAtRest.ts';
import type { PointResult } from './point.ts';

export interface PlateMove {
  /** Plates at the angle that they start from. */
  engine: EngineSpecification;
  /** [rpm] */
  speed: number;
  /** Angle that they end at [deg], and time that they take [s]; straight in time. */
  to: number;
  seconds: number;
  /** Angles between at which plates are looked at in rest too [deg], rising. */
  between: readonly number[];
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
  /** What plates at rest give, from the angle before to the one after; on the mesh that charges have. */
  rest: AtRest[];
  charges: CaughtCharge[];
  /** Time from a closing to the firing dead centre of its charge [s]. */
  untilFiring: number;
  /** From one cycle before plates began to move [s], and pressure behind the one plate in the chamber, or behind all in their mean [Pa]. */
  signal: { time: number; pressure: number }[];
}

/** Throws NonPhysicalStateError where the computation fails. */
export function movePlates(move: PlateMove): MovedPlates {
  const { engine, speed, to, between } = move;
  const at = (angle: number) => settledAt(engine, speed, angle);
  const after = at(to);
  const rest = between.map((angle) => at(angle).rest);
  const { model, column, ...before } = at(pedalled(engine).angle);
  model.network.load(column);
  return {
    before: before.result,
    after: after.result,
    rest: [before.rest, ...rest, after.rest],
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
    signal.push({ time, pressure: sensedPressure(model) });
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

/** Plates at a time since they began to move [deg]. */
export function angleAt(
  { engine, to, seconds }: Pick<PlateMove, 'engine' | 'to' | 'seconds'>,
  time: number,
): number {
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

/** Fresh air of a cylinder full of ambient air [kg]. */
function fullCharge({ spec, working }: EngineModel): number {
  const { pressure, temperature } = spec.ambient;
  return (pressure / (working.gas.gasConstant(0, 0) * temperature)) * sweptVolume(spec.cylinder);
}
