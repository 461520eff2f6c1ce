/** What the computed engine says of a way, in place of closed formulas; at its worst of all states. */

import { NEAR } from './asking.ts';
import type { StateWay } from './moves.ts';
import { type Context, STATES } from './need.ts';
import { dutyOf } from './settings.ts';
import type { IdleWay } from './ways.ts';

/** As the formulas have it where not every state was computed. */
export function computedWay(
  way: IdleWay,
  joined: readonly StateWay[],
  { engine, spec, need }: Context,
): IdleWay {
  const own = joined.filter(({ name }) => name === way.name);
  const [warm] = own;
  if (!warm || own.length < STATES.length) return way;
  const worst = own.reduce((far, one) => (Math.abs(one.spread) > Math.abs(far.spread) ? one : far));
  const { setting, left } = warm;
  const { closedAngle } = engine.intake.throttle;
  const most = own.at(-1)!;
  const duty = own.map((one) => dutyOf(spec, one.setting.valve?.open ?? 0));
  return {
    ...way,
    ...(way.opening !== undefined && { opening: setting.angle - closedAngle }),
    ...(setting.bore !== undefined && { bore: setting.bore }),
    ...(way.duty && { duty: [duty[0]!, duty[2]!, duty[3]!] as const }),
    spread: worst.spread,
    lambda: worst.lambda,
    ...(left !== undefined && { reach: warm.air / need.warm + left }),
    enough: most.air >= (1 - NEAR) * most.wanted,
    ...addedTo(own, joined),
  };
}

/** What a way puts on the signal over driven plates that give the same air, at its worst [Pa]. */
function addedTo(own: readonly StateWay[], joined: readonly StateWay[]) {
  const added = own.flatMap(({ name, state, signal }) => {
    const quiet = joined.find((one) => one.name === 'driven' && one.state === state)?.signal;
    if (!signal || !quiet || name === 'ajar' || name === 'bleeds') return [];
    return [
      {
        ripple: signal.ripple - quiet.ripple,
        offset: Math.abs(signal.offset) - Math.abs(quiet.offset),
      },
    ];
  });
  return {
    ripple: Math.max(0, ...added.map(({ ripple }) => ripple)),
    offset: Math.max(0, ...added.map(({ offset }) => offset)),
  };
}
