/**
 * Which plate and which bleed is off, from readings of each body at one or several loads:
 *
 *   ln R_ij = c_j + (1 + u_j) ln (r_j(a_i, b_i) / r_j(0, 0)) + g_k
 *
 *   R  flow at the mouth, or mean vacuum in the port   i  body   j  load   k  gauge   c  common to a load
 *   r  the same computed (portFilling.ts): the vacuum is the mean of a saw-tooth, not that of the mean flow
 *   a  error of the plate [deg]   b  of the bleed, effective area [m^2]   g  of the gauge
 *   u  by how much bodies answer otherwise than computed
 *
 * All have normal priors, u being considered, not fitted; the most probable values and their covariance by mostProbable.ts. A plate that is
 * off and a bleed that is off leave nearly the same area at every opening, so what tells them apart is a
 * reading with all bleeds screwed shut, where b is none.
 */
import { exp, log, square } from '../elementary/powers.ts';
import type { EngineSpecification } from '../specification.ts';
import { leftOf, range, type Share, shares, sharesAgainst, slopesOf } from './family.ts';
import { deviationOf, type MostProbable, mostProbable } from './mostProbable.ts';
import {
  ANSWER_DOUBT,
  distinctLoads,
  type PlateAnswer,
  type PlateLoad,
  plateAnswer,
} from './plateAnswer.ts';

export type BodyFigure = 'flow' | 'vacuum';

/** One reading; state, body and gauge count from 0. The unit does not matter, for only ratios count. */
export interface BodyReading {
  state: number;
  body: number;
  gauge: number;
  value: number;
}

/** Standard deviations known beforehand. */
export interface BodyDoubts {
  /** Plate against plate [deg]. */
  plate: number;
  /** Bleed against bleed, effective area [m^2]; 0 where there is none. */
  bleed: number;
  /** Gauge against gauge, reading against reading [-]. */
  gauge: number;
  repeatability: number;
}

export interface BodyQuestion {
  engine: EngineSpecification;
  figure: BodyFigure;
  states: readonly PlateLoad[];
  readings: readonly BodyReading[];
  doubts: BodyDoubts;
  /** The body whose plate stays, from 0; absent where all move. */
  master?: number;
  /** Smallest steps that screws are set by: of a plate [deg], of a bleed [m^2]. */
  steps: { plate: number; bleed: number };
}

/** A body at a load as it was read. */
export interface FoundBody extends BodyReading {
  /** Its air above the mean of all [-], and one standard deviation. */
  air: number;
  deviation: number;
}

/** A load once every screw has been turned as told. */
export interface Remainder {
  /** Spread of air between bodies before, and what doubt and the steps of the screws leave of it [-]. */
  before: number;
  after: number;
  /** Least difference of air that the gauge can show [-]. */
  seen: number;
}

export interface BodyErrors {
  plates: Share[];
  /** Plates against the one that stays, or against the mean where all move. */
  toMove: Share[];
  bleeds: Share[];
  gauges: Share[];
  /** Deviation left over the prior one, mean of a family [-]. */
  left: { plates: number; bleeds: number; gauges: number };
  readings: FoundBody[];
  /** In the order of the states. */
  remainders: Remainder[];
  /** Chi squared a degree of freedom. */
  misfit: number;
}

/** Prior deviation of what is common to a load; far wider than any [-]. */
const FREE = 10;
/** How far errors are followed, in prior deviations. */
const REACH = 5;
/** A bleed that is none: an area that no reading sees [m^2]. */
const NO_BLEED = 1e-12;

/** How bodies answer at every load that differs. */
export function bodyAnswers({ engine, states, doubts }: BodyQuestion): PlateAnswer[] {
  const reach = { plate: REACH * doubts.plate, bleed: REACH * doubts.bleed };
  return distinctLoads(states).loads.map((load) => plateAnswer(engine, load, reach));
}

/** @param answers of the bodies at loads that differ, in their order */
export function bodyErrors(question: BodyQuestion, answers = bodyAnswers(question)): BodyErrors {
  const { readings, states, doubts, figure } = question;
  const model = modelOf(question, answers);
  const solved = mostProbable({
    readings: readings.map(({ value }) => log(value)),
    noise: readings.map(() => doubts.repeatability),
    deviations: model.deviations,
    considered: range(model.scale, model.common),
    model: (x) =>
      readings.map(
        ({ state, body, gauge }) =>
          x[model.common + state]! + model.answer(x, state, body, figure) + x[model.gauge + gauge]!,
      ),
  });
  const plates = shares(solved, 0, model.bleed);
  const bleeds = shares(solved, model.bleed, model.gauge);
  const gauges = shares(solved, model.gauge, model.scale);
  const { master } = question;
  return {
    plates,
    toMove: master === undefined ? plates : sharesAgainst(solved, 0, model.bleed, master),
    bleeds,
    gauges,
    left: {
      plates: leftOf(plates, doubts.plate),
      bleeds: doubts.bleed > 0 ? leftOf(bleeds, doubts.bleed) : 1,
      gauges: leftOf(gauges, doubts.gauge),
    },
    readings: foundBodies(question, model, solved),
    remainders: states.map((_, state) => remainder(question, model, solved, state)),
    misfit: solved.least / Math.max(readings.length - states.length, 1),
  };
}

