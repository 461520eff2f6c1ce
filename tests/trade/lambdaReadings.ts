/** Mixture readings made up from errors that are known, with noise of a stated seed. */
import { portFilling } from '../../sim/decision/portFilling.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { normalNumbers } from '../normal.ts';

export interface KnownErrors {
  /** Each plate [deg], injector [-] and probe [-]. */
  plates: readonly number[];
  injectors: readonly number[];
  probes: readonly number[];
}

/** A load, its common lambda, and the probe in each cylinder's pipe, from 1. */
export interface KnownLoad {
  speed: number;
  angle: number;
  visit?: number;
  lambda: number;
  probes: readonly number[];
  /** By how much air answers more to a plate than computed [-]. */
  answer?: number;
}

export interface MadeReading extends KnownLoad {
  cylinder: number;
  probe: number;
  /** As the cylinder has it, and as the probe shows it. */
  truth: number;
  read: number;
}

/** @param repeatability standard deviation of a reading [-] */
export function madeReadings(
  engine: EngineSpecification,
  errors: KnownErrors,
  loads: readonly KnownLoad[],
  repeatability: number,
  seed: number,
): MadeReading[] {
  const normal = normalNumbers(seed);
  return loads.flatMap((load) =>
    errors.plates.map((plate, i) => {
      const air = (by: number) => portFilling(engine, load.speed, load.angle + by).flow;
      const probe = load.probes[i]!;
      const grown = (air(plate) / air(0)) ** (1 + (load.answer ?? 0));
      const truth = (load.lambda * grown) / (1 + errors.injectors[i]!);
      const read = truth * (1 + errors.probes[probe - 1]! + repeatability * normal());
      return { ...load, cylinder: i + 1, probe, truth, read };
    }),
  );
}

/** As the CSV that `trims` reads. */
export function readingsCsv(readings: readonly MadeReading[], remarks: readonly string[]): string {
  const rows = readings.map(({ speed, angle, visit = 1, cylinder, probe, read }) =>
    [speed, angle, visit, cylinder, probe, read.toFixed(3)].join(','),
  );
  const lines = [...remarks.map((remark) => `# ${remark}`), HEAD, ...rows];
  return `${lines.join('\n')}\n`;
}

const HEAD = 'speed_rpm,plate_deg,visit,cylinder,probe,lambda';
