/** Engines of published work, computed: what the tests assert and the note shows. */
import { readFileSync } from 'node:fs';
import { bestBetween } from '../../sim/decision/bestBetween.ts';
import type { PointResult } from '../../sim/engine/point.ts';
import type { Change } from '../../sim/scenario/change.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { isFailure, runJob } from '../../sim/sweep/runner.ts';
import { withLength } from '../../sim/sweep/sweep.ts';

const INCH = 0.0254;

/** Engines by file name. */
export const FILES = ['plain-pipe-500', 'five-by-seven'] as const;

export type FileName = (typeof FILES)[number];

export function scenarioText(file: FileName): string {
  return readFileSync(new URL(`${file}.yaml`, import.meta.url), 'utf8');
}

export function engineOf(file: FileName, changes: readonly Change[] = []): EngineSpecification {
  return readScenario(scenarioText(file), file, changes).engine;
}

/** Length of the whole intake from mouth to valve [in] -> engine with that; 0 leaves no trumpet. */
export function withPipe(engine: EngineSpecification, inches: number): EngineSpecification {
  const { throttle, port } = engine.intake;
  const trumpet = inches * INCH - throttle.length - port.length;
  return withLength(engine, Math.max(trumpet, NO_TRUMPET));
}

/** Shortest piece of pipe that a trumpet is [m]. */
const NO_TRUMPET = 0.01;

export function points(engine: EngineSpecification, speeds: readonly number[]): PointResult[] {
  return speeds.map((speed) => {
    const outcome = runJob({ engine, speed });
    if (isFailure(outcome)) throw new Error(outcome.failure);
    return outcome;
  });
}

export const fill = (results: readonly PointResult[]) =>
  results.map((one) => one.volumetricEfficiency);

/** Pressure at valve closing with a pipe over that without: the ram that the pipe gives [-]. */
export function ram(
  engine: EngineSpecification,
  inches: number,
  speeds: readonly number[],
): number[] {
  const without = points(withPipe(engine, 0), speeds);
  return points(withPipe(engine, inches), speeds).map(
    (one, i) => one.pressureAtClosing / without[i]!.pressureAtClosing,
  );
}

/** Speed at which the pipe gives most [rpm]. */
export function tunedSpeed(
  engine: EngineSpecification,
  inches: number,
  speeds: readonly number[],
): number {
  return bestBetween(speeds, ram(engine, inches, speeds));
}

/**
 * Engelman's rule turned round: the constant K that a tuned speed implies [-],
 *
 *   K N = 162 C sqrt(A / (L V)) sqrt((R - 1) / (R + 1))
 *
 * C speed of sound [ft/s], A area [in^2], L length [in], V displacement [in^3], R compression ratio;
 * 162 = 12 x 60 sqrt(2) / (2 pi). Engelman gives K about 2.1, from 2.0 to 2.5 (from memory).
 */
export function engelmanConstant(
  { cylinder, intake }: EngineSpecification,
  inches: number,
  speed: number,
): number {
  const { bore, stroke, compressionRatio: ratio } = cylinder;
  const soundSpeed = 1125; // ft/s, of the worked example
  const area = (Math.PI / 4) * (intake.port.outerDiameter / INCH) ** 2;
  const volume = ((Math.PI / 4) * bore ** 2 * stroke) / INCH ** 3;
  const constant = (12 * 60 * Math.SQRT2) / (2 * Math.PI);
  return (
    (constant *
      soundSpeed *
      Math.sqrt(area / (inches * volume)) *
      Math.sqrt((ratio - 1) / (ratio + 1))) /
    speed
  );
}

/** The same bore from mouth to valve. */
export function boreChanges(text: string): Change[] {
  return ['intake.trumpet.diameter', 'intake.throttle.bore', 'intake.port.diameter'].map(
    (path) => ({
      path,
      text,
    }),
  );
}

/** Speeds around the tuned speed of each pipe of the 500 cc single [rpm], by its length [in]. */
export const AROUND: Record<number, readonly number[]> = {
  13: [3300, 3700, 4100, 4500, 4900, 5300],
  18: [3100, 3500, 3900, 4300, 4700],
  26: [2700, 3000, 3300, 3600, 3900],
};
