/** One cycle against crank angle as a JSON document. */
import type { StationTrace, Trace } from '../engine/trace.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';

type Column = (number | null)[];

export interface StationColumns {
  name: string;
  pressure_kPa: Column;
  /** Positive the way the gas should go: in at the mouth, out at the exhaust. */
  velocity_m_per_s: Column;
  mass_flow_g_per_s: Column;
  temperature_K: Column;
}

export interface TraceDocument extends DocumentHead {
  length_mm: number | null;
  speed_rpm: number;
  volumetric_efficiency: number | null;
  settled: boolean;
  cycles: number;
  /** 0 at firing; 360 between exhaust and intake. */
  crank_angle_deg: Column;
  cylinder_pressure_kPa: Column;
  cylinder_temperature_K: Column;
  intake_lift_mm: Column;
  exhaust_lift_mm: Column;
  stations: StationColumns[];
  audit: { mass_error_max: number | null; energy_error_max: number | null };
}

export function traceDocument(trace: Trace, length: number, stamp: ScenarioStamp): TraceDocument {
  const { point } = trace;
  return {
    ...documentHead('trace', 1, stamp),
    length_mm: plain(length * 1e3),
    speed_rpm: point.speed,
    volumetric_efficiency: plain(point.volumetricEfficiency),
    settled: point.settled,
    cycles: point.cycles,
    crank_angle_deg: trace.crankAngle.map(plain),
    cylinder_pressure_kPa: scaled(trace.cylinderPressure, 1e-3),
    cylinder_temperature_K: trace.cylinderTemperature.map(plain),
    intake_lift_mm: scaled(trace.intakeLift, 1e3),
    exhaust_lift_mm: scaled(trace.exhaustLift, 1e3),
    stations: trace.stations.map(stationColumns),
    audit: {
      mass_error_max: plain(point.audit.massError),
      energy_error_max: plain(point.audit.energyError),
    },
  };
}

function stationColumns({ name, pressure, velocity, massFlow, temperature }: StationTrace) {
  return {
    name,
    pressure_kPa: scaled(pressure, 1e-3),
    velocity_m_per_s: velocity.map(plain),
    mass_flow_g_per_s: scaled(massFlow, 1e3),
    temperature_K: temperature.map(plain),
  };
}

function scaled(values: readonly number[], factor: number): Column {
  return values.map((value) => plain(value * factor));
}
