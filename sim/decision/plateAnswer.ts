/**
 * How the air of a cylinder and the mean vacuum in its port answer to an error of its plate or of the bleed
 * past it, as tables over effective area (portFilling.ts), straight between places in logarithms.
 */
import { exp, log } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import { throttleArea } from '../loss/throttlePlate.ts';
import type { EngineSpecification } from '../specification.ts';
import { portFilling } from './portFilling.ts';

/** A load: engine speed [rpm], plate angle [deg], and whether bleeds were screwed shut for it. */
export interface PlateLoad {
  speed: number;
  angle: number;
  bleedShut?: boolean;
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

/**
 * Standard deviation of an answer [-]: what those of the demo four differ from the solver's by, root mean square
 * over idle and part load, rounded up (tests/trade/portFilling.test.ts).
 */
export const ANSWER_DOUBT = { air: 0.2, vacuum: 0.25 } as const;

const PLACES = 40;
/** Least opening above the closed plate that an error is followed to [deg]. */
const LEAST_OPENING = 0.03;
const WIDE_OPEN = 90;
const HALVINGS = 40;

export function plateAnswer(
  asked: EngineSpecification,
  { speed, angle, bleedShut = false }: PlateLoad,
  reach: Reach,
): PlateAnswer {
  const engine = bleedShut ? withoutBleed(asked) : asked;
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
  const at = (ys: readonly number[], opening: number) =>
    interpolateLinear(xs, ys, log(Math.max(opening, exp(low))));
  const set = area(angle);
  const growth =
    (ys: readonly number[], worth: number) =>
    (plate: number, bleed = 0) =>
      at(ys, area(angle + plate) + worth * bleed) - at(ys, set);
  const worth = bleedShut || reach.bleed === 0 ? 0 : bleedWorth();
  return { air: growth(air, worth), vacuum: growth(vacuum, worth) };

  /**
   * What area of a bleed is worth in area of the plate in slow flow [-]: less than 1 at idle, for the jet
   * past a plate contracts less there and that of a bleed stays as it is.
   */
  function bleedWorth(): number {
    const [by, step] = [reach.bleed / 10, 0.05 * set];
    const flow = (bleed: number) => log(portFilling(engine, speed, angle, bleed).flow);
    const perArea = (at(air, set + step) - at(air, set - step)) / (2 * step);
    return (flow(by) - flow(-by)) / (2 * by * perArea);
  }
}

function withoutBleed(engine: EngineSpecification): EngineSpecification {
  const { bleed: _, ...throttle } = engine.intake.throttle;
  return { ...engine, intake: { ...engine.intake, throttle } };
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

/** Loads that differ, whatever the visit, and which of them each state is. */
export function distinctLoads<Load extends PlateLoad>(states: readonly Load[]) {
  const key = ({ speed, angle, bleedShut }: PlateLoad) => `${speed} ${angle} ${bleedShut}`;
  const keys = [...new Set(states.map(key))];
  const loadOf = states.map((state) => keys.indexOf(key(state)));
  return { loads: keys.map((_, k) => states[loadOf.indexOf(k)]!), loadOf };
}
