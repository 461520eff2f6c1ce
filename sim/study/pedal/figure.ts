/** What the foot feels, out and back. */
import type { EffortPoint } from '../../linkage/effort.ts';
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { FOOT_TRAVEL, newtons } from '../../report/quantities.ts';
import type { PedalStudy } from './compute.ts';
import { BACK, OUT } from './tables.ts';

export function effortPlot({ curve }: PedalStudy): Plot {
  const xs = plotted(
    FOOT_TRAVEL,
    curve.map(({ travel }) => travel),
  );
  const line = (name: string, look: PlotLook, of: (point: EffortPoint) => number) => ({
    name,
    xs,
    ys: plotted(OUT, curve.map(of)),
    look,
  });
  return {
    id: 'pedal',
    caption: 'Force at the pad over its travel, out and back',
    description:
      'Force at the pedal pad over foot travel, plates shut on the left and wide open on the right; the way out above, the way back below.',
    ...axes(FOOT_TRAVEL, newtons('', 'force at the pad')),
    series: [line(OUT.head, 'cut', ({ out }) => out), line(BACK.head, 'now', ({ back }) => back)],
  };
}
