/**
 * How hot the exhaust of one cylinder runs beside the others': mean temperature of the gas that leaves its valve,
 * weighted by flow, over a cycle in rest. Burn goes by residual gas and not by mixture.
 */
import type { EngineSpecification } from '../../specification.ts';
import type { Computer } from '../../sweep/tasks.ts';

const AT_VALVE = [{ name: 'exhaust', duct: 'primary', share: 0 }] as const;

/** Steps of lambda in one: finer than any probe, so that what is all but the same is computed once. */
const STEPS = 1000;

/** [K] of an engine whose cylinders all run at `lambda`; undefined where the point is no answer. */
export async function exhaustTemperature(
  computer: Computer,
  engine: EngineSpecification,
  speed: number,
  lambda: number,
): Promise<number | undefined> {
  const mixture = Math.round(lambda * STEPS) / STEPS;
  const fuelled = { ...engine, combustion: { ...engine.combustion, lambda: mixture } };
  const trace = await computer.task('trace', { engine: fuelled, speed, stations: AT_VALVE });
  if ('failure' in trace || !trace.point.settled) return undefined;
  const { massFlow, temperature } = trace.stations[0]!;
  const leaving = massFlow.map((flow) => Math.max(flow, 0));
  const mass = leaving.reduce((sum, flow) => sum + flow, 0);
  return temperature.reduce((sum, kelvin, i) => sum + leaving[i]! * kelvin, 0) / mass;
}
