/**
 * Plots as plain SVG: readable without colour, since every line has its own dash and its name
 * at its end, and without a network, since there is nothing to load.
 */
import { log10 } from '../elementary/powers.ts';
import { inTwo } from './inTwo.ts';
import { html, Markup } from './markup.ts';
import { fixed } from './numbers.ts';
import type { Mark, Plot, Series } from './plot.ts';
import { svgTiles } from './svgTiles.ts';

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

/** The plot as an SVG element. */
export function svgPlot(plot: Plot): Markup {
  const { series, description, tiles } = plot;
  if (tiles) return svgTiles(plot, tiles);
  const xs = series.flatMap((one) => one.xs);
  const levels = (plot.marks ?? []).flatMap(({ axis: along, at }) => (along === 'y' ? [at] : []));
  const ys = [
    ...series.flatMap((one) => [
      ...one.ys,
      ...(one.line ?? []).flatMap(({ ys: along }) => along),
      ...(one.from ?? []),
      ...(one.upTo ?? []),
    ]),
    ...levels,
  ].filter(Number.isFinite);
  if (ys.length === 0) return html`<p>There is no figure to draw.</p>`;
  const x = axis(Math.min(...xs), Math.max(...xs), FRAME.left, RIGHT, false);
  const y = axis(Math.min(...ys), Math.max(...ys), BOTTOM, FRAME.top, true);
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${description}">
${bandMarkup(plot, x)}
${axesMarkup(plot, x, y)}
${marksMarkup(plot, x, y)}
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
    decimals: Math.max(0, -Math.floor(log10(step) + 1e-9)),
    at: (value) => from + ((value - bottom) / (top - bottom || 1)) * (to - from),
  };
}

/** 1, 2 or 5 times a power of ten, at least the given step. */
function niceStep(step: number): number {
  const power = Number(`1e${Math.floor(log10(step))}`);
  const factor = [1, 2, 5, 10].find((nice) => nice * power >= step * (1 - 1e-9))!;
  return factor * power;
}

function bandMarkup({ bands = [] }: Plot, x: Axis): Markup {
  const shaded = bands.map(({ from, to, name }) => {
    const [left, right] = [x.at(from), x.at(to)];
    return html`<rect class="band" x="${px(left)}" y="${FRAME.top}" width="${px(right - left)}" height="${BOTTOM - FRAME.top}"/>
<text class="bandName" x="${px((left + right) / 2)}" y="${FRAME.top + 14}" text-anchor="middle">${name}</text>`;
  });
  return html`${shaded}`;
}

function axesMarkup({ xLabel, yLabel }: Plot, x: Axis, y: Axis): Markup {
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

function marksMarkup({ marks = [] }: Plot, x: Axis, y: Axis): Markup {
  const lines = marks.map(({ axis, at, name, look }: Mark) => {
    const [px0, py0] = axis === 'x' ? [x.at(at), FRAME.top] : [FRAME.left, y.at(at)];
    const [px1, py1] = axis === 'x' ? [x.at(at), BOTTOM] : [RIGHT, y.at(at)];
    const late = axis === 'x' && px0 > (FRAME.left + 2 * RIGHT) / 3;
    return html`<line class="line ${look}" x1="${px(px0)}" x2="${px(px1)}" y1="${px(py0)}" y2="${px(py1)}"/>
<text class="name ${look}" x="${px(px0 + (late ? -4 : 4))}" y="${px(py0 + (axis === 'x' ? 30 : -5))}"${new Markup(late ? ' text-anchor="end"' : '')}>${name}</text>`;
  });
  return html`${lines}`;
}

/** The strip around a line, where it has one. */
function stripMarkup({ xs, from, upTo, look }: Series, x: Axis, y: Axis): Markup {
  if (!from || !upTo) return html``;
  const along = (ys: readonly number[]) =>
    ys.map((value, i) => `${px(x.at(xs[i]!))} ${px(y.at(value))}`);
  const edge = [...along(upTo), ...along(from).reverse()];
  return html`<path class="strip ${look}" d="M${edge.join(' L')} Z"/>`;
}

/** More points than these stand too close for marks. */
const MANY = 60;

function seriesMarkup(one: Series, x: Axis, y: Axis): Markup {
  const { xs, ys, look, line = [one] } = one;
  const path = line.map((part) => pathOf(part, x, y)).join(' ');
  const dots = ys.map((value, i) =>
    Number.isFinite(value) && ys.length <= MANY
      ? html`<circle class="dot ${look}" cx="${px(x.at(xs[i]!))}" cy="${px(y.at(value))}" r="${one.line ? 2.5 : 4}"/>`
      : html``,
  );
  return html`${stripMarkup(one, x, y)}<path class="line ${look}" d="${path.trim()}"/>
${dots}`;
}

/** A line through points; a gap where one has no figure. */
function pathOf({ xs, ys }: Pick<Series, 'xs' | 'ys'>, x: Axis, y: Axis): string {
  let pen = 'M';
  const steps = ys.map((value, i) => {
    if (!Number.isFinite(value)) {
      pen = 'M';
      return '';
    }
    const step = `${pen}${px(x.at(xs[i]!))} ${px(y.at(value))}`;
    pen = 'L';
    return step;
  });
  return steps.join(' ').trim();
}

/** Letters of a name that stand in the room right of the lines, and from one of its lines to the next [px]. */
const LETTERS = 18;
const LINE = 14;

/** Each name to the right of its line, or of its dot; pushed apart where they would overlap. */
function nameMarkup(series: readonly Series[], x: Axis, y: Axis): Markup {
  const least = 16;
  const ends = series
    .map((one) => ({ ...one, last: one.ys.findLastIndex(Number.isFinite) }))
    .filter(({ last, name }) => last >= 0 && name !== '')
    .map(({ xs, ys, last, name, look }) => {
      const lines = inTwo(name, LETTERS);
      const y0 = y.at(ys[last]!) + 4 - ((lines.length - 1) * LINE) / 2;
      return { lines, look, x: x.at(xs[last]!) + 10, y: y0 };
    })
    .sort((a, b) => a.y - b.y);
  ends.forEach((end, i) => {
    const above = ends[i - 1];
    if (above && Math.abs(above.x - end.x) < 100)
      end.y = Math.max(end.y, above.y + least + (above.lines.length - 1) * LINE);
  });
  const names = ends.map(({ lines: [first, second], look, x: at, y: down }) => {
    const under = second && html` <tspan x="${px(at)}" dy="${LINE}">${second}</tspan>`;
    return html`<text class="name ${look}" x="${px(at)}" y="${px(down)}">${first!}${under ?? ''}</text>`;
  });
  return html`${names}`;
}

/** A coordinate, to a tenth of a pixel. */
function px(value: number): string {
  return fixed(value, 1);
}
