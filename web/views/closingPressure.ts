/** Cylinder pressure at the moment the intake valve closes. */
import { plotted, quantities as q } from '../../sim/index.ts';
import { curveLines, curveTable, highest, type Value } from '../drawing/lines.ts';
import type { View } from '../drawing/view.ts';
import { told } from '../format.ts';
import { bandShapes, baseLayout } from '../look.ts';
import { chooseSpeed } from '../state/why.ts';

const value: Value = ({ closingPressure }) => closingPressure;

export const closingPressureView: View = {
  id: 'closing-pressure',
  question: 'What pressure is in the cylinder when the valve closes?',
  width: 'half',
  lines: true,
  height: 340,
  reading: ({ scenario }) =>
    `Pressure in the cylinder at intake closing. The still air before the mouths has ${told(q.PRESSURE, scenario.engine.intake.feed.pressure)}; what lies above it is the work of the wave and of the moving column.`,
  summary: (picture) => highest(picture, q.CLOSING_PRESSURE, value),
  figure: (picture, look) => {
    const { target, engine } = picture.scenario;
    const [feed] = plotted(q.PRESSURE, [engine.intake.feed.pressure]);
    const layout = baseLayout(look, q.headed(q.SPEED), q.headed(q.CLOSING_PRESSURE));
    const still = {
      type: 'line',
      xref: 'paper',
      x0: 0,
      x1: 1,
      y0: feed!,
      y1: feed!,
      line: { color: look.quiet, width: 1 },
    } as const;
    return {
      data: curveLines(picture, look, q.CLOSING_PRESSURE, value),
      layout: {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.1f' },
        shapes: [...bandShapes(look, target), still],
      },
    };
  },
  table: (picture) => curveTable(picture, q.CLOSING_PRESSURE, value),
  onPick: (_, speed) => chooseSpeed(speed),
};
