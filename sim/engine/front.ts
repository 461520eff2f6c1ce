/**
 * The front of a wave along the intake, from a traced cycle: it leaves the valve, turns at the open mouth and
 * comes back. It is the characteristic of plane flow, dx/dt = u - c towards the mouth and u + c back, with
 * x and u positive towards the valve (Riemann 1860; Landau & Lifshitz, Fluid Mechanics, 2nd ed., section 104).
 *
 * c = c0 (p / p0)^((k - 1) / 2k)   [m/s], as if the air had kept the entropy of the still air
 *
 * Hot gas blown back from the cylinder carries it faster than that, by the root of its temperature; so take
 * the way as a guide to the picture and not as a figure of the solver.
 */
import { power } from '../elementary/powers.ts';
import { moistAirGasConstant } from '../gas/atmosphere.ts';
import type { Trace } from './trace.ts';

/** Ratio of specific heats of air near 300 K; from memory. */
const KAPPA = 1.4;

/** Steps are so long [deg]; over one the front moves less than a cell. */
const STEP = 0.25;

export interface Front {
  /** Crank angles, rising [deg], and distances from the rim plane [m]. */
  crankAngle: number[];
  distance: number[];
  /** When it is back at the valve [deg]; undefined where the cycle ends before. */
  back: number | undefined;
}

/** Still air before the mouths: pressure [Pa] and temperature [K]. */
export interface StillAir {
  pressure: number;
  temperature: number;
}

/** The front that leaves the valve at a crank angle [deg]. */
export function frontFrom(
  trace: Pick<Trace, 'crankAngle' | 'wave'> & { point: { speed: number } },
  still: StillAir,
  leaves: number,
): Front {
  const { crankAngle, wave } = trace;
  const c0 = Math.sqrt(KAPPA * moistAirGasConstant(0) * still.temperature);
  const valve = valveDistance(wave.distance);
  const seconds = STEP / (6 * trace.point.speed);
  const front: Front = { crankAngle: [leaves], distance: [valve], back: undefined };
  const end = crankAngle[crankAngle.length - 1]!;
  let [x, row, inwards] = [valve, 0, false];
  for (let angle = leaves; angle < end; angle += STEP) {
    while (row < crankAngle.length - 1 && crankAngle[row + 1]! <= angle) row++;
    const cell = nearest(wave.distance, x);
    const c = c0 * power(wave.pressure[row]![cell]! / still.pressure, (KAPPA - 1) / (2 * KAPPA));
    const u = wave.velocity[row]![cell]!;
    x += (inwards ? u + c : u - c) * seconds;
    if (x <= 0) [x, inwards] = [-x, true];
    const there = inwards && x >= valve;
    front.crankAngle.push(angle + STEP);
    front.distance.push(Math.min(x, valve));
    if (there) return { ...front, back: angle + STEP };
  }
  return front;
}

/** From the rim plane to the valve: half a cell beyond the last centre [m]. */
function valveDistance(centres: readonly number[]): number {
  const [before, last] = centres.slice(-2) as [number, number];
  return last + (last - before) / 2;
}

function nearest(centres: readonly number[], x: number): number {
  const after = centres.findIndex((at) => at >= x);
  if (after < 0) return centres.length - 1;
  if (after === 0) return 0;
  return x - centres[after - 1]! < centres[after]! - x ? after - 1 : after;
}
