/** Cylinder pressure at the moment the intake valve closes. */
import { fixed, millimetres, rpm } from '../format.ts';
import { chooseSpeed } from '../state/why.ts';
import { curveLines, curveTable, type Value } from './lines.ts';
import { bandShapes, baseLayout } from './look.ts';
import type { View } from './view.ts';

const kilopascals: Value = ({ closingPressure }) => closingPressure && closingPressure / 1e3;

export const closingPressureView: View = {
  id: 'closing-pressure',
  question: 'How hard is it packed when the valve closes?',
  width: 'half',
  lines: true,
  height: 340,
  reading: ({ scenario }) =>
    `Pressure in the cylinder at intake closing. The still air before the mouths has ${fixed(scenario.engine.intake.feed.pressure / 1e3, 1)} kPa; what lies above it is the work of the wave and of the moving column.`,
  summary: ({ curves }) =>
    curves
      .map(({ length, points }) => {
        const known = points.filter(({ closingPressure }) => closingPressure !== undefined);
        if (known.length === 0) return `${millimetres(length)}: not known yet.`;
        const top = known.reduce((a, b) => (b.closingPressure! > a.closingPressure! ? b : a));
        return `${millimetres(length)}: highest ${fixed(top.closingPressure! / 1e3, 1)} kPa at ${rpm(top.speed)}.`;
      })
      .join(' '),
  figure: (picture, look) => {
    const { scenario } = picture;
    const { target } = scenario;
    const feed = scenario.engine.intake.feed.pressure / 1e3;
    const layout = baseLayout(look, 'engine speed [rpm]', 'pressure at valve closing [kPa]');
    const still = {
      type: 'line',
      xref: 'paper',
      x0: 0,
      x1: 1,
      y0: feed,
      y1: feed,
      line: { color: look.quiet, width: 1 },
    } as const;
    return {
      data: curveLines(picture, look, kilopascals),
      layout: {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.1f' },
        shapes: [...bandShapes(look, target), still],
      },
    };
  },
  table: (picture) =>
    curveTable(
      picture,
      { name: 'pressure at valve closing', unit: 'kPa', decimals: 2 },
      kilopascals,
    ),
  onPick: (_, speed) => chooseSpeed(speed),
};
