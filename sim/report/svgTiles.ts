/** Tiles as plain SVG: each has its figure in it, so that it reads without colour. */
import { html, type Markup } from './markup.ts';
import { fixed } from './numbers.ts';
import type { Plot, Tiles } from './plot.ts';
import { tones } from './tint.ts';

const WIDTH = 760;
const ROW = 40;
const FRAME = { left: 70, right: 20, top: 30, bottom: 50 };

export function svgTiles({ description, xLabel, yLabel }: Plot, tiles: Tiles): Markup {
  const { xs, ys, values, label } = tiles;
  const wide = (WIDTH - FRAME.left - FRAME.right) / xs.length;
  const bottom = FRAME.top + ROW * ys.length;
  const shade = shades(values);
  const left = (i: number) => FRAME.left + i * wide;
  const top = (j: number) => bottom - (j + 1) * ROW;
  const cell = (value: number, i: number, j: number) => {
    if (!Number.isFinite(value)) return html``;
    const { ground, ink } = shade(value);
    return html`<rect x="${px(left(i))}" y="${px(top(j))}" width="${px(wide - 1)}" height="${ROW - 1}" fill="${ground}"/>
<text x="${px(left(i) + wide / 2)}" y="${px(top(j) + ROW / 2 + 4)}" text-anchor="middle" style="fill:${ink}">${fixed(value, tiles.decimals)}</text>`;
  };
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${bottom + FRAME.bottom}" role="img" aria-label="${description}">
<text x="${FRAME.left}" y="18">${label}</text>
${values.map((row, j) => html`${row.map((value, i) => cell(value, i, j))}`)}
${xs.map((x, i) => html`<text x="${px(left(i) + wide / 2)}" y="${bottom + 18}" text-anchor="middle">${x}</text>`)}
${ys.map((y, j) => html`<text x="${FRAME.left - 8}" y="${px(top(j) + ROW / 2 + 4)}" text-anchor="end">${y}</text>`)}
<text x="${px((FRAME.left + WIDTH - FRAME.right) / 2)}" y="${bottom + 42}" text-anchor="middle">${xLabel}</text>
<text transform="translate(14 ${px((FRAME.top + bottom) / 2)}) rotate(-90)" text-anchor="middle">${yLabel}</text>
</svg>`;
}

/** Ground and ink by where a value lies among all. */
function shades(values: Tiles['values']) {
  const known = values.flat().filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return (value: number) => tones(high > low ? (value - low) / (high - low) : 0.5);
}

const px = (value: number) => fixed(value, 1);
