/** Curves against speed as a plot, the bands of the target shaded. */

import { smoothAt } from '../../decision/smooth.ts';
import { bandsOf, scores, type Target } from '../../decision/target.ts';
import { axes, type Plot, plotted, type Series } from '../../report/plot.ts';
import { EFFICIENCY, headed, type Quantity, SPEED } from '../../report/quantities.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { efficiencyOf } from '../points.ts';
import { rangesOf } from '../refinement.ts';

/** Distance of the points that a smooth line is drawn through [rpm]. */
const DRAWN = 20;

/** A curve with what it is called and stands for. */
export interface NamedCurve extends Pick<Series, 'name' | 'look' | 'line'> {
  outcomes: readonly PointOutcome[];
}

/** Volumetric efficiency of each curve. */
export function fillingPlot(curves: readonly NamedCurve[], target: Target): Plot {
  const series = curves.map(({ name, look, outcomes, line }) => {
    const ys = plotted(EFFICIENCY, scores(outcomes, 'volumetric-efficiency'));
    return { name, look, xs: outcomes.map(({ speed }) => speed), ys, ...(line && { line }) };
  });
  const names = series.flatMap(({ name }) => (name === '' ? [] : [name])).join(', ');
  return {
    id: 'filling',
    caption: 'Volumetric efficiency over engine speed',
    description: `${headed(EFFICIENCY)} over engine speed: ${names}; the bands that count are shaded. The figures stand in the tables below.`,
    ...axes(SPEED, EFFICIENCY),
    series,
    bands: bandShades(target),
  };
}

/** The bands of a target as shaded stretches. */
export function bandShades(target: Target): NonNullable<Plot['bands']> {
  const bands = bandsOf(target);
  return bands.map(({ from, to, weight = 1 }) => ({
    from,
    to,
    name: bands.length === 1 ? 'band' : `band ×${weight}`,
  }));
}

/** A figure of points, volumetric efficiency unless told, as a smooth line where a curve is resolved; nothing elsewhere. */
export function smoothLine(
  curve: Omit<LengthCurve, 'length'>,
  asked: { speeds: readonly number[]; target: Target },
  quantity: Quantity = EFFICIENCY,
  figure: (outcome: PointOutcome) => number | undefined = efficiencyOf,
): NonNullable<Series['line']> {
  if (!curve.resolved) return [];
  const points = allPoints(curve);
  const xs = points.map(({ speed }) => speed);
  const ys = points.map((one) => figure(one) ?? Number.NaN);
  return rangesOf(asked, curve.resolved).map((range) => {
    const line = drawnLine(xs, ys, range);
    return { xs: line.xs, ys: plotted(quantity, line.ys) };
  });
}

/** The smooth curve through points of rising speed [rpm], every few rpm of a range within them. */
export function drawnLine(
  speeds: readonly number[],
  values: readonly number[],
  { from, to }: { from: number; to: number },
): { xs: number[]; ys: number[] } {
  const count = Math.ceil((to - from) / DRAWN);
  const xs = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  return { xs, ys: smoothAt(speeds, values, xs) };
}
