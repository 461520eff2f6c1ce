/** Air of every body against the mean of all, over the opening of the plate. */
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { PLATE, signedShare } from '../../report/quantities.ts';
import type { ScrewsStudy } from './screws.ts';

export function airPlot({ errors, question }: ScrewsStudy): Plot {
  const { states } = question;
  const order = [...states.keys()].sort((a, b) => states[a]!.angle - states[b]!.angle);
  const air = signedShare('air_above_mean', 'air against the mean of all');
  const bodies = errors.plates.length;
  const worst = errors.readings.reduce((far, one) =>
    Math.abs(one.air) > Math.abs(far.air) ? one : far,
  );
  const of = (i: number, j: number) =>
    errors.readings.find(({ body, state }) => body === i && state === j)?.air;
  return {
    id: 'air-by-body',
    caption: 'Air of every body over plate angle',
    description: `Air of ${bodies} bodies against the mean of all over plate angle. The figures stand in the table of readings.`,
    ...axes(PLATE, air),
    series: Array.from({ length: bodies }, (_, i) => ({
      name: `body ${i + 1}`,
      look: (i === worst.body ? 'cut' : 'other') as PlotLook,
      xs: order.map((j) => states[j]!.angle),
      ys: plotted(
        air,
        order.map((j) => of(i, j)),
      ),
    })),
  };
}
