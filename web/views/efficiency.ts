/** Volumetric efficiency against speed, for the three lengths. */
import { quantities as q } from '../../sim/index.ts';
import { curveLines, curveTable, highest, type Value } from '../drawing/lines.ts';
import type { View } from '../drawing/view.ts';
import { bandLabels, bandShapes, baseLayout } from '../look.ts';
import { chooseSpeed } from '../state/why.ts';

const value: Value = ({ efficiency }) => efficiency;

export const efficiencyView: View = {
  id: 'filling',
  question: 'How well does it fill at each speed?',
  width: 'half',
  height: 400,
  lines: true,
  reading: () =>
    'Fresh air trapped at valve closing over the swept volume full of the day’s air: volumetric efficiency. Higher is more torque. Move the length below and the curve answers.',
  summary: (picture) => highest(picture, q.EFFICIENCY, value),
  figure: (picture, look) => {
    const { target } = picture.scenario;
    const layout = baseLayout(look, q.headed(q.SPEED), q.headed(q.EFFICIENCY));
    return {
      data: curveLines(picture, look, q.EFFICIENCY, value),
      layout: {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.3f' },
        shapes: bandShapes(look, target),
        annotations: bandLabels(look, target),
      },
    };
  },
  table: (picture) => curveTable(picture, q.EFFICIENCY, value),
  onPick: (_, speed) => chooseSpeed(speed),
};
