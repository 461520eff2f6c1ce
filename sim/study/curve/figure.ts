/** Curves against speed as a plot, the bands of the target shaded. */
import { bandsOf, scores, type Target } from '../../decision/target.ts';
import { axes, type Plot, plotted, type Series } from '../../report/plot.ts';
import { EFFICIENCY, headed, SPEED } from '../../report/quantities.ts';
import type { PointOutcome } from '../../sweep/runner.ts';

/** A curve with what it is called and stands for. */
export interface NamedCurve extends Pick<Series, 'name' | 'look'> {
  outcomes: readonly PointOutcome[];
}

/** Volumetric efficiency of each curve. */
export function fillingPlot(
  curves: readonly NamedCurve[],
  speeds: readonly number[],
  target: Target,
): Plot {
  const series = curves.map(({ name, look, outcomes }) => {
    const ys = plotted(EFFICIENCY, scores(outcomes, 'volumetric-efficiency'));
    return { name, look, xs: speeds, ys };
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