/** Unknowns in their order: plates, bleeds, gauges, answers, commons; where each family begins. */
interface Model {
  bodies: number;
  bleed: number;
  gauge: number;
  scale: number;
  common: number;
  deviations: number[];
  /** What plate and bleed of a body do to the logarithm of a figure at a state. */
  answer(x: readonly number[], state: number, body: number, figure: BodyFigure): number;
  /** Its air above the mean of all, in logarithms. */
  above(x: readonly number[], state: number, body: number): number;
}

function modelOf(
  { engine, figure, states, readings, doubts }: BodyQuestion,
  answers: readonly PlateAnswer[],
): Model {
  const bodies = engine.cylinder.count;
  const gauges = 1 + Math.max(...readings.map(({ gauge }) => gauge));
  const { loads, loadOf } = distinctLoads(states);
  const [bleed, gauge] = [bodies, 2 * bodies];
  const scale = gauge + gauges;
  const common = scale + loads.length;
  const many = (count: number, deviation: number) => new Array<number>(count).fill(deviation);
  const answer: Model['answer'] = (x, state, body, of) => {
    const load = loadOf[state]!;
    const { air, vacuum } = answers[load]!;
    const computed = (of === 'flow' ? air : vacuum)(x[body]!, x[bleed + body]!);
    return (1 + x[scale + load]!) * computed;
  };
  return {
    ...{ bodies, bleed, gauge, scale, common, answer },
    deviations: [
      ...many(bodies, doubts.plate),
      ...many(bodies, Math.max(doubts.bleed, NO_BLEED)),
      ...many(gauges, doubts.gauge),
      ...many(loads.length, figure === 'flow' ? ANSWER_DOUBT.air : ANSWER_DOUBT.vacuum),
      ...many(states.length, FREE),
    ],
    above: (x, state, body) => {
      const all = Array.from({ length: bodies }, (_, i) => answer(x, state, i, 'flow'));
      return all[body]! - all.reduce((sum, one) => sum + one, 0) / bodies;
    },
  };
}

function foundBodies(
  { readings }: BodyQuestion,
  model: Model,
  { values, covariance }: MostProbable,
): FoundBody[] {
  return readings.map((reading) => {
    const air = (x: readonly number[]) => model.above(x, reading.state, reading.body);
    const slopes = slopesOf(air, values, model.deviations);
    return {
      ...reading,
      air: exp(air(values)) - 1,
      deviation: deviationOf(covariance, slopes),
    };
  });
}

/** Turned by what was found, a body is left with what it was found wrong by, about the set opening. */
function remainder(
  { readings, doubts, figure, steps }: BodyQuestion,
  model: Model,
  { values, covariance }: MostProbable,
  state: number,
): Remainder {
  // A step leaves anything up to half of it either way, all alike: its twelfth root as deviation.
  const stepDeviations = values.map((_, k) => {
    const step = k < model.bleed ? steps.plate : steps.bleed;
    return k < model.gauge ? step / Math.sqrt(12) : 0;
  });
  const bodies = [...new Array(model.bodies).keys()];
  const set = values.map((x, k) => (k < model.gauge ? 0 : x));
  const hypotenuse = (all: readonly number[]) =>
    Math.sqrt(all.reduce((sum, x) => sum + square(x), 0));
  const rms = (all: readonly number[]) => hypotenuse(all) / Math.sqrt(all.length);
  const slope = (body: number, of: BodyFigure) =>
    slopesOf((x) => model.answer(x, state, body, of), set, model.deviations)[body]!;
  const perReading = slope(0, 'flow') / slope(0, figure);
  const own = new Set(readings.map(({ gauge }) => gauge)).size > 1 ? doubts.gauge : 0;
  return {
    before: rms(bodies.map((body) => exp(model.above(values, state, body)) - 1)),
    after: rms(
      bodies.map((body) => {
        const slopes = slopesOf((x) => model.above(x, state, body), set, model.deviations);
        const byStep = slopes.map((one, k) => one * stepDeviations[k]!);
        return Math.sqrt(square(deviationOf(covariance, slopes)) + square(hypotenuse(byStep)));
      }),
    ),
    seen: Math.abs(perReading) * Math.sqrt(square(doubts.repeatability) + square(own)),
  };
}
