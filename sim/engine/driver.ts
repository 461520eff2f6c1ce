/** How speeds of one model get from their starts to their ends on one mesh. */
import { NonPhysicalStateError } from '../errors.ts';
import type { Spray } from '../spray/spray.ts';
import { placed } from './cycle.ts';
import type { EngineModel } from './plan.ts';
import { type SettledState, type SettleRule, Settling } from './settle.ts';

/** How speeds of one model get from their starts to their ends. */
export type Driver = (
  model: EngineModel,
  starts: readonly Start[],
  rule: SettleRule,
) => (End | NonPhysicalStateError)[];

export interface Start {
  speed: number;
  column: Float64Array;
  /** Whether the charge has its fuel. */
  fuelled: boolean;
  /** Sprays of a coarser mesh to go on from. */
  sprays?: readonly Spray[];
  /** Cycles after which it is given up, where that is sooner than for others. */
  most?: number;
}

export interface End {
  state: SettledState;
  column: Float64Array;
  sprays: readonly Spray[];
}

/** One speed after the other, in TypeScript. */
export const solo: Driver = (model, starts, rule) =>
  starts.map((start) => {
    const { network } = model;
    const settling = begun(model, start, rule);
    for (;;) {
      try {
        network.run(Number.MAX_SAFE_INTEGER);
      } catch (error) {
        if (!(error instanceof NonPhysicalStateError)) throw error;
        return placed(error, network.layout.column) as NonPhysicalStateError;
      }
      const state = settling.arrive();
      if (state)
        return { state, column: network.layout.column.slice(), sprays: settling.run.sprays };
    }
  });

/** The model at a start, on its first cycle. */
export function begun(model: EngineModel, start: Start, rule: SettleRule): Settling {
  model.network.load(start.column);
  const settling = new Settling(model, start.speed, { ...rule, most: start.most ?? rule.most });
  settling.begin(start.fuelled, start.sprays);
  return settling;
}
