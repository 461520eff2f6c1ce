/**
 * What is measured, as a small drawing: walls, and a dimension line for each figure. Sketches show no sizes of
 * this engine; they say from where to where a figure counts. Valve left, open air right, as everywhere.
 */

/** A straight line [x1, y1, x2, y2]. */
export type Line = readonly [number, number, number, number];

export interface Sketch {
  /** What it shows, in a word or two. */
  name: string;
  /** Paths of what is drawn: walls, and what stands behind them. */
  walls: string;
  faint?: string;
  /** Dimension lines of each figure, by the last part of its key. */
  measures: Readonly<Record<string, readonly Line[]>>;
  words?: readonly { x: number; y: number; text: string }[];
}

/** Width and height of every sketch. */
export const SIZE = { width: 240, height: 92 } as const;

/** A path through points. */
export const through = (points: readonly (readonly [number, number])[], closed = false) =>
  `M${points.map(([x, y]) => `${x} ${y}`).join(' L')}${closed ? ' Z' : ''}`;
