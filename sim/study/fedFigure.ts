/** Ways to feed the engine as curves over speed. */
import { axes, type Plot, type PlotLook, plotted } from '../report/plot.ts';
import * as q from '../report/quantities.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import { allPoints } from '../sweep/sweep.ts';
import { bandShades, smoothLine } from './curve/figure.ts';
import type { FedCurve } from './fed.ts';
import type { PairQuestion } from './pair.ts';

/** A way with what it is called and how it looks. */
export interface NamedWay {
  name: string;
  look: PlotLook;
  curve: FedCurve;
}

/** One figure of every point of some ways over speed, smooth where they are resolved. */
export function fedPlot(
  ways: readonly NamedWay[],
  asked: Pick<PairQuestion, 'speeds' | 'target'>,
  quantity: q.Quantity,
  figure: (outcome: PointOutcome, curve: FedCurve) => number | undefined,
  words: Pick<Plot, 'id' | 'caption' | 'description'>,
): Plot {
  return {
    ...words,
    ...axes(q.SPEED, quantity),
    series: ways.map(({ name, look, curve }) => {
      const own = (outcome: PointOutcome) => figure(outcome, curve);
      const points = allPoints(curve);
      return {
        ...{ name, look, xs: points.map(({ speed }) => speed) },
        ys: plotted(quantity, points.map(own)),
        ...(curve.resolved && { line: smoothLine(curve, asked, quantity, own) }),
      };
    }),
    bands: bandShades(asked.target),
  };
}
