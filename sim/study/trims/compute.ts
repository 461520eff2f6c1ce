/** From lambda per cylinder to fuel per cylinder: shares of the error, trims, and what one probe would say. */
import {
  jointMixture,
  type MixtureQuestion,
  type MixtureShares,
  mixtureShares,
  spreadOf,
} from '../../decision/mixtureShares.ts';
import { portFilling } from '../../decision/portFilling.ts';
import { mixtureTorque, spreadLoss } from '../../mixture/mixtureTorque.ts';
import { swingLeft } from '../../mixture/probeLag.ts';

export interface TrimsQuestion extends MixtureQuestion {
  /** Numbers of the probes as the file has them. */
  probes: readonly number[];
  /** Whether lambda was worked out from gases. */
  fromGases: boolean;
  /** Mixture wanted of every cylinder [-]; absent for what all have together at each load. */
  target?: number;
}

/** All cylinders at one load. */
export interface LoadMixture {
  speed: number;
  angle: number;
  visit: number;
  /** Lambda of all gas together, which one probe in the joint reads [-]. */
  joint: number;
  /** Standard deviation of lambda between cylinders [-]. */
  spread: number;
  /** The leanest cylinder, from 0, and its lambda [-]. */
  leanest: number;
  lean: number;
  /** Share of torque that the spread costs [-]; undefined where the published engine gives none. */
  loss: number | undefined;
  /** Share of one cylinder's swing that a probe in the joint still shows [-]. */
  swingLeft: number;
  /** Estimated air of a cylinder and cycle [kg]. */
  charge: number;
}

export interface TrimsStudy {
  question: TrimsQuestion;
  shares: MixtureShares;
  loads: LoadMixture[];
  /** Fuel to add to each reading's cylinder at its load, of what it gets [-], in the order of the readings. */
  trims: number[];
  /** Fuel to add to each cylinder at every load once plates are alike [-]. */
  stays: number[];
}

export function mixtureTrims(question: TrimsQuestion): TrimsStudy {
  const shares = mixtureShares(question);
  const fuels = shares.injectors.map(({ value }) => 1 + value);
  const loads = question.states.map((state, j) => loadMixture(question, shares, state, j, fuels));
  return {
    question,
    shares,
    loads,
    trims: shares.readings.map(
      ({ found, state }) => found / (question.target ?? loads[state]!.joint) - 1,
    ),
    stays: fuels.map((fuel) => 1 / fuel - 1),
  };
}

function loadMixture(
  { engine }: TrimsQuestion,
  { readings }: MixtureShares,
  { speed, angle, visit }: TrimsQuestion['states'][number],
  j: number,
  fuels: readonly number[],
): LoadMixture {
  const here = readings.filter(({ state }) => state === j);
  const lambdas = fuels.map((_, i) => here.find(({ cylinder }) => cylinder === i)!.found);
  const lean = Math.max(...lambdas);
  const joint = jointMixture(lambdas, fuels);
  const spread = spreadOf(lambdas);
  const { charge } = portFilling(engine, speed, angle);
  const torque = mixtureTorque(charge, speed, joint);
  return {
    ...{ speed, angle, visit, joint, spread, lean, charge },
    leanest: lambdas.indexOf(lean),
    loss: torque > 0 ? spreadLoss(spread) / torque : undefined,
    swingLeft: swingLeft(speed),
  };
}
