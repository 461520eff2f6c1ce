/**
 * What idle air can come through: plates ajar, a bleed in each body, a valve into a bar of its own, into the
 * pressure bar or into one cylinder, driven plates; and the spark as a quick reserve.
 */
import * as idle from '../../decision/idleAir.ts';
import { power } from '../../elementary/powers.ts';
import type { IdleSpecification, PressureBarSpecification } from '../../fittings.ts';
import { mixtureTorque, retardLoss } from '../../mixture/mixtureTorque.ts';
import {
  type Context,
  type IdleNeed,
  type IdleQuestion,
  needOf,
  ownRoom,
  platesFor,
  sharedRoom,
  stillAir,
  valveOf,
  workOf,
} from './need.ts';
import { type IdleWay, waysOf } from './ways.ts';

/** Heat capacity of exhaust gas [J/(kg K)]; handbook value near 900 K. The fuel in it is left out: 7 %. */
const EXHAUST_HEAT = 1150;

/** What spark later than the best leaves in hand. */
export interface SparkReserve {
  /** Share of the torque [-], torque [N m], and heat that goes out instead [K]. */
  share: number;
  torque: number;
  hotter: number;
}

/** One frequency of the valve. */
export interface FrequencyRow {
  /** Times a second, and in a cycle. */
  frequency: number;
  times: number;
  /** Share of the period that is lost before it opens, and that it is driven, warm [-]. */
  lost: number;
  duty: number;
  /** In the bar of its own, and in the sensor's [Pa]. */
  own: number;
  shared?: number;
  /** What it puts on the sensor of the pressure bar, computed with the engine [Pa]. */
  sensor?: number;
}

export interface IdleStudy {
  spec: IdleSpecification;
  cylinders: number;
  need: IdleNeed;
  /** Mean pressure behind the plates of the warm engine [Pa]. */
  mean: number;
  ways: IdleWay[];
  /** What is recommended; absent where nothing reaches. */
  best?: IdleWay;
  spark: SparkReserve;
  frequencies: FrequencyRow[];
  /** Difference of pressure that the sensor tells [Pa]. */
  resolution?: number;
}

/** What every way rests on. */
export function contextOf(question: IdleQuestion): Context {
  const { engine, spec } = question;
  const need = needOf(question);
  const { angle: ajar, mean } = platesFor(engine, spec, need.warm);
  const beside = platesFor(engine, spec, spec.plateShare * need.warm).angle;
  return { ...question, need, mean, ajar, beside };
}

export function idleStudyOf(question: IdleQuestion): IdleStudy {
  const { spec, bar } = question;
  const context = contextOf(question);
  const { need } = context;
  const ways = waysOf(context, context.ajar);
  const best = bestOf(ways, bar);
  return {
    spec,
    cylinders: question.engine.cylinder.count,
    need,
    mean: context.mean,
    ways,
    ...(best && { best }),
    spark: sparkReserve(question, need),
    frequencies: frequencyRows(context),
    ...(bar && { resolution: bar.resolution }),
  };
}

/** Of what reaches and leaves the signal quiet, the evenest; all through one cylinder never. */
export function bestOf(
  ways: readonly IdleWay[],
  bar?: PressureBarSpecification,
): IdleWay | undefined {
  const quiet = ({ ripple, offset }: IdleWay) => ripple + offset <= (bar?.resolution ?? 0);
  const good = ways.filter((way) => {
    const within = (way.duty?.[2] ?? 0) <= 1;
    return way.enough && within && way.name !== 'one' && quiet(way);
  });
  return good.sort((a, b) => a.spread - b.spread)[0];
}

/** Share by the published engine at its own idle; torque and heat by this one's air. */
function sparkReserve(question: IdleQuestion, { warm }: IdleNeed): SparkReserve {
  const { spec } = question;
  const { charge, speed } = PUBLISHED_IDLE;
  const share = retardLoss(charge, spec.retard) / mixtureTorque(charge, speed, 1);
  const work = workOf(question);
  return {
    share,
    torque: (share * warm * work * 30) / (spec.speed * Math.PI),
    hotter: (share * work) / EXHAUST_HEAT,
  };
}

/** Idle of the engine whose torque is published, some load on: air of a cylinder a cycle [kg], speed [rpm]. */
const PUBLISHED_IDLE = { charge: 0.00015, speed: 800 };

/** Frequencies that such valves are driven at [Hz]; from memory. */
const USUAL = { least: 10, most: 110 };
/** How many of them are looked at, even in their logarithm. */
const LOOKED_AT = 4;

/** Those that repeat with the cycle. */
function frequencyRows(context: Context): FrequencyRow[] {
  const { engine, spec, bar } = context;
  const { valve, given } = valveOf(context);
  const air = stillAir(engine);
  return pulsesOf(spec.speed).map((times) => {
    const frequency = (times * spec.speed) / 120;
    const driven = { ...valve, frequency };
    const ripple = (room: number) => idle.valveRipple(driven, given[0], room, air);
    return {
      frequency,
      times,
      lost: spec.deadTime * frequency,
      duty: idle.dutyFor(driven, given[0]),
      own: ripple(ownRoom(context)),
      ...(bar && { shared: ripple(sharedRoom(bar)) }),
    };
  });
}

/** Pulses in a cycle at a speed [rpm], few to many. */
function pulsesOf(speed: number): number[] {
  const least = Math.ceil((USUAL.least * 120) / speed);
  const most = Math.max(Math.floor((USUAL.most * 120) / speed), least);
  const ratio = most / least;
  const even = Array.from({ length: LOOKED_AT }, (_, i) =>
    Math.round(least * power(ratio, i / (LOOKED_AT - 1))),
  );
  return [...new Set(even)];
}
