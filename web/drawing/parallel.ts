/**
 * Parallel coordinates of a table: a line a row, an axis a column, each from its least to its greatest value.
 * Drawn with plain lines: plotly's own trace of that name makes functions from text, which the page's policy
 * forbids.
 */
import type { Data, Layout } from 'plotly.js-dist-min';
import { plotted, quantities as q, type Table } from '../../sim/index.ts';
import { baseLayout, type Look, MARGIN, phone } from '../look.ts';
import type { Spans } from '../state/spans.ts';
import type { Figure } from './view.ts';

export interface Axis {
  label: string;
  /** Place of each row, 0 to 1. */
  places: number[];
  /** What stands at some places. */
  marks: { at: number; text: string }[];
  /** What each row has. */
  texts: string[];
}

/** Whether a row lies within every span that is chosen. */
export function isChosen(axes: readonly Axis[], spans: Spans, row: number): boolean {
  return [...spans].every(([k, [low, high]]) => {
    const place = axes[k]?.places[row] ?? 0;
    return place >= low - NEAR && place <= high + NEAR;
  });
}

/** What two places may differ by and be one. */
const NEAR = 1e-6;

/** Columns that have no axis: the mean in the band is the gain once more, a speed is neither better nor worse. */
const LEFT_OUT = /^band_mean|_rpm$/;

/** Every column of a table that differs from row to row. */
export function axesOf(table: Table): Axis[] {
  const cells = (k: number) => table.cells.map((row) => row[k]);
  return table.columns.flatMap((column, k) => {
    const values = cells(k);
    if (column.only === 'files' || column.head === '' || new Set(values).size < 2) return [];
    if (LEFT_OUT.test(column.key)) return [];
    if (values.every((value) => typeof value === 'string')) return [ofWords(column.head, values)];
    return values.every((value) => typeof value === 'number' && Number.isFinite(value))
      ? [ofFigures(column as q.Quantity, values as number[])]
      : [];
  });
}

/**
 * @param by key of the column that colours the lines
 * @param spans of which only rows within all stand out
 */
export function parallel(table: Table, look: Look, by: string, spans: Spans): Figure {
  const cells = (k: number) => table.cells.map((row) => row[k]);
  const axes = axesOf(table);
  const weights = ofFigures(
    q.GAIN,
    cells(table.columns.findIndex(({ key }) => key === by)) as number[],
  );
  const best = table.looks?.indexOf('cut') ?? -1;
  const rows = table.cells.map((_, row) =>
    lineOf(
      axes,
      row,
      isChosen(axes, spans, row)
        ? lineLook(look, weights.places[row]!, row === best)
        : { line: { color: look.quiet, width: 1 }, opacity: 0.15 },
    ),
  );
  return { data: rows, layout: layoutOf(axes, look, spans) };
}

/** Warm above the middle, cold below, fainter near it; the best stands out by width, too. */
function lineLook({ role, wave }: Look, share: number, best: boolean) {
  if (best) return { line: { color: role.best, width: 4 }, opacity: 1 };
  const color = share < 0.5 ? wave[0] : wave[2];
  return { line: { color, width: 1.6 }, opacity: 0.35 + 1.3 * Math.abs(share - 0.5) };
}

function lineOf(axes: readonly Axis[], row: number, drawn: object): Partial<Data> {
  const name = axes.map(({ label, texts }) => `${label}: ${texts[row]}`).join('<br>');
  return {
    type: 'scatter',
    mode: 'lines+markers',
    x: axes.map((_, k) => k),
    y: axes.map(({ places }) => places[row]!),
    ...drawn,
    marker: { size: 6 },
    hovertemplate: `${name}<extra></extra>`,
  } as Partial<Data>;
}

function layoutOf(axes: readonly Axis[], look: Look, spans: Spans): Partial<Layout> {
  const bare = { visible: false, fixedrange: true } as const;
  const note = { showarrow: false, xref: 'x', yref: 'y' } as const;
  const marks = axes.flatMap(({ marks: all }, k) =>
    all.map(({ at, text }) => ({
      ...note,
      x: k,
      y: at,
      text: `\u00a0${text}\u00a0`,
      xanchor: 'left' as const,
      bgcolor: look.paper,
      font: { color: look.quiet, size: 12 },
      xshift: 6,
    })),
  );
  const heads = axes.map(({ label }, k) => ({
    ...note,
    x: k,
    y: 1.08,
    text: inLines(label, phone.matches ? 7 : 12),
    yanchor: 'bottom' as const,
    font: { color: look.ink, size: phone.matches ? 11 : 13 },
  }));
  const uprights = axes.map((_, k) => ({
    type: 'line' as const,
    x0: k,
    x1: k,
    y0: 0,
    y1: 1,
    line: { color: look.line },
  }));
  return {
    ...baseLayout(look, '', ''),
    hovermode: 'closest',
    margin: { ...MARGIN, t: 12, b: 12, ...(phone.matches ? { l: 28, r: 48 } : { l: 70, r: 90 }) },
    xaxis: { ...bare, range: [-0.05, axes.length - 1 + 0.05] },
    yaxis: { ...bare, range: [-0.06, 1.3] },
    shapes: [...uprights, ...[...spans].map(([k, span]) => chosenPart(k, span, look))],
    annotations: [...heads, ...marks],
  } as Partial<Layout>;
}

/** Words in lines of so many letters at most, where no word is longer, so that heads of axes stand clear of each other. */
function inLines(text: string, letters: number): string {
  const lines: string[] = [];
  for (const word of text.split(/(?<=\.)| /)) {
    const last = lines.at(-1);
    const joined = last?.endsWith('.') ? `${last}${word}` : `${last} ${word}`;
    if (last === undefined || joined.length > letters) lines.push(word);
    else lines[lines.length - 1] = joined;
  }
  return lines.join('<br>');
}

/** The part of an axis that is chosen. */
function chosenPart(k: number, [y0, y1]: readonly [number, number], look: Look) {
  const line = { color: look.role.hand, width: 6 };
  return { type: 'line' as const, x0: k, x1: k, y0: y0 - 0.02, y1: y1 + 0.02, line };
}

/** Words at even places, in the order in which they first stand. */
function ofWords(label: string, values: readonly unknown[]): Axis {
  const words = [...new Set(values)].map(String);
  const place = (word: string) => words.indexOf(word) / (words.length - 1);
  const texts = values.map(String);
  return {
    label,
    texts,
    places: texts.map(place),
    marks: words.map((text) => ({ at: place(text), text })),
  };
}

function ofFigures(quantity: q.Quantity, values: readonly number[]): Axis {
  const figures = plotted(quantity, values);
  const [low, high] = [Math.min(...figures), Math.max(...figures)];
  const texts = values.map((value) => q.shown(quantity, value));
  const marks = [low, high].map((end, at) => ({ at, text: texts[figures.indexOf(end)]! }));
  return {
    label: q.headed(quantity),
    texts,
    places: figures.map((value) => (value - low) / (high - low || 1)),
    marks,
  };
}
