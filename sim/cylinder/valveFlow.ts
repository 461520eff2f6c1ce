/**
 * Effective flow area of the valves of one cylinder against lift [m^2].
 *
 * From coefficients: Cd times the reference area they are stated for, upstream stagnation to
 * downstream static pressure. From a flow bench: the area through which the ideal nozzle flow at the
 * bench's depression equals the measured flow, less what the port itself takes:
 *
 *   1/A_valve^2 = 1/A_bench^2 - K_port / A_port^2
 *
 * with K_port the port's loss in dynamic heads, since the port is computed as a duct of its own.
 * Source: isentropic nozzle as loss/nozzle.ts; losses in series add as resistances, common
 * practice, no source. Benches that divide by the incompressible velocity sqrt(2 dp / rho) state 4 %
 * more area at 28 inches of water.
 */

import { circleArea } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import { nozzleFlux } from '../loss/nozzle.ts';
import type { ValveSpecification } from '../specification.ts';
import { DRY_AIR_GAS_CONSTANT } from '../units.ts';

/** Dry air on a flow bench. */
const BENCH_GAMMA = 1.4;

/** Losses of the port that the bench saw too. */
export interface PortLoss {
  /** Loss between bench and valve in dynamic heads of `area` [-]. */
  heads: number;
  /** Area that the heads are stated for [m^2]. */
  area: number;
}

/** Effective area [m^2] of all the valves together as a function of lift [m]. */
export function effectiveValveArea(
  valve: ValveSpecification,
  port: PortLoss = { heads: 0, area: 1 },
): (lift: number) => number {
  const { flow } = valve;
  if (flow.kind === 'bench') {
    const areas = flow.flow.map((q) => withoutPort(benchArea(flow, q), port));
    const lifts = [0, ...flow.lift];
    return (lift) => interpolateLinear(lifts, [0, ...areas], lift);
  }
  const seat = valve.count * circleArea(valve.diameter);
  // Against the seat's area the coefficient itself goes to zero with lift; against the curtain it holds.
  const fromZero = flow.reference === 'seat';
  const ratios = fromZero ? [0, ...flow.liftRatio] : flow.liftRatio;
  const coefficients = fromZero ? [0, ...flow.coefficient] : flow.coefficient;
  const curtainPerLift = valve.count * Math.PI * valve.diameter;
  return (lift) => {
    const cd = interpolateLinear(ratios, coefficients, lift / valve.diameter);
    return cd * (flow.reference === 'seat' ? seat : curtainPerLift * lift);
  };
}

/** Effective area [m^2] that passes volume flow q [m^3/s] of bench air at the bench's depression. */
export function benchArea(
  bench: { depression: number; temperature: number; pressure: number },
  q: number,
): number {
  const density = bench.pressure / (DRY_AIR_GAS_CONSTANT * bench.temperature);
  const below = bench.pressure - bench.depression;
  return (
    (q * density) /
    nozzleFlux(bench.pressure, bench.temperature, DRY_AIR_GAS_CONSTANT, BENCH_GAMMA, below)
  );
}

function withoutPort(area: number, port: PortLoss): number {
  const rest = 1 / square(area) - port.heads / square(port.area);
  // A bench flow that the port's own loss would not pass: the valve then takes nothing.
  return rest > 0 ? 1 / Math.sqrt(rest) : port.area;
}
