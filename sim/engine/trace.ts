/**
 * Crank-resolved traces of one cycle at stations along a line: pressure, velocity, mass flow and
 * temperature, with valve lifts, for plotting and for distance-time pictures.
 */

import { byAngle, wrapAngle } from '../crankAngle.ts';
import type { Duct } from '../duct/duct.ts';
import { circleArea } from '../duct/profile.ts';
import type { EngineSpecification } from '../specification.ts';
import type { CylinderLine } from './cylinderLine.ts';
import type { EngineModel } from './plan.ts';
import { type PointResult, runPoint } from './point.ts';

/** A place in a duct of the first line, or in the pipe that feeds the chamber of all. */
export interface Station {
  name: string;
  duct: 'trumpet' | 'runner' | 'primary' | 'inlet';
  /** Share of the duct's length from its start [0..1]. */
  share: number;
}

/** The usual three: just inside the mouth, before the intake valve, behind the exhaust valve. */
export const STATIONS: readonly Station[] = [
  { name: 'mouth', duct: 'trumpet', share: 0 },
  { name: 'port', duct: 'runner', share: 1 },
  { name: 'exhaust', duct: 'primary', share: 0 },
];

/** Columns of one station over the cycle. */
export interface StationTrace {
  name: string;
  /** Static pressure [Pa]. */
  pressure: number[];
  /** Velocity, positive with rising distance from the duct's start [m/s]. */
  velocity: number[];
  /** Mass flow, the same sign [kg/s]. */
  massFlow: number[];
  /** Static temperature [K]. */
  temperature: number[];
}

/** A picture of pressure and velocity along the intake over the cycle. */
export interface WavePicture {
  /** Distances from the rim plane towards the valve [m]. */
  distance: number[];
  /** Static pressure [Pa], [time][distance]. */
  pressure: number[][];
  /** Velocity towards the valve [m/s], [time][distance]. */
  velocity: number[][];
}

export interface Trace {
  point: PointResult;
  /** Crank angle, rising from intake closing over one cycle, 0 at firing [deg], 0 to 720. */
  crankAngle: number[];
  cylinderPressure: number[];
  cylinderTemperature: number[];
  /** Lifts [m]. */
  intakeLift: number[];
  exhaustLift: number[];
  /** Crank angles of opening and closing [deg]. */
  intakeEvents: { open: number; close: number };
  exhaustEvents: { open: number; close: number };
  stations: StationTrace[];
  wave: WavePicture;
  /** Pressure of the chamber that the mouths stand in [Pa]; absent where there is none. */
  chamberPressure?: number[];
}

/** Rows of the trace are at most this far apart [deg]. */
const SPACING = 1;

/** Runs a point and records one more cycle, sorted by crank angle from 0 to 720. */
export function tracePoint(
  spec: EngineSpecification,
  speed: number,
  stations: readonly Station[] = STATIONS,
): Trace {
  const chamberPressure: number[] = [];
  const trace: Omit<Trace, 'point'> = emptyTrace(stations);
  const point = runPoint(spec, speed, {
    stride: SPACING,
    onStop: (model, crankAngle) => {
      const line = model.lines[0]!;
      if (trace.crankAngle.length === 0) begin(trace, line);
      record(trace, model, stations, crankAngle);
      if (model.chamber) chamberPressure.push(model.chamber.pressure);
    },
  });
  const inChamber = spec.intake.chamber && { chamberPressure };
  return { point, ...sortedByAngle({ ...trace, ...inChamber }) };
}

function emptyTrace(stations: readonly Station[]): Omit<Trace, 'point'> {
  return {
    crankAngle: [],
    cylinderPressure: [],
    cylinderTemperature: [],
    intakeLift: [],
    exhaustLift: [],
    intakeEvents: { open: 0, close: 0 },
    exhaustEvents: { open: 0, close: 0 },
    stations: stations.map(({ name }) => ({
      name,
      pressure: [],
      velocity: [],
      massFlow: [],
      temperature: [],
    })),
    wave: { distance: [], pressure: [], velocity: [] },
  };
}

function begin(trace: Omit<Trace, 'point'>, line: CylinderLine): void {
  const events = ({ open, close }: { open: number; close: number }) => ({
    open: wrapAngle(open),
    close: wrapAngle(close),
  });
  trace.intakeEvents = events(line.intakeLift);
  trace.exhaustEvents = events(line.exhaustLift);
  const { trumpet, runner, flareDepth } = line;
  trace.wave.distance = [
    ...centres(trumpet, flareDepth),
    ...centres(runner, trumpet.mesh.length + flareDepth),
  ];
}

function record(
  trace: Omit<Trace, 'point'>,
  { lines, inlet }: EngineModel,
  stations: readonly Station[],
  angle: number,
): void {
  const line = lines[0]!;
  trace.crankAngle.push(angle);
  trace.cylinderPressure.push(line.cylinder.pressure);
  trace.cylinderTemperature.push(line.cylinder.temperature);
  trace.intakeLift.push(line.intakeLift.lift(angle));
  trace.exhaustLift.push(line.exhaustLift.lift(angle));
  stations.forEach((station, k) => {
    const duct = station.duct === 'inlet' ? inlet! : line[station.duct];
    const i = Math.min(Math.floor(station.share * duct.mesh.cells), duct.mesh.cells - 1);
    const into = trace.stations[k]!;
    into.pressure.push(duct.prim.p.at(i));
    into.velocity.push(duct.prim.u.at(i));
    into.massFlow.push(duct.cells.momentum.at(i) * circleArea(duct.mesh.diameter[i]!));
    into.temperature.push(duct.prim.T.at(i));
  });
  const { trumpet, runner } = line;
  trace.wave.pressure.push([...trumpet.prim.p, ...runner.prim.p]);
  trace.wave.velocity.push([...trumpet.prim.u, ...runner.prim.u]);
}

function centres(duct: Duct, offset: number): number[] {
  return Array.from({ length: duct.mesh.cells }, (_, i) => offset + (i + 0.5) * duct.mesh.dx);
}

function sortedByAngle(trace: Omit<Trace, 'point'>): Omit<Trace, 'point'> {
  const sorted = byAngle(trace.crankAngle);
  return {
    ...trace,
    crankAngle: sorted(trace.crankAngle),
    cylinderPressure: sorted(trace.cylinderPressure),
    cylinderTemperature: sorted(trace.cylinderTemperature),
    intakeLift: sorted(trace.intakeLift),
    exhaustLift: sorted(trace.exhaustLift),
    ...(trace.chamberPressure && { chamberPressure: sorted(trace.chamberPressure) }),
    stations: trace.stations.map((station) => ({
      name: station.name,
      pressure: sorted(station.pressure),
      velocity: sorted(station.velocity),
      massFlow: sorted(station.massFlow),
      temperature: sorted(station.temperature),
    })),
    wave: {
      distance: trace.wave.distance,
      pressure: sorted(trace.wave.pressure),
      velocity: sorted(trace.wave.velocity),
    },
  };
}
