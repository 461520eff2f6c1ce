/**
 * What the fuel changes: the length against the baseline with the injectors of the scenario, whose fuel
 * cools the air on its way and takes its room. The study itself computes without, since a point with drops
 * and films takes many times as long.
 */

import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff, type WeighedLength } from '../../decision/tradeOff.ts';
import type { InjectorsSpecification } from '../../injectors.ts';
import { allSettled } from '../../report/audit.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep, withLength } from '../../sweep/sweep.ts';

/** One length against the baseline at the same speeds: with the injectors of the file, and without. */
export interface Fuelled {
  wet: TradeOff;
  dry: TradeOff;
  /** Whether every point with fuel is an answer. */
  sound: boolean;
}

/** `dry`: the length [m] against the baseline without fuel at `speeds` [rpm], rising. */
export async function fuelled(
  engine: EngineSpecification,
  injectors: InjectorsSpecification,
  { length, ...dry }: WeighedLength,
  speeds: readonly number[],
  target: Target,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Fuelled> {
  const own = { ...engine, injectors };
  const table = await sweep([withLength(own, length), own], speeds, runner, observer);
  const [wet, wetOwn] = table.map((outcomes) => scores(outcomes, target.score));
  return { wet: tradeOff(speeds, wet!, wetOwn!, target), dry, sound: allSettled(table.flat()) };
}
