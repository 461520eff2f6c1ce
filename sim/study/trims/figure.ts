/** Lambda of every cylinder over the opening of the plate. */

import { counted } from '../../report/numbers.ts';
import { axes, type Plot, type PlotLook } from '../../report/plot.ts';
import { LAMBDA, PLATE } from '../../report/quantities.ts';
import type { TrimsStudy } from './compute.ts';

export function mixturePlot({ shares, question, loads }: TrimsStudy): Plot {
  const order = [...question.states.keys()].sort(
    (a, b) => question.states[a]!.angle - question.states[b]!.angle,
  );
  const xs = order.map((j) => question.states[j]!.angle);
  const cylinders = shares.injectors.length;
  const lean = leanestCylinder(loads);
  const lambda = (i: number, j: number) =>
    shares.readings.find(({ cylinder, state }) => cylinder === i && state === j)?.found;
  return {
    id: 'mixture-by-cylinder',
    caption: 'Mixture of every cylinder over plate angle',
    description: `Lambda of ${counted(cylinders, 'cylinder')} over plate angle, and of all gas together. The figures stand in the table of readings.`,
    ...axes(PLATE, LAMBDA),
    series: [
      ...Array.from({ length: cylinders }, (_, i) => ({
        name: `cylinder ${i + 1}`,
        look: (i === lean ? 'cut' : 'other') as PlotLook,
        xs,
        ys: order.map((j) => lambda(i, j) ?? Number.NaN),
      })),
      { name: 'joint', look: 'now' as PlotLook, xs, ys: order.map((j) => loads[j]!.joint) },
    ],
  };
}

/** The cylinder that is farthest on the lean side of all together at any load, from 0. */
function leanestCylinder(loads: TrimsStudy['loads']): number {
  return leanestLoad(loads).leanest;
}

/** The load at which one cylinder is farthest on the lean side of all together. */
export function leanestLoad(loads: TrimsStudy['loads']) {
  return loads.reduce((far, one) => (one.lean / one.joint > far.lean / far.joint ? one : far));
}
