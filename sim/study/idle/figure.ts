/** What a pulsed valve puts into the bar it feeds. */
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { FREQUENCY } from '../../report/quantities.ts';
import type { IdleStudy } from './compute.ts';
import { RIPPLE } from './tables.ts';

export function frequencyPlot({ frequencies, spec }: IdleStudy): Plot {
  const line = (name: string, values: (number | undefined)[], look: PlotLook) => ({
    name,
    look,
    xs: frequencies.map(({ frequency }) => frequency),
    ys: plotted(RIPPLE, values),
  });
  const shared = frequencies.map((row) => row.shared);
  return {
    id: 'idle-valve',
    caption: 'Ripple that the valve puts into its bar',
    description: 'Ripple of the bar, peak to peak, over how often the valve is driven, warm.',
    ...axes(FREQUENCY, { ...RIPPLE, name: 'ripple of the bar' }),
    series: [
      ...(shared.every((one) => one === undefined) ? [] : [line('pressure bar', shared, 'cut')]),
      line(
        'bar of its own',
        frequencies.map(({ own }) => own),
        'now',
      ),
    ],
    marks: [{ axis: 'x', at: spec.frequency, name: 'as in the file', look: 'other' }],
  };
}
