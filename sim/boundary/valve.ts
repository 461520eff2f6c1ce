/**
 * A valve, orifice or nozzle between a duct and a reservoir; its effective area [m^2] follows the
 * crank angle [deg]. The far side is a plain reservoir: a cylinder, a box, a flow bench.
 * Source: as exchange.ts.
 */
import type { End } from './ductEnd.ts';
import { Exchange } from './exchange.ts';
import type { Node } from './node.ts';
import type { Reservoir } from './reservoir.ts';

export function valve(
  end: End,
  reservoir: Reservoir,
  effectiveArea: (crankAngle: number) => number,
): Node {
  const exchange = new Exchange(end, reservoir);
  return {
    ends: [end],
    exchange: (gas, { crankAngle, dt }) => {
      const area = effectiveArea(crankAngle);
      exchange.solve(area, area, gas);
      reservoir.receive(end.flow, dt, area > 0 ? end.area : 0);
    },
  };
}
