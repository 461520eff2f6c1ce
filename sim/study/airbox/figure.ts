/** Filling over speed in the open and in the box; the mean in the band over length. */
import { axes, type Plot, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import { fedPlot } from '../fedFigure.ts';
import { efficiencyOf } from '../points.ts';
import type { AirboxStudy } from './compute.ts';

const WAYS = [
  { way: 'open', name: 'in the open', look: 'cut' },
  { way: 'boxed', name: 'in the box', look: 'now' },
] as const;

export function boxedPlot(study: AirboxStudy): Plot {
  const ways = WAYS.map(({ way, ...named }) => ({ ...named, curve: study[way] }));
  return fedPlot(ways, study, q.EFFICIENCY, efficiencyOf, {
    id: 'airbox-filling',
    caption: 'Full load: volumetric efficiency over engine speed',
    description:
      'Volumetric efficiency over engine speed with the mouths in the open and in the box.',
  });
}

export function boxedLengthsPlot({ lengths, target, lengthUnit }: AirboxStudy): Plot {
  const [x, y] = [q.lengthQuantity(lengthUnit), q.bandMean(target.score)];
  const at = plotted(
    x,
    lengths.map(({ length }) => length),
  );
  return {
    id: 'airbox-lengths',
    caption: 'Mean in the band over trumpet length',
    description:
      'Mean in the band over trumpet length, with the mouths in the open and in the box.',
    ...axes(x, y),
    series: WAYS.map(({ way, name, look }) => ({
      name,
      look,
      xs: at,
      ys: plotted(
        y,
        lengths.map((one) => one[way]),
      ),
    })),
  };
}
