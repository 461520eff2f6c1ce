/**
 * What a pressurised box changes: the same two lengths on the same engine, breathing ambient air. A
 * blower that holds its box at one pressure pushes gas in whatever the waves do, so the waves should
 * count for less; whether they do, and by how much, is computed here for the engine at hand.
 */

import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff } from '../../decision/tradeOff.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep, withLength } from '../../sweep/sweep.ts';

/** Feed pressure over ambient from which a box counts as pressurised [-]; common practice, no source. */
const BOOSTED = 1.02;

/** Whether the mouths breathe from a pressurised box. */
export function isBoosted({ intake, ambient }: EngineSpecification): boolean {
  return intake.feed.pressure > BOOSTED * ambient.pressure;
}

/** The engine with its mouths in ambient air. */
export function withFreeFeed(engine: EngineSpecification): EngineSpecification {
  const { pressure, temperature } = engine.ambient;
  return { ...engine, intake: { ...engine.intake, feed: { pressure, temperature } } };
}

/** The length against the baseline, both breathing ambient air. */
export async function freeFeed(
  engine: EngineSpecification,
  length: number,
  speeds: readonly number[],
  target: Target,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<TradeOff> {
  const free = withFreeFeed(engine);
  const table = await sweep([withLength(free, length), free], speeds, runner, observer);
  const [ours, own] = table.map((outcomes) => scores(outcomes, target.score));
  return tradeOff(speeds, ours!, own!, target);
}
