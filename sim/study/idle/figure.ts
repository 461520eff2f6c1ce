/** How even each way leaves the cylinders as its air grows, and what a pulsed valve puts into the bar it feeds. */
import { axes, type Plot, type PlotLook, plotted, type Series } from '../../report/plot.ts';
import { FREQUENCY } from '../../report/quantities.ts';
import type { IdleStudy } from './compute.ts';
import type { JoinedIdle } from './joined.ts';
import { AIR, RIPPLE, SPREAD, WAYS } from './tables.ts';
import type { WayName } from './ways.ts';

/** Ways whose unevenness has room in one picture: all through one cylinder is some hundred per cent. */
const DRAWN: readonly (readonly [WayName, PlotLook])[] = [
  ['own', 'cut'],
  ['driven', 'now'],
  ['shared', 'third'],
  ['bleeds', 'other'],
];

const AIR_DRAWN = { ...AIR, name: 'air of all cylinders' };

/** Air of the cylinder that is off above the others', from the warm engine to the cold one with its load. */
export function evennessPlot({ joined }: JoinedIdle): Plot {
  return {
    id: 'idle-evenness',
    caption: 'How far one cylinder ends above the others',
    description:
      'Air of the cylinder whose plate, drilling or nipple is off above that of the others, over the air that the ' +
      'engine draws, warm and cold, without the load and with it; a line a way.',
    ...axes(AIR_DRAWN, SPREAD),
    series: DRAWN.flatMap(([name, look]): Series[] => {
      const own = joined.filter((one) => one.name === name).toSorted((a, b) => a.air - b.air);
      if (own.length === 0) return [];
      const [xs, ys] = [own.map(({ air }) => air), own.map(({ spread }) => spread)];
      return [{ name: WAYS[name][0], look, xs: plotted(AIR_DRAWN, xs), ys: plotted(SPREAD, ys) }];
    }),
  };
}

export function frequencyPlot({ frequencies, spec }: IdleStudy): Plot {
  const line = (name: string, values: (number | undefined)[], look: PlotLook) => ({
    name,
    look,
    xs: frequencies.map(({ frequency }) => frequency),
    ys: plotted(RIPPLE, values),
  });
  const lines = [
    line(
      'pressure bar',
      frequencies.map(({ shared }) => shared),
      'cut',
    ),
    line(
      'at its sensor, computed',
      frequencies.map(({ sensor }) => sensor),
      'third',
    ),
    line(
      'bar of its own',
      frequencies.map(({ own }) => own),
      'now',
    ),
  ];
  return {
    id: 'idle-valve',
    caption: 'Ripple that the valve puts into its bar',
    description: 'Ripple of the bar, peak to peak, over how often the valve is driven, warm.',
    ...axes(FREQUENCY, { ...RIPPLE, name: 'ripple of the bar' }),
    series: lines.filter(({ ys }) => ys.some(Number.isFinite)),
    marks: [{ axis: 'x', at: spec.frequency, name: 'as in the file', look: 'other' }],
  };
}
