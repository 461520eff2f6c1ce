/**
 * Line charts as plain SVG: readable without colour, since every line has its own dash and its name
 * at its end, and without a network, since there is nothing to load.
 */
import { fixed } from './figures.ts';
import { html, type Markup } from './markup.ts';

export interface Series {
  name: string;
  xs: readonly number[];
  /** NaN leaves a gap. */
  ys: readonly number[];
  /** Class that gives colour and dash. */
  look: 'now' | 'cut' | 'other';
}

export interface Chart {
  /** What the picture shows, in one sentence, for those who cannot see it. */
  description: string;
  xLabel: string;
  yLabel: string;
  series: readonly Series[];
  /** Stretches of x that are shaded. */
  bands?: readonly { from: number; to: number; name: string }[];
}

const WIDTH = 760;
const HEIGHT = 360;
const FRAME = { left: 58, right: 150, top: 16, bottom: 46 };
const RIGHT = WIDTH - FRAME.right;
const BOTTOM = HEIGHT - FRAME.bottom;

/** About how many ticks an axis has. */
const TICKS = 6;

interface Axis {
  low: number;
  high: number;
  ticks: number[];
  decimals: number;
  at(value: number): number;
}

/** The chart as an SVG element. */
export function lineChart(chart: Chart): Markup {
  const { series, description } = chart;
  const xs = series.flatMap((one) => one.xs);
  const ys = series.flatMap((one) => one.ys).filter(Number.isFinite);
  if (ys.length === 0) return html`<p>There is no figure to draw.</p>`;
  const x = axis(Math.min(...xs), Math.max(...xs), FRAME.left, RIGHT, false);
  const y = axis(Math.min(...ys), Math.max(...ys), BOTTOM, FRAME.top, true);
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${description}">
${bandMarkup(chart, x)}
${axesMarkup(chart, x, y)}
${series.map((one) => seriesMarkup(one, x, y))}
${nameMarkup(series, x, y)}
</svg>`;
}

function axis(low: number, high: number, from: number, to: number, padded: boolean): Axis {
  const span = high - low || Math.abs(high) || 1;
  const step = niceStep(span / TICKS);
  const [bottom, top] = padded
    ? [Math.floor(low / step) * step, Math.ceil(high / step) * step || step]
    : [low, high > low ? high : low + span];
  const first = Math.ceil(bottom / step - 1e-9);
  const count = Math.floor(top / step + 1e-9) - first;
  return {
    low: bottom,
    high: top,
    ticks: Array.from({ length: count + 1 }, (_, i) => (first + i) * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
    at: (value) => from + ((value - bottom) / (top - bottom || 1)) * (to - from),
  };
}

/** 1, 2 or 5 times a power of ten, at least the given step. */
function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const factor = [1, 2, 5, 10].find((nice) => nice * power >= step * (1 - 1e-9))!;
  return factor * power;
}

function bandMarkup({ bands = [] }: Chart, x: Axis): Markup {
  const shaded = bands.map(({ from, to, name }) => {
    const [left, right] = [x.at(from), x.at(to)];
    return html`<rect class="band" x="${px(left)}" y="${FRAME.top}" width="${px(right - left)}" height="${BOTTOM - FRAME.top}"/>
<text class="bandName" x="${px((left + right) / 2)}" y="${FRAME.top + 14}" text-anchor="middle">${name}</text>`;
  });
  return html`${shaded}`;
}

function axesMarkup({ xLabel, yLabel }: Chart, x: Axis, y: Axis): Markup {
  const across = y.ticks.map(
    (
      tick,
    ) => html`<line class="grid" x1="${FRAME.left}" x2="${RIGHT}" y1="${px(y.at(tick))}" y2="${px(y.at(tick))}"/>
<text x="${FRAME.left - 8}" y="${px(y.at(tick) + 4)}" text-anchor="end">${fixed(tick, y.decimals)}</text>`,
  );
  const along = x.ticks.map(
    (
      tick,
    ) => html`<line class="tick" x1="${px(x.at(tick))}" x2="${px(x.at(tick))}" y1="${BOTTOM}" y2="${BOTTOM + 5}"/>
<text x="${px(x.at(tick))}" y="${BOTTOM + 19}" text-anchor="middle">${fixed(tick, x.decimals)}</text>`,
  );
  return html`${across}
${along}
<line class="tick" x1="${FRAME.left}" x2="${RIGHT}" y1="${BOTTOM}" y2="${BOTTOM}"/>
<text x="${px((FRAME.left + RIGHT) / 2)}" y="${HEIGHT - 8}" text-anchor="middle">${xLabel}</text>
<text transform="translate(14 ${px((FRAME.top + BOTTOM) / 2)}) rotate(-90)" text-anchor="middle">${yLabel}</text>`;
}

function seriesMarkup({ xs, ys, look }: Series, x: Axis, y: Axis): Markup {
  let pen = 'M';
  const path = ys.map((value, i) => {
    if (!Number.isFinite(value)) {
      pen = 'M';
      return '';
    }
    const step = `${pen}${px(x.at(xs[i]!))} ${px(y.at(value))}`;
    pen = 'L';
    return step;
  });
  const dots = ys.map((value, i) =>
    Number.isFinite(value)
      ? html`<circle class="dot ${look}" cx="${px(x.at(xs[i]!))}" cy="${px(y.at(value))}" r="4"/>`
      : html``,
  );
  return html`<path class="line ${look}" d="${path.join(' ').trim()}"/>
${dots}`;
}

/** Each name to the right of its line, or of its dot; pushed apart where they would overlap. */
function nameMarkup(series: readonly Series[], x: Axis, y: Axis): Markup {
  const least = 16;
  const ends = series
    .map((one) => ({ ...one, last: one.ys.findLastIndex(Number.isFinite) }))
    .filter(({ last, name }) => last >= 0 && name !== '')
    .map(({ xs, ys, last, name, look }) => ({
      name,
      look,
      x: x.at(xs[last]!) + 10,
      y: y.at(ys[last]!) + 4,
    }))
    .sort((a, b) => a.y - b.y);
  ends.forEach((end, i) => {
    const above = ends[i - 1];
    if (above && Math.abs(above.x - end.x) < 100) end.y = Math.max(end.y, above.y + least);
  });
  const names = ends.map(
    (end) =>
      html`<text class="name ${end.look}" x="${px(end.x)}" y="${px(end.y)}">${end.name}</text>`,
  );
  return html`${names}`;
}

/** A coordinate, to a tenth of a pixel. */
function px(value: number): string {
  return fixed(value, 1);
}
