/** Runner, bar and sensor over a cycle; ripple over speed; ripple against lag; the mean over the plate. */

import type { TriedBar } from '../../acoustics/barTrial.ts';
import { axes, type Plot, type PlotLook, plotted, type Series } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import type { SignalStudy } from './compute.ts';
import { ALONE, ANGLE, LAG, MEAN, RIPPLE } from './tables.ts';
import type { SignalPoint } from './tapped.ts';

const LOOKS: readonly PlotLook[] = ['now', 'cut', 'third', 'other'];

/** One cycle at the first point, which is idle, with the bar fitted. */
export function cyclePlot({ points }: SignalStudy): Plot {
  const { joined, speed, angle } = points[0]!;
  const line = (name: string, values: readonly number[], look: PlotLook): Series => ({
    name,
    look,
    xs: values.map((_, i) => i),
    ys: plotted(q.PRESSURE, values),
  });
  const [first, next] = joined.runners;
  return {
    id: 'signal-cycle',
    caption: `One cycle at ${q.told(q.SPEED, speed)}, plate at ${q.told(ANGLE, angle)}`,
    description:
      'Pressure against crank angle behind two plates, in the bar and at its sensor, with the bar fitted.',
    ...axes(q.CRANK_ANGLE, q.PRESSURE),
    series: [
      line('behind the first plate', first!, 'other'),
      ...(next ? [line('the next to fire', next, 'third')] : []),
      line('in the bar', joined.inside, 'now'),
      line('at the sensor', joined.sensor, 'cut'),
    ],
  };
}

/** Angles that are drawn: of many, four spread over them. */
function drawn(values: readonly number[]): number[] {
  const most = LOOKS.length;
  if (values.length <= most) return [...values];
  const step = (values.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => values[Math.round(i * step)]!);
}

function lines(
  study: SignalStudy,
  by: 'speed' | 'angle',
  x: (point: SignalPoint) => number,
  y: (point: SignalPoint) => number,
): Pick<Series, 'name' | 'look' | 'xs' | 'ys'>[] {
  const { points } = study;
  const [quantity, words] = by === 'speed' ? [q.SPEED, 'at'] : [ANGLE, 'plate at'];
  return drawn([...new Set(points.map((point) => point[by]))]).map((value, i) => {
    const own = points.filter((point) => point[by] === value);
    return {
      name: `${words} ${q.told(quantity, value)}`,
      look: LOOKS[i]!,
      xs: own.map(x),
      ys: own.map(y),
    };
  });
}

export function ripplePlot(study: SignalStudy, of: 'bar' | 'alone'): Plot {
  const quantity = of === 'bar' ? RIPPLE : ALONE;
  const where = of === 'bar' ? 'on the bar' : 'on one runner alone';
  const scaled = ({ alone, joined }: SignalPoint) =>
    plotted(quantity, [of === 'bar' ? joined.ripple : alone.ripple])[0]!;
  return {
    id: `signal-ripple-${of}`,
    caption: `Ripple at the sensor ${where}`,
    description: `Ripple, peak to peak, at a sensor ${where} over engine speed, a line a plate angle.`,
    ...axes(q.SPEED, quantity),
    series: lines(study, 'angle', ({ speed }) => speed, scaled),
  };
}

/** Ripple at the sensor of the bar, a tile a speed and plate angle. */
export function rippleMap({ points }: SignalStudy): Plot {
  const places = (of: (point: SignalPoint) => number) =>
    [...new Set(points.map(of))].sort((a, b) => a - b);
  const [speeds, angles] = [places(({ speed }) => speed), places(({ angle }) => angle)];
  const ripple = (speed: number, angle: number) =>
    points.find((point) => point.speed === speed && point.angle === angle)?.joined.ripple;
  const worst = points.reduce((far, one) => (one.joined.ripple > far.joined.ripple ? one : far));
  return {
    id: 'signal-map',
    caption: 'Ripple at the sensor over speed and plate angle',
    description:
      'A map of the ripple at the sensor on the bar, peak to peak, over speed and plate angle; it is greatest at ' +
      `${q.told(q.SPEED, worst.speed)} and ${q.told(ANGLE, worst.angle)}: ${q.told(RIPPLE, worst.joined.ripple)}.`,
    ...axes(q.SPEED, ANGLE),
    series: [],
    tiles: {
      xs: speeds,
      ys: angles,
      values: angles.map((angle) =>
        plotted(
          RIPPLE,
          speeds.map((speed) => ripple(speed, angle)),
        ),
      ),
      label: q.headed(RIPPLE),
      decimals: 1,
    },
  };
}

export function loadPlot(study: SignalStudy): Plot {
  return {
    id: 'signal-load',
    caption: 'Mean pressure behind the plates',
    description: 'Mean pressure behind the plates over the plate angle, a line a speed.',
    ...axes(ANGLE, MEAN),
    series: lines(
      study,
      'speed',
      ({ angle }) => angle,
      ({ mean }) => plotted(MEAN, [mean])[0]!,
    ),
  };
}

/** Bars that swing more than some times the steadiest are no choice, and would flatten the picture. */
const steadier = (rows: readonly TriedBar[]) =>
  rows.filter(({ ripple }) => ripple <= MOST_TIMES * Math.min(...rows.map((one) => one.ripple)));
const MOST_TIMES = 12;

/** Ripple against lag of what no other beats, the bar of the file beside it. */
export function choicePlot({ search, volumes, bar, spec }: SignalStudy): Plot {
  const own = volumes.filter((one) => one.bar.volume === bar.volume);
  const line = (name: string, rows: readonly TriedBar[], look: PlotLook): Series => ({
    name,
    look,
    xs: plotted(
      LAG,
      rows.map(({ lag }) => lag),
    ),
    ys: plotted(
      RIPPLE,
      rows.map(({ ripple }) => ripple),
    ),
  });
  return {
    id: 'signal-choice',
    caption: 'Ripple at the worst point against lag',
    description:
      'Hoses, jets and volumes that no other of those tried beats in ripple and lag, and the bar of the file.',
    ...axes(LAG, RIPPLE),
    series: [
      line('unbeaten', steadier(search.unbeaten), 'cut'),
      ...(own.some(({ lag }) => Number.isFinite(lag)) ? [line('as in the file', own, 'now')] : []),
    ],
    marks: [
      { axis: 'x', at: plotted(LAG, [spec.mostLag])[0]!, name: 'lag allowed', look: 'other' },
    ],
  };
}
