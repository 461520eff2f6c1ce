/** Where along the intake the fuel of the outer injector turns to vapour. */
import type { Data, Layout } from 'plotly.js-cartesian-dist-min';
import { fixed, percent, rpm } from '../format.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';
import { figureOf } from './injector.ts';
import { baseLayout } from './look.ts';
import type { View } from './view.ts';

export const injectorEvaporationView: View = {
  id: 'injector-evaporation',
  question: 'Where does the fuel turn to vapour?',
  width: 'half',
  height: 400,
  asked: true,
  applies: isPlaced,
  reading: () =>
    `All fuel from above the trumpet, at ${rpm(placed()!.speeds.at(-1)!)}. From the valve at the left to the mouth and beyond: the share of the fuel injected that has evaporated by there, running inwards.`,
  summary: () => {
    const { share } = along();
    return `${percent(100 * Math.max(0, ...share), 0)} has evaporated before the valve.`;
  },
  ready: () => placed() !== undefined,
  figure: (picture, look) => {
    const { distance, share } = along();
    const layout = baseLayout(look, 'distance to the valve [mm]', 'evaporated [% of the fuel]');
    const { intake } = picture.scenario.engine;
    const face = (intake.port.length + intake.runner.length + intake.throttle.length) * 1e3;
    const mouth = face + intake.trumpet.length * 1e3;
    const mark = (x: number) => ({
      type: 'line' as const,
      yref: 'paper' as const,
      x0: x,
      x1: x,
      y0: 0,
      y1: 1,
      line: { color: look.quiet, width: 1, dash: 'dot' as const },
    });
    const label = (x: number, text: string) => ({
      text,
      x,
      y: 1,
      yref: 'paper' as const,
      xanchor: 'right' as const,
      xshift: -4,
      yanchor: 'top' as const,
      showarrow: false,
      font: { size: 12, color: look.quiet },
    });
    const line = {
      type: 'scatter',
      mode: 'lines',
      x: distance.map((x) => x * 1e3),
      y: share.map((value) => 100 * value),
      line: { color: look.role.best, width: 3 },
      fill: 'tozeroy',
      fillcolor: `${look.role.best}22`,
      hovertemplate: '%{y:.1f} %<extra></extra>',
    } as unknown as Partial<Data>;
    return {
      data: [line],
      layout: {
        ...layout,
        xaxis: { ...layout.xaxis, rangemode: 'tozero' },
        yaxis: { ...layout.yaxis, rangemode: 'tozero' },
        shapes: [mark(face), mark(mouth)],
        annotations: [label(face, 'body face'), label(mouth, 'mouth')],
      } as Partial<Layout>,
    };
  },
  table: () => {
    const { distance, share } = along();
    return {
      columns: [
        { name: 'distance to the valve', unit: 'mm', decimals: 1 },
        { name: 'evaporated by there', unit: '% of the fuel', decimals: 2 },
      ],
      rows: distance.map((x, i) => [Number(fixed(x * 1e3, 3)), 100 * share[i]!]),
    };
  },
  watch: () => [placement.state.value],
};

/** Distance to the valve [m] and the running sum of vapour from outside in [-]. */
function along(): { distance: number[]; share: number[] } {
  const outcome = placed()!.outcomes.above.at(-1)!;
  let at: { distance: number[]; share: number[] } = { distance: [], share: [] };
  figureOf(outcome, ({ spray }) => {
    if (spray) at = spray.along;
    return undefined;
  });
  let sum = 0;
  return {
    distance: at.distance,
    share: at.share.map((value) => {
      sum += value;
      return sum;
    }),
  };
}
