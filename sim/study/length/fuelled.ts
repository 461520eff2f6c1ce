/**
 * What the fuel changes: the same two lengths with the injectors of the scenario, whose fuel cools the air
 * on its way and takes its room. The study itself computes without, since a point with drops and films
 * takes many times as long.
 */

import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff } from '../../decision/tradeOff.ts';
import { allSettled } from '../../report/audit.ts';
import type { EngineSpecification, InjectorsSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep, withLength } from '../../sweep/sweep.ts';

/** One length against the baseline, both as the file has its injectors and without, at the same speeds. */
export interface Fuelled {
  wet: TradeOff;
  dry: TradeOff;
  /** Whether every point with fuel is an answer. */
  sound: boolean;
}

/** `speeds` [rpm], rising; the bands lie within. */
export async function fuelled(
  engine: EngineSpecification,
  injectors: InjectorsSpecification,
  length: number,
  speeds: readonly number[],
  target: Target,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Fuelled> {
  const own = { ...engine, injectors };
  const engines = [withLength(own, length), own, withLength(engine, length), engine];
  const table = await sweep(engines, speeds, runner, observer);
  const [wet, wetOwn, dry, dryOwn] = table.map((outcomes) => scores(outcomes, target.score));
  return {
    wet: tradeOff(speeds, wet!, wetOwn!, target),
    dry: tradeOff(speeds, dry!, dryOwn!, target),
    sound: allSettled(table.slice(0, 2).flat()),
  };
}
