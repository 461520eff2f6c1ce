/**
 * A duct that opens into still gas. Outflow leaves at the gas's own pressure; inflow starts from
 * rest there and loses K dynamic heads at the entry: effective area A / sqrt(1 + K).
 *
 * The end itself has no acoustic length: the end correction is added to the duct's profile where
 * the duct is made (engine/intakeDucts.ts). Source: as exchange.ts; the loss as entryLoss.ts.
 */
import type { End } from './ductEnd.ts';
import { dischargeFromLoss } from './entryLoss.ts';
import { Exchange } from './exchange.ts';
import type { Node } from './node.ts';
import type { Reservoir } from './reservoir.ts';

/** Losses in dynamic heads at the end's own area [-]. */
export function openEnd(end: End, outside: Reservoir, entryLoss = 0, exitLoss = 0): Node {
  const areaIn = end.area * dischargeFromLoss(entryLoss);
  const areaOut = end.area * dischargeFromLoss(exitLoss);
  const exchange = new Exchange(end, outside);
  return {
    ends: [end],
    exchange: (gas, { dt }) => {
      exchange.solve(areaIn, areaOut, gas);
      outside.receive(end.flow, dt, end.area);
    },
  };
}
