/**
 * Why cylinders differ in lambda, from readings of each at one or several loads:
 *
 *   ln L_ij = c_j + (1 + u_j) ln (air_j(psi_j + a_i) / air_j(psi_j)) - f_i + p_k
 *
 *   L  lambda read   i  cylinder   j  load   k  probe that read it   c  common mixture of the load
 *   a  error of the plate [deg], whose share of air falls as it opens (portFilling.ts)
 *   u  by how much air answers otherwise to a plate than computed
 *   f  error of the injector, the same at every load   p  error of the probe, which follows the probe
 *
 * All have normal priors, u being considered, not fitted; the most probable values and their covariance by
 * mostProbable.ts. Only what a cylinder has above the mean of all can be read. Whatever else makes one
 * cylinder breathe alike at every load (cam, compression, trumpet) stands in f.
 */
import { exp, log, square } from '../elementary/powers.ts';
import type { EngineSpecification } from '../specification.ts';
import { leftOf, range, type Share, shares, slopesOf } from './family.ts';
import { deviationOf, type MostProbable, mostProbable } from './mostProbable.ts';
import {
  ANSWER_DOUBT,
  distinctLoads,
  type PlateAnswer,
  type PlateLoad,
  plateAnswer,
} from './plateAnswer.ts';

/** A load that readings were taken at. */
export interface LambdaState extends PlateLoad {
  /** Which visit of that load; from 1. */
  visit: number;
}

/** One reading; state, cylinder and probe count from 0. */
export interface LambdaReading {
  state: number;
  cylinder: number;
  probe: number;
  /** Air over stoichiometric air [-]. */
  lambda: number;
}

/** Standard deviations known beforehand. */
export interface MixtureDoubts {
  /** Plate against plate [deg]. */
  plate: number;
  /** Injector against injector, probe against probe, reading against reading [-]. */
  injector: number;
  probe: number;
  repeatability: number;
}

export interface MixtureQuestion {
  engine: EngineSpecification;
  states: readonly LambdaState[];
  readings: readonly LambdaReading[];
  doubts: MixtureDoubts;
}

/** What a reading is believed to be once the probe's error is off. */
export interface FoundMixture extends LambdaReading {
  /** Lambda of the cylinder [-]; what its air is above the mean, for the plate's error alone [-]. */
  found: number;
  air: number;
  /** Relative standard deviation of `found` against the mean of the cylinders [-]. */
  deviation: number;
}

export interface MixtureShares {
  /** Each plate [deg] and injector [-] above the mean of all; each probe [-]. */
  plates: Share[];
  injectors: Share[];
  probes: Share[];
  /** Deviation left over the prior one, mean of a family [-]. */
  left: { plates: number; injectors: number; probes: number };
  readings: FoundMixture[];
  /** Chi squared a degree of freedom. */
  misfit: number;
}

/** Prior deviation of the common mixture of a load; far wider than any [-]. */
const FREE = 10;

/** How far errors of a plate are followed, in prior deviations. */
const REACH = 5;

/** @param answers of the plates at loads that differ, in their order */
export function mixtureShares(
  question: MixtureQuestion,
  answers = mixtureAnswers(question),
): MixtureShares {
  const { readings, states, doubts } = question;
  const model = modelOf(question, answers);
  const solved = mostProbable({
    readings: readings.map(({ lambda }) => log(lambda)),
    noise: readings.map(() => doubts.repeatability),
    deviations: model.deviations,
    considered: range(model.answer, model.common),
    model: (x) =>
      readings.map(
        ({ state, cylinder, probe }) =>
          x[model.common + state]! + model.mixture(x, state, cylinder) + x[model.probe + probe]!,
      ),
  });
  const plates = shares(solved, 0, model.injector);
  const injectors = shares(solved, model.injector, model.probe);
  const probes = shares(solved, model.probe, model.answer);
  return {
    plates,
    injectors,
    probes,
    left: {
      plates: leftOf(plates, doubts.plate),
      injectors: leftOf(injectors, doubts.injector),
      probes: leftOf(probes, doubts.probe),
    },
    readings: foundMixtures(question, model, solved),
    misfit: solved.least / Math.max(readings.length - states.length, 1),
  };
}

/** Unknowns in their order: plates, injectors, probes, answers, common mixtures; where each family begins. */
interface Model {
  injector: number;
  probe: number;
  answer: number;
  common: number;
  deviations: number[];
  /** What the plate of a cylinder does to the logarithm of its air at a state. */
  air(x: readonly number[], state: number, cylinder: number): number;
  /** And plate and injector to that of its lambda. */
  mixture(x: readonly number[], state: number, cylinder: number): number;
}

/** How air answers to the plates at every load that differs. */
export function mixtureAnswers({ engine, states, doubts }: MixtureQuestion): PlateAnswer[] {
  const reach = { plate: REACH * doubts.plate, bleed: 0 };
  return distinctLoads(states).loads.map((load) => plateAnswer(engine, load, reach));
}

function modelOf(
  { engine, states, readings, doubts }: MixtureQuestion,
  answers: readonly PlateAnswer[],
): Model {
  const cylinders = engine.cylinder.count;
  const probes = 1 + Math.max(...readings.map(({ probe }) => probe));
  const { loads, loadOf } = distinctLoads(states);
  const [injector, probe] = [cylinders, 2 * cylinders];
  const answer = probe + probes;
  const common = answer + loads.length;
  const many = (count: number, deviation: number) => new Array<number>(count).fill(deviation);
  const air: Model['air'] = (x, state, cylinder) => {
    const load = loadOf[state]!;
    return (1 + x[answer + load]!) * answers[load]!.air(x[cylinder]!);
  };
  return {
    ...{ injector, probe, answer, common, air },
    deviations: [
      ...many(cylinders, doubts.plate),
      ...many(cylinders, doubts.injector),
      ...many(probes, doubts.probe),
      ...many(loads.length, ANSWER_DOUBT.air),
      ...many(states.length, FREE),
    ],
    mixture: (x, state, cylinder) => air(x, state, cylinder) - x[injector + cylinder]!,
  };
}

function foundMixtures(
  { engine, readings }: MixtureQuestion,
  model: Model,
  { values, covariance }: MostProbable,
): FoundMixture[] {
  const cylinders = [...new Array(engine.cylinder.count).keys()];
  const meanProbe = mean(values.slice(model.probe, model.answer));
  return readings.map((reading) => {
    const { state, cylinder } = reading;
    const above = (of: Model['air'], x: readonly number[]) =>
      of(x, state, cylinder) - mean(cylinders.map((i) => of(x, state, i)));
    const common = values[model.common + state]! + meanProbe;
    const slopes = slopesOf((x) => above(model.mixture, x), values, model.deviations);
    return {
      ...reading,
      found: exp(common + model.mixture(values, state, cylinder)),
      air: exp(above(model.air, values)) - 1,
      deviation: deviationOf(covariance, slopes),
    };
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

/** The mixture of all cylinders together: what one probe in the joint reads of gas well mixed. */
export function jointMixture(lambdas: readonly number[], fuels: readonly number[]): number {
  const fuel = fuels.reduce((sum, one) => sum + one, 0);
  return lambdas.reduce((sum, lambda, i) => sum + lambda * fuels[i]!, 0) / fuel;
}

/** Standard deviation of all of a few values, none left out [-]. */
export function spreadOf(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((value) => square(value - middle))));
}
