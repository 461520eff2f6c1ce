/** From a scenario tree that the schema has passed to the engine as data, defaults listed. */
import type { EngineSpecification } from '../specification.ts';
import type { DefaultUsed, Reading, ScenarioWarning, Spread } from './reading.ts';
import { resolveAmbient } from './sections/ambient.ts';
import { resolveEngine } from './sections/engine.ts';
import { resolveExhaust } from './sections/exhaust.ts';
import { resolveFuel } from './sections/fuel.ts';
import { gridValues } from './sections/grid.ts';
import { resolveIntake } from './sections/intake.ts';
import { resolveNumerics } from './sections/numerics.ts';
import { resolveTarget, type Target } from './sections/study.ts';

/** A scenario, resolved: what is computed, and how it came about. */
export interface Scenario {
  title: string;
  notes: string;
  engine: EngineSpecification;
  /** Engine speeds [rpm], rising. */
  speeds: number[];
  sweep: {
    /** Trumpet lengths [m], rim plane to body face, rising. */
    lengths: number[];
  };
  target: Target;
  /** Every default that was taken, in the order of the sections. */
  defaultsUsed: DefaultUsed[];
  /** What is valid but seldom meant. */
  warnings: ScenarioWarning[];
  /** What the builder is unsure about. */
  spreads: Spread[];
}

export function resolveScenario(reading: Reading): Scenario {
  const title = reading.text('title')!;
  return {
    title,
    notes: reading.text('notes') ?? '',
    engine: resolveWholeEngine(reading, title),
    speeds: gridValues(reading, 'speeds'),
    sweep: { lengths: gridValues(reading, 'sweep.lengths') },
    target: resolveTarget(reading),
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
    intake: resolveIntake(reading, ambient),
    exhaust: resolveExhaust(reading),
    combustion: resolveFuel(reading),
    numerics: resolveNumerics(reading),
  };
}
