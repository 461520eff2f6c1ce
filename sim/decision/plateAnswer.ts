/**
 * How the air of a cylinder and the mean vacuum in its port answer to an error of its plate or of the bleed
 * past it, as tables over effective area (portFilling.ts), straight between places in logarithms.
 */
import { exp, log } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import { throttleArea } from '../loss/throttlePlate.ts';
import type { EngineSpecification } from '../specification.ts';
import { portFilling } from './portFilling.ts';

/** A load: engine speed [rpm] and plate angle [deg]. */
export interface PlateLoad {
  speed: number;
  angle: number;
}

/** Growth in logarithms with the plate off by an angle [deg] and the bleed by an effective area [m^2]. */
export interface PlateAnswer {
  air(plate: number, bleed?: number): number;
  vacuum(plate: number, bleed?: number): number;
}

/** How far errors are followed: of the plate [deg], of the bleed [m^2]. */
export interface Reach {
  plate: number;
  bleed: number;
}

const PLACES = 40;
/** Least opening above the closed plate that an error is followed to [deg]. */
const LEAST_OPENING = 0.03;
const WIDE_OPEN = 90;
const HALVINGS = 40;

export function plateAnswer(
  engine: EngineSpecification,
  { speed, angle }: PlateLoad,
  reach: Reach,
): PlateAnswer {
  const { throttle } = engine.intake;
  const least = Math.min(throttle.closedAngle + LEAST_OPENING, angle);
  const area = (at: number) => throttleArea(throttle, Math.min(Math.max(at, least), WIDE_OPEN));
  const low = log(Math.max(area(angle - reach.plate) - reach.bleed, area(least)));
  const high = log(Math.min(area(angle + reach.plate) + reach.bleed, area(WIDE_OPEN)));
  const xs = Array.from({ length: PLACES }, (_, i) => low + ((high - low) * i) / (PLACES - 1));
  const fillings = xs.map((x) => portFilling(engine, speed, angleOf(area, exp(x), least)));
  const outside = engine.intake.feed.pressure;
  const air = fillings.map(({ flow }) => log(flow));
  const vacuum = fillings.map(({ mean }) => log(outside - mean));
  const set = log(area(angle));
  const growth = (ys: readonly number[]) => {
    const now = interpolateLinear(xs, ys, set);
    return (plate: number, bleed = 0) =>
      interpolateLinear(xs, ys, log(Math.max(area(angle + plate) + bleed, exp(low)))) - now;
  };
  return { air: growth(air), vacuum: growth(vacuum) };
}

/** The angle [deg] that leaves an area. */
function angleOf(area: (angle: number) => number, wanted: number, least: number): number {
  let [low, high] = [least, WIDE_OPEN];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (area(middle) < wanted) low = middle;
    else high = middle;
  }
  return low;
}

/** Loads whose speed and angle differ, and which of them each state is. */
export function distinctLoads<Load extends PlateLoad>(states: readonly Load[]) {
  const key = ({ speed, angle }: PlateLoad) => `${speed} ${angle}`;
  const keys = [...new Set(states.map(key))];
  const loadOf = states.map((state) => keys.indexOf(key(state)));
  return { loads: keys.map((_, k) => states[loadOf.indexOf(k)]!), loadOf };
}
