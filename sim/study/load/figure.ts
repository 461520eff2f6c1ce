/** Filling over the plate angle, one line a speed. */
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { FILLING, PLATE } from '../../report/quantities.ts';
import { airOf } from './cell.ts';
import type { LoadStudy } from './compute.ts';

const LOOKS: readonly PlotLook[] = ['other', 'now', 'third', 'cut'];

export function loadPlot({ angles, speeds, outcomes }: LoadStudy): Plot {
  const last = speeds.length - 1;
  const drawn = [0, Math.round(last / 3), Math.round((2 * last) / 3), last];
  return {
    id: 'load',
    caption: 'Relative filling over plate angle',
    description: `Relative filling over plate angle at ${drawn.map((j) => `${speeds[j]} rpm`).join(', ')}. The figures stand in the table.`,
    ...axes(PLATE, FILLING),
    series: drawn.map((j, k) => ({
      name: `${speeds[j]} rpm`,
      look: LOOKS[k]!,
      xs: angles,
      ys: plotted(
        { ...FILLING, times: 100 },
        outcomes.map((row) => airOf(row[j]!)),
      ),
    })),
  };
}
