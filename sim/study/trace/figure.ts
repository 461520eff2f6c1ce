/** Pressure at every station through one cycle. */
import type { Trace } from '../../engine/trace.ts';
import { axes, type Mark, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { CRANK_ANGLE, PRESSURE } from '../../report/quantities.ts';

const LOOKS: readonly PlotLook[] = ['now', 'cut', 'third', 'other'];

export function pressurePlot({ crankAngle, stations, intakeEvents }: Trace): Plot {
  const mark = (at: number, name: string): Mark => ({ axis: 'x', at, name, look: 'other' });
  return {
    id: 'cycle',
    caption: 'Pressure through one cycle',
    description:
      'Static pressure at every station against crank angle, 0 at firing. The range of each stands in the table below.',
    ...axes(CRANK_ANGLE, PRESSURE),
    series: stations.map(({ name, pressure }, i) => ({
      name,
      xs: crankAngle,
      ys: plotted(PRESSURE, pressure),
      look: LOOKS[i % LOOKS.length]!,
    })),
    marks: [mark(intakeEvents.open, 'intake opens'), mark(intakeEvents.close, 'intake closes')],
  };
}
