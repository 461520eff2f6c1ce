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
 * a, u, f, p have normal priors; the most probable values and their covariance by mostProbable.ts. Only what a
 * cylinder has above the mean of all can be read. A family of errors counts as told where readings take
 * more than three tenths off the prior deviation: our own mark, no source. Whatever else makes one cylinder
 * breathe alike at every load (cam, compression, trumpet) stands in f.
 */
import { exp, log, square } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import type { EngineSpecification } from '../specification.ts';
import { aboveMean, deviationOf, type MostProbable, mostProbable } from './mostProbable.ts';
import { portFilling } from './portFilling.ts';

/** A load that readings were taken at. */
export interface LambdaState {
  /** Engine speed [rpm] and plate angle [deg]. */
  speed: number;
  angle: number;
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

/** What one has above the mean of all. */
export interface Share {
  value: number;
  deviation: number;
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

/** Deviation left above which readings count as having told nothing. */
export const UNTOLD = 0.7;
/** Prior deviation of the common mixture of a load; far wider than any [-]. */
const FREE = 10;
/** Least opening above the closed plate that an error is followed to [deg]. */
const LEAST_OPENING = 0.03;
const WIDE_OPEN = 90;

/** Standard deviation of u: what computed answers of the demo four differ from the solver by at part load. */
const ANSWER_DOUBT = 0.2;

export function mixtureShares(question: MixtureQuestion): MixtureShares {
  const { states, readings, doubts } = question;
  const model = modelOf(question);
  const solved = mostProbable({
    readings: readings.map(({ lambda }) => log(lambda)),
    noise: readings.map(() => doubts.repeatability),
    deviations: model.deviations,
    model: (x) =>
      readings.map(
        ({ state, cylinder, probe }) =>
          x[model.common + state]! + model.mixture(x, state, cylinder) + x[model.probe + probe]!,
      ),
  });
  const family = (from: number, upTo: number) => shares(solved, from, upTo - from);
  const [plates, injectors] = [family(0, model.injector), family(model.injector, model.probe)];
  const probes = family(model.probe, model.answer);
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

function modelOf({ engine, states, readings, doubts }: MixtureQuestion): Model {
  const cylinders = engine.cylinder.count;
  const probes = 1 + Math.max(...readings.map(({ probe }) => probe));
  const { loads, loadOf } = distinctLoads(states);
  const [injector, probe] = [cylinders, 2 * cylinders];
  const answer = probe + probes;
  const common = answer + loads.length;
  const changes = loads.map((load) => airChange(engine, load, REACH * doubts.plate));
  const many = (count: number, deviation: number) => new Array<number>(count).fill(deviation);
  const air: Model['air'] = (x, state, cylinder) => {
    const load = loadOf[state]!;
    return (1 + x[answer + load]!) * changes[load]!(x[cylinder]!);
  };
  return {
    ...{ injector, probe, answer, common, air },
    deviations: [
      ...many(cylinders, doubts.plate),
      ...many(cylinders, doubts.injector),
      ...many(probes, doubts.probe),
      ...many(loads.length, ANSWER_DOUBT),
      ...many(states.length, FREE),
    ],
    mixture: (x, state, cylinder) => air(x, state, cylinder) - x[injector + cylinder]!,
  };
}

/** Loads whose speed and angle differ, and which of them each state is. */
function distinctLoads(states: readonly LambdaState[]) {
  const key = ({ speed, angle }: LambdaState) => `${speed} ${angle}`;
  const keys = [...new Set(states.map(key))];
  const loadOf = states.map((state) => keys.indexOf(key(state)));
  return { loads: keys.map((_, k) => states[loadOf.indexOf(k)]!), loadOf };
}

/** How far errors of a plate are followed, in prior deviations. */
const REACH = 5;
/** Places of a table between which the logarithm of air runs straight over that of opening. */
const PLACES = 48;

/** Growth of air in logarithms with the plate off by an error [deg], at most `reach`. */
function airChange(engine: EngineSpecification, { speed, angle }: LambdaState, reach: number) {
  const { closedAngle } = engine.intake.throttle;
  const opened = (at: number) =>
    log(Math.max(Math.min(at, WIDE_OPEN) - closedAngle, LEAST_OPENING));
  const [low, high] = [opened(angle - reach), opened(angle + reach)];
  const xs = Array.from({ length: PLACES }, (_, i) => low + ((high - low) * i) / (PLACES - 1));
  const ys = xs.map((x) => log(portFilling(engine, speed, closedAngle + exp(x)).flow));
  const flow = (at: number) => interpolateLinear(xs, ys, opened(at));
  const set = flow(angle);
  return (error: number) => flow(angle + error) - set;
}

function shares({ values, covariance }: MostProbable, from: number, count: number): Share[] {
  return Array.from({ length: count }, (_, i) => {
    const weights = aboveMean(from, count, i, values.length);
    const value = weights.reduce((sum, w, k) => sum + w * values[k]!, 0);
    return { value, deviation: deviationOf(covariance, weights) };
  });
}

/** Mean deviation of a family over what it was before; nothing is left to tell of one alone. */
function leftOf(family: readonly Share[], prior: number): number {
  if (family.length < 2) return 1;
  const before = prior * Math.sqrt(1 - 1 / family.length);
  return family.reduce((sum, { deviation }) => sum + deviation / before, 0) / family.length;
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
    const slopes = values.map((_, k) => slope((x) => above(model.mixture, x), values, k, model));
    return {
      ...reading,
      found: exp(common + model.mixture(values, state, cylinder)),
      air: exp(above(model.air, values)) - 1,
      deviation: deviationOf(covariance, slopes),
    };
  });
}

/** Step of a slope in prior deviations: wider than the table's places are apart. */
const SLOPE_STEP = 0.05;

function slope(
  of: (x: readonly number[]) => number,
  values: readonly number[],
  k: number,
  { deviations }: Model,
): number {
  const by = SLOPE_STEP * deviations[k]!;
  const moved = (sign: number) => of(values.map((x, l) => (l === k ? x + sign * by : x)));
  return (moved(1) - moved(-1)) / (2 * by);
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
