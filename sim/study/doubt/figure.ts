/** The curves of both lengths with the room that the spreads of the inputs leave them. */
import type { Target } from '../../decision/target.ts';
import type { LengthSpread } from '../../decision/uncertainty.ts';
import { axes, type Plot, plotted, type Series } from '../../report/plot.ts';
import { SPEED, scored } from '../../report/quantities.ts';
import { bandShades } from '../curve/figure.ts';
import type { Doubt } from './compute.ts';
import { contenderName } from './tables.ts';

export function doubtPlot({ study, unit }: Doubt, target: Target): Plot {
  const { recommended, baseline, speeds } = study;
  const quantity = scored(target.score);
  const strip = (spread: LengthSpread, look: Series['look']): Series[] => {
    const { curve } = spread;
    const name = contenderName(spread, unit);
    const of = (figure: 'p5' | 'p50' | 'p95') =>
      plotted(
        quantity,
        curve.map((spread) => spread[figure].value),
      );
    return [
      {
        name,
        look,
        xs: speeds,
        ys: of('p50'),
        from: of('p5'),
        upTo: of('p95'),
      },
    ];
  };
  return {
    id: 'doubt',
    caption: 'Nine of ten engines within the spreads lie inside the strip of each',
    description: `${quantity.name} over engine speed: the median of the samples and the points with 5 and 95 % of them below, for the recommended one and the engine as it is.`,
    ...axes(SPEED, quantity),
    series: [...strip(baseline, 'now'), ...strip(recommended, 'cut')],
    bands: bandShades(target),
  };
}
