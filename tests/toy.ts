/** Runners that know the answer without any gas, and the demo scenarios as data. */
import { readFileSync } from 'node:fs';
import { rippleSpacing } from '../sim/decision/ripple.ts';
import type { PointResult } from '../sim/engine/point.ts';
import { readScenario } from '../sim/scenario/read.ts';
import type { Scenario } from '../sim/scenario/resolve.ts';
import type { EngineSpecification } from '../sim/specification.ts';
import type { PointRunner } from '../sim/sweep/runner.ts';

export function demoText(name: string): string {
  return readFileSync(new URL(`../scenarios/${name}.yaml`, import.meta.url), 'utf8');
}

export function readDemo(name: string): Scenario {
  return readScenario(demoText(name), `${name}.yaml`);
}

/** What a toy knows of a job. */
export interface ToyInput {
  /** Trumpet length [m]. */
  length: number;
  /** Speed [rpm]. */
  speed: number;
  engine: EngineSpecification;
}

/** A point with the given volumetric efficiency and a torque of a hundred times that. */
export function toyPoint(speed: number, volumetricEfficiency: number): PointResult {
  return {
    speed,
    volumetricEfficiency,
    pressureAtClosing: 1e5,
    chargeTemperature: 350,
    residualFraction: 0.04,
    backflow: 0.02,
    mouthOutflow: 0.1,
    portPressure: 95e3,
    indicatedTorque: 100 * volumetricEfficiency,
    settled: true,
    cycles: 5,
    meshError: 0,
    audit: { massError: 0, energyError: 0 } as PointResult['audit'],
  };
}

/** A runner whose volumetric efficiency is a formula. */
export function toyRunner(formula: (input: ToyInput) => number): PointRunner {
  return {
    run: async ({ engine, speed }) =>
      toyPoint(speed, formula({ length: engine.intake.trumpet.length, speed, engine })),
  };
}

/** Echoes of the length's own quarter wave, weaker the more there are; the sum peaks at 200 mm. */
export function rippling({ engine: of, length, speed }: ToyInput): number {
  const echoes = speed / rippleSpacing(of, speed);
  return 1 + 2 * length - 5 * length ** 2 + (0.25 / echoes) * Math.sin(2 * Math.PI * echoes);
}
