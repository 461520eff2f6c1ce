/** From a scenario tree that the schema has passed to the engine as data, defaults listed. */
import type { Fit } from '../decision/shelf.ts';
import type { Target } from '../decision/target.ts';
import type { EngineSpecification } from '../specification.ts';
import type { DefaultUsed, Reading, ScenarioWarning, Spread } from './reading.ts';
import { resolveAmbient } from './sections/ambient.ts';
import { resolveEngine } from './sections/engine.ts';
import { resolveExhaust } from './sections/exhaust.ts';
import { facingWall, resolveFit } from './sections/fit.ts';
import { resolveFuel } from './sections/fuel.ts';
import { gridValues } from './sections/grid.ts';
import { resolveIntake } from './sections/intake.ts';
import { resolveNumerics } from './sections/numerics.ts';
import { resolveSweep, type SweepRange } from './sections/study.ts';
import { resolveTarget } from './sections/target.ts';

/** A scenario, resolved: what is computed, and how it came about. */
export interface Scenario {
  title: string;
  notes: string;
  engine: EngineSpecification;
  /** Engine speeds [rpm], rising. */
  speeds: number[];
  sweep: SweepRange;
  target: Target;
  /** What can be fitted and bought; absent where the file says nothing about it. */
  fit?: Fit;
  /** Every default that was taken, in the order of the sections. */
  defaultsUsed: DefaultUsed[];
  /** What is valid but seldom meant. */
  warnings: ScenarioWarning[];
  /** What the builder is unsure about. */
  spreads: Spread[];
}

export function resolveScenario(reading: Reading): Scenario {
  const title = reading.text('title')!;
  const engine = resolveWholeEngine(reading, title);
  return {
    title,
    notes: reading.text('notes') ?? '',
    engine,
    speeds: gridValues(reading, 'speeds'),
    sweep: resolveSweep(reading),
    target: resolveTarget(reading),
    ...withFit(reading),
    defaultsUsed: reading.defaultsUsed,
    warnings: reading.warnings,
    spreads: reading.spreads(),
  };
}

function resolveWholeEngine(reading: Reading, title: string): EngineSpecification {
  const ambient = resolveAmbient(reading);
  return {
    title,
    ambient,
    cylinder: resolveEngine(reading),
    intake: { ...resolveIntake(reading, ambient), ...withWall(reading) },
    exhaust: resolveExhaust(reading),
    combustion: resolveFuel(reading),
    numerics: resolveNumerics(reading),
  };
}

function withFit(reading: Reading): { fit?: Fit } {
  const fit = resolveFit(reading);
  return fit ? { fit } : {};
}

function withWall(reading: Reading): { facingWall?: number } {
  const wall = facingWall(reading);
  return wall === undefined ? {} : { facingWall: wall };
}
