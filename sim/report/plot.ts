/**
 * A plot as plain data, from which the report draws SVG and the page its own picture alike. Values are
 * in the units of the axes.
 */
import { headed, type Quantity } from './quantities.ts';

/** What a line stands for: the one recommended, the one there is, another, or the backdrop. */
export type PlotLook = 'cut' | 'now' | 'third' | 'other';

export interface Series {
  name: string;
  xs: readonly number[];
  /** NaN leaves a gap. */
  ys: readonly number[];
  /** The curve itself where it is known between its points; straight from point to point where absent. */
  line?: readonly Pick<Series, 'xs' | 'ys'>[];
  /** What gives colour, dash and mark. */
  look: PlotLook;
  /** Ends of a strip that is filled around the line. */
  from?: readonly number[];
  upTo?: readonly number[];
}

/** A line across the whole plot at one place of an axis. */
export interface Mark {
  axis: 'x' | 'y';
  at: number;
  name: string;
  look: PlotLook;
}

/** Figures over two quantities, a tile each; places stand evenly, whatever lies between them. */
export interface Tiles {
  /** What stands along the axes, from left to right and from below upwards. */
  xs: readonly number[];
  ys: readonly number[];
  /** [y][x], in the unit of the tiles; NaN leaves a gap. */
  values: readonly (readonly number[])[];
  /** What a tile shows, with its unit. */
  label: string;
  decimals: number;
}

export interface Plot {
  /** Name in addresses and of exported files. */
  id: string;
  caption: string;
  /** What the picture shows, in one sentence, for those who cannot see it. */
  description: string;
  xLabel: string;
  yLabel: string;
  series: readonly Series[];
  /** Stretches of x that are shaded. */
  bands?: readonly { from: number; to: number; name: string }[];
  marks?: readonly Mark[];
  /** In place of lines. */
  tiles?: Tiles;
}

/** A figure in SI in the unit of its axis; a gap where there is none. */
export function plotted(quantity: Quantity, values: readonly (number | undefined)[]): number[] {
  const { times = 1, shown = times } = quantity;
  return values.map((value) => (value === undefined ? Number.NaN : shown * value));
}

/** Labels of both axes. */
export function axes(x: Quantity, y: Quantity): Pick<Plot, 'xLabel' | 'yLabel'> {
  return { xLabel: headed(x), yLabel: headed(y) };
}
