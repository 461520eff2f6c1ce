/** What the foot feels, out and back. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import type { EffortPoint } from '../../linkage/effort.ts';
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { FOOT_TRAVEL, inUnit, newtons } from '../../report/quantities.ts';
import type { PedalStudy } from './compute.ts';
import { BACK, OUT } from './tables.ts';

export function effortPlot({ curve }: PedalStudy, unit: LengthUnit): Plot {
  const travelled = inUnit(FOOT_TRAVEL, unit);
  const xs = plotted(
    travelled,
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
    ...axes(travelled, newtons('', 'force at the pad')),
    series: [line(OUT.head, 'cut', ({ out }) => out), line(BACK.head, 'now', ({ back }) => back)],
  };
}
