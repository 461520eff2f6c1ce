/** Gain and price against the trumpets fitted now, at every speed. */
import type { Data } from 'plotly.js-dist-min';
import { plotted, quantities as q } from '../../sim/index.ts';
import { curveTable, type Smooth, smoothLine, smoothLines, type Value } from '../drawing/lines.ts';
import type { View } from '../drawing/view.ts';
import { rpm, told } from '../format.ts';
import { bandLabels, bandShapes, baseLayout, type Look } from '../look.ts';
import { type Curve, type CurvePoint, curveOf, type Picture } from '../state/picture.ts';
import { chooseSpeed } from '../state/why.ts';

export const differenceView: View = {
  id: 'gain-and-price',
  question: 'What does it give, and what does it cost elsewhere?',
  width: 'wide',
  lines: true,
  height: 320,
  reading: () =>
    'Change of trapped air against the trumpets fitted now. Solid ground above the line is gain; hatched ground below it is the price of the recommended length.',
  summary: (picture) => {
    const best = curveOf(picture, 'best');
    if (!best) return 'Not known yet.';
    const losses = best.points.filter((point, i) => (changeOf(picture)(point, i) ?? 0) < 0);
    const speeds = losses.map(({ speed }) => rpm(speed)).join(', ');
    const { worstLossPercent } = picture.verdict!.tradeOff;
    return losses.length === 0
      ? 'The recommended length loses at no speed computed.'
      : `The recommended length loses at ${speeds}; outside the band at worst ${told(q.WORST_LOSS, worstLossPercent)}.`;
  },
  ready: (picture) => picture.verdict !== undefined,
  figure: (picture, look) => {
    const { target } = picture.scenario;
    const layout = baseLayout(look, q.headed(q.SPEED), q.headed(q.CHANGE));
    const change = changeOf(picture);
    const others = { ...picture, curves: picture.curves.filter(({ role }) => role !== 'now') };
    return {
      data: [
        ...ground(picture, look, change),
        ...smoothLines(others, look, q.CHANGE, change, (curve) => smoothChange(picture, curve)),
        ...floorMarks(picture, look),
      ],
      layout: {
        ...layout,
        yaxis: {
          ...layout.yaxis,
          hoverformat: '+.1f',
          zeroline: true,
          zerolinecolor: look.role.now,
          zerolinewidth: 2,
        },
        shapes: bandShapes(look, target),
        annotations: bandLabels(look, target),
      },
    };
  },
  table: (picture) => curveTable(picture, q.CHANGE, changeOf(picture)),
  onPick: (_, speed) => chooseSpeed(speed),
};

/** Most that may be lost at the speeds with a floor. */
function floorMarks({ scenario: { target } }: Picture, look: Look): Partial<Data>[] {
  const floors = (target.floors ?? []).filter((floor) => floor.mostLossPercent !== undefined);
  if (floors.length === 0) return [];
  const marks = {
    type: 'scatter',
    mode: 'markers+text',
    name: 'floor',
    x: floors.map(({ speed }) => speed),
    y: floors.map(({ mostLossPercent }) => -mostLossPercent!),
    text: floors.map(() => 'floor'),
    textposition: 'bottom center',
    textfont: { color: look.ink, size: 12 },
    marker: { symbol: 'line-ew', size: 26, line: { color: look.ink, width: 3 } },
    cliponaxis: false,
    showlegend: false,
    hovertemplate: 'floor: %{y:.1f} %<extra></extra>',
  };
  return [marks as unknown as Partial<Data>];
}

/** Change of each point against the fitted length at the same speed [-]. */
function changeOf(picture: Picture): Value {
  const now = curveOf(picture, 'now')!;
  return ({ efficiency }: CurvePoint, i) => {
    const own = now.points[i]!.efficiency;
    return efficiency === undefined || own === undefined ? undefined : efficiency / own - 1;
  };
}

/** The same between the speeds; undefined where either curve is not known there. */
function smoothChange(picture: Picture, curve: Curve): Smooth | undefined {
  const efficiency = (of: Curve) => smoothLine(of, q.EFFICIENCY, (point) => point.efficiency);
  const [ours, own] = [efficiency(curve), efficiency(curveOf(picture, 'now')!)];
  if (!ours || !own) return undefined;
  const change = ours.ys.map((y, i) => y / own.ys[i]! - 1);
  return { xs: ours.xs, ys: plotted(q.CHANGE, change) };
}

/** Ground between the recommended curve and zero, gain and price apart. */
function ground(picture: Picture, look: Look, change: Value): Partial<Data>[] {
  const best = curveOf(picture, 'best');
  if (!best) return [];
  const smooth = smoothChange(picture, best);
  const known = best.points.flatMap((point, i) => {
    const y = change(point, i);
    return y === undefined ? [] : [{ x: point.speed, y: plotted(q.CHANGE, [y])[0]! }];
  });
  const line = withCrossings(smooth ? smooth.xs.map((x, i) => ({ x, y: smooth.ys[i]! })) : known);
  const side = (keep: (y: number) => number, color: string, hatch: string) => ({
    type: 'scatter',
    mode: 'lines',
    x: line.map(({ x }) => x),
    y: line.map(({ y }) => keep(y)),
    line: { width: 0 },
    fill: 'tozeroy',
    fillcolor: color,
    fillpattern: {
      shape: hatch,
      fgcolor: color,
      bgcolor: 'rgba(0,0,0,0)',
      size: 7,
      solidity: 0.35,
    },
    hoverinfo: 'skip',
    showlegend: false,
  });
  return [
    side((y) => Math.max(y, 0), `${look.gain}44`, ''),
    side((y) => Math.min(y, 0), look.price, '/'),
  ] as Partial<Data>[];
}

interface XY {
  x: number;
  y: number;
}

/** The line with its zeros put in, so that both grounds end on the axis. */
function withCrossings(line: readonly XY[]): XY[] {
  return line.flatMap((point, i) => {
    const next = line[i + 1];
    if (!next || point.y * next.y >= 0) return [point];
    return [point, { x: point.x + ((next.x - point.x) * point.y) / (point.y - next.y), y: 0 }];
  });
}
