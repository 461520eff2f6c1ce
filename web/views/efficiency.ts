/** Volumetric efficiency against speed, for the three lengths. */
import { fixed, millimetres, rpm } from '../format.ts';
import { chooseSpeed } from '../state/why.ts';
import { curveLines, curveTable, type Value } from './lines.ts';
import { bandLabels, bandShapes, baseLayout } from './look.ts';
import type { View } from './view.ts';

const percentOf: Value = ({ efficiency }) => efficiency && 100 * efficiency;

export const efficiencyView: View = {
  id: 'filling',
  question: 'How well does it fill at each speed?',
  width: 'half',
  height: 400,
  lines: true,
  reading: () =>
    'Fresh air trapped at valve closing, as a share of the swept volume full of the day’s air: volumetric efficiency. Higher is more torque. Move the length below and the curve answers.',
  summary: ({ curves }) =>
    curves
      .map(({ length, points }) => {
        const best = points.reduce((a, b) => ((b.efficiency ?? 0) > (a.efficiency ?? 0) ? b : a));
        if (best.efficiency === undefined) return `${millimetres(length)}: not known yet.`;
        return `${millimetres(length)}: highest ${fixed(100 * best.efficiency, 1)} % at ${rpm(best.speed)}.`;
      })
      .join(' '),
  figure: (picture, look) => {
    const { target } = picture.scenario;
    const layout = baseLayout(look, 'engine speed [rpm]', 'volumetric efficiency [%]');
    return {
      data: curveLines(picture, look, percentOf),
      layout: {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.1f' },
        shapes: bandShapes(look, target),
        annotations: bandLabels(look, target),
      },
    };
  },
  table: (picture) =>
    curveTable(picture, { name: 'volumetric efficiency', unit: '%', decimals: 2 }, percentOf),
  onPick: (_, speed) => chooseSpeed(speed),
};
