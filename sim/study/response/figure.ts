/** Share of the change of filling over time, a line a way. */
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { type ResponseStudy, THERE, type WayName } from './compute.ts';
import { FIRING_TIME, SHARE, wayName } from './tables.ts';

const LOOKS: Record<WayName, PlotLook> = {
  bodies: 'cut',
  near: 'other',
  far: 'other',
  box: 'third',
  plenum: 'now',
};

export function responsePlot({ ways, question }: ResponseStudy): Plot {
  const x = { ...FIRING_TIME, head: 'time since plates began to move' };
  const y = { ...SHARE, head: 'share of the new torque' };
  return {
    id: 'response',
    caption: `Charge by charge at ${question.speed} rpm`,
    description:
      'Share of the change of torque that every firing has, over time since the plates began to move.',
    ...axes(x, y),
    series: ways.map(({ name, charges }) => ({
      name: wayName(name, question),
      look: LOOKS[name],
      xs: plotted(
        x,
        charges.map(({ firing }) => firing),
      ),
      ys: plotted(
        y,
        charges.map(({ share }) => share),
      ),
    })),
    marks: [{ axis: 'y', at: plotted(y, [THERE])[0]!, name: 'there', look: 'other' }],
  };
}
