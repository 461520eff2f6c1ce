/**
 * A view answers one question of the reader with one plot and the numbers behind it. A new view is a
 * file in views and a line in its index.ts; heading, picture and table export come with it.
 */

import type { Data, Layout } from 'plotly.js-dist-min';
import type { ComponentType } from 'preact';
import type { Plot } from '../../sim/index.ts';
import type { Look } from '../look.ts';
import type { Picture } from '../state/picture.ts';
import type { Table } from './table.ts';

export interface Figure {
  data: Partial<Data>[];
  layout: Partial<Layout>;
}

export interface View {
  /** Name of exported files. */
  id: string;
  /** The reader's question, which is the heading. */
  question: string;
  /** One or two sentences: how to read the plot and what it shows now. */
  reading(picture: Picture): string;
  /** What the plot shows, in a few words for those who do not see it. */
  summary(picture: Picture): string;
  /** @param height of the plot [px] */
  figure(picture: Picture, look: Look, height: number): Figure;
  /** The same as plain data, drawn at once while the plotting library is on its way. */
  plain?(picture: Picture): Plot;
  /** The numbers of the plot; also what is saved as CSV. */
  table(picture: Picture): Table;
  /** Whether the scenario poses the question at all; always where absent. */
  applies?(picture: Picture): boolean;
  /** Whether it is computed only when the reader asks, so that no room is kept for the plot. */
  asked?: boolean;
  /** Whether there is anything to show yet; always where absent. */
  ready?(picture: Picture): boolean;
  /** A point of the plot was chosen with a pointer. */
  onPick?(picture: Picture, x: number, y: number): void;
  /** A pointer is held down over the plot, whose axes have fixed ranges; `begins` where it was put down. */
  onDrag?(picture: Picture, x: number, y: number, begins: boolean): void;
  /** Controls of this view alone, above and below the plot. */
  Above?: ComponentType;
  Below?: ComponentType;
  /** What is drawn over the plot. */
  Over?: ComponentType<{ height: number }>;
  /** Whether `Over` draws the length that is tried, so that the plot itself stays as it is meanwhile. */
  overHand?: boolean;
  /** State of its own that the plot depends on; the plot is drawn again when it changes. */
  watch?(): readonly unknown[];
  /** The view has come near the screen: time to compute what it alone needs. */
  onNear?(): void;
  /** `wide` spans the page, `half` shares the row on wide screens. */
  width: 'wide' | 'half';
  /** Whether the plot shows the three lengths as lines, so that a key to them belongs above it. */
  lines?: boolean;
  /** Height of the plot [px]; 380 where absent. */
  height?: number;
}
