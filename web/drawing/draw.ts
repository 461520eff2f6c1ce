/** A plot of a study as the page draws it: the same series, marks and bands as in the report. */
import type { Data, Layout, Shape } from 'plotly.js-dist-min';
import {
  inTwo,
  type Mark,
  type Plot,
  type PlotLook,
  type Series,
  type Tiles,
} from '../../sim/index.ts';
import type { Role } from '../look.ts';
import { baseLayout, type Look, phone, ROLE_LINE } from '../look.ts';
import { ofThrottle } from '../state/throttle.ts';
import type { Figure } from './view.ts';
import { withKey } from './withKey.ts';

/** Whose look on the page a line of a plot has. */
const ROLE: Partial<Record<PlotLook, Role>> = { now: 'now', cut: 'best', third: 'hand' };

/** Told from the dots of what is fitted now where points stand too close for marks. */
const QUIET = { dash: 'dashdot', width: 1.5, symbol: 'x-thin-open' } as const;

const roleLine = (look: PlotLook) => (ROLE[look] ? ROLE_LINE[ROLE[look]] : QUIET);

function lookColor(of: PlotLook, look: Look): string {
  return ROLE[of] ? look.role[ROLE[of]] : look.quiet;
}

/** @param decimals of figures under the pointer */
export function drawn(told: Plot, look: Look, decimals = 1): Figure {
  const plot = ofThrottle(told);
  if (plot.tiles) return tiled(plot, plot.tiles, look);
  const { series, xLabel, yLabel, bands = [], marks = [] } = plot;
  const layout = baseLayout(look, xLabel, inTwo(yLabel, LONGEST).join('<br>'));
  const rows = Math.ceil(series.filter(({ name }) => name !== '').length / 2);
  return {
    data: series.flatMap((one) => lines(one, look)),
    layout: withKey(
      look,
      {
        ...layout,
        xaxis: { ...layout.xaxis, ...ticksOf(plot) },
        // Ticks with decimals are wide: the axis makes room for them before its name.
        yaxis: { ...layout.yaxis, automargin: true, hoverformat: `.${decimals}f` },
        shapes: [
          ...bands.map((band) => shade(band, look)),
          ...marks.map((mark) => rule(mark, look)),
        ],
        annotations: [
          ...bands.map(({ from, to, name }) => label((from + to) / 2, name, look)),
          ...marks.flatMap(({ axis, at, name }) =>
            axis === 'x' && name !== '' ? [{ ...label(at, name, look), bgcolor: look.paper }] : [],
          ),
        ],
      } as Partial<Layout>,
      rows,
    ),
  };
}

/** A crank turns in strokes; other axes have decimals where they want them. */
function ticksOf({ xLabel, series }: Plot) {
  if (xLabel.startsWith('crank angle')) return { dtick: STROKE, range: [0, 4 * STROKE] };
  const short = series.every(({ xs }) => xs.every((x) => Math.abs(x) < 1000));
  return short ? { tickformat: '', ...(phone.matches && { nticks: NARROW }) } : {};
}

/** Ticks of few letters that stand side by side on a phone. */
const NARROW = 6;

/** [deg]. */
const STROKE = 180;

/** Letters of a name that stand beside the lowest plot. */
const LONGEST = 34;

/** Tiles, a figure in each. */
function tiled(
  { xLabel, yLabel }: Plot,
  { xs, ys, values, label: of, decimals }: Tiles,
  look: Look,
) {
  const z = values.map((row) => row.map((value) => (Number.isFinite(value) ? value : null)));
  const layout = baseLayout(look, xLabel, yLabel);
  const ramp = look.ramp.map((color, i) => [i / (look.ramp.length - 1), color]);
  const even = { type: 'category', showgrid: false } as const;
  const data = {
    ...{ type: 'heatmap', x: xs.map(String), y: ys.map(String), z, colorscale: ramp },
    ...{ xgap: 1, ygap: 1, hoverongaps: false, texttemplate: `%{z:.${decimals}f}` },
    colorbar: { thickness: 10, outlinewidth: 0, title: { text: of, side: 'right' } },
    hovertemplate: `%{x}, %{y}: %{z:.${decimals}f}<extra>${of}</extra>`,
  };
  return {
    data: [data as unknown as Partial<Data>],
    layout: {
      ...layout,
      hovermode: 'closest',
      margin: { ...layout.margin, r: 80 },
      xaxis: { ...layout.xaxis, ...even },
      yaxis: { ...layout.yaxis, ...even },
    } as Partial<Layout>,
  };
}

/** The strip of a series, where it has one, then its line. */
function lines(
  { name, xs, ys, look: of, from, upTo, line: known }: Series,
  look: Look,
): Partial<Data>[] {
  const color = lookColor(of, look);
  const { symbol, ...line } = roleLine(of);
  const edge = { type: 'scatter', mode: 'lines', x: xs, showlegend: false, hoverinfo: 'skip' };
  const strip =
    from && upTo
      ? [
          { ...edge, y: upTo, line: { color, width: 1 } },
          { ...edge, y: from, line: { color, width: 1 }, fill: 'tonexty', fillcolor: `${color}33` },
        ]
      : [];
  const main = {
    type: 'scatter',
    mode: known ? 'markers' : xs.length > MANY ? 'lines' : 'lines+markers',
    name,
    x: xs,
    y: ys.map((value) => (Number.isFinite(value) ? value : null)),
    line: { color, ...line },
    marker: { color, symbol, size: known ? 4 : 7 },
    showlegend: name !== '',
  };
  const smooth = (known ?? []).map((part) => ({
    ...edge,
    x: part.xs,
    y: part.ys,
    line: main.line,
  }));
  return [...strip, ...smooth, main] as unknown as Partial<Data>[];
}

/** More points than this stand too close for marks. */
const MANY = 60;

function shade({ from, to }: { from: number; to: number }, look: Look): Partial<Shape> {
  const place = { type: 'rect', xref: 'x', yref: 'paper', layer: 'below' } as const;
  return { ...place, x0: from, x1: to, y0: 0, y1: 1, fillcolor: look.band, line: { width: 0 } };
}

/** A line across the whole plot. */
function rule({ axis, at, look: of }: Mark, look: Look): Partial<Shape> {
  const line = { color: lookColor(of, look), width: 1, dash: 'dash' } as const;
  return axis === 'x'
    ? { type: 'line', yref: 'paper', x0: at, x1: at, y0: 0, y1: 1, line }
    : { type: 'line', xref: 'paper', y0: at, y1: at, x0: 0, x1: 1, line };
}

function label(x: number, text: string, look: Look) {
  return {
    ...{ text, x, y: 1, yref: 'paper', yanchor: 'top', showarrow: false },
    font: { color: look.quiet, size: 12 },
  };
}
