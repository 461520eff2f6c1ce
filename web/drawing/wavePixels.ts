/** Pressure along the intake over the crank angle as pixels: valve left, later above. */
import type { Trace } from '../../sim/index.ts';
import { CYCLE } from './crank.ts';
import { rowAt } from './pressure.ts';

/** The part of the cycle on show [deg]. */
export interface Window {
  from: number;
  to: number;
}

/** Room before the intake opens and after it closes [deg]. */
const [BEFORE, AFTER] = [40, 70];

export function shownWindow({ intakeEvents: { open, close } }: Trace): Window {
  if (open > close) return { from: 0, to: CYCLE };
  return { from: Math.max(0, open - BEFORE), to: Math.min(CYCLE, close + AFTER) };
}

interface PixelOptions {
  /** Pressure of the still air [Pa]. */
  still: number;
  /** Below, at and above the still air, as `#rrggbb`. */
  colours: readonly [string, string, string];
  columns: number;
}

export function wavePixels(
  trace: Trace,
  { from, to }: Window,
  { still, colours, columns }: PixelOptions,
): ImageData {
  const [first, last] = [rowAt(trace, from), rowAt(trace, to)];
  const rows = trace.wave.pressure.slice(first, last + 1);
  const reach = Math.max(1, ...rows.flat().map((p) => Math.abs(p - still)));
  const [low, mid, high] = colours.map(rgb) as [Rgb, Rgb, Rgb];
  const image = new ImageData(columns, rows.length);
  const places = placesOf(trace.wave.distance, columns);
  rows.forEach((row, r) => {
    places.forEach(({ cell, share }, c) => {
      const p = row[cell]! * (1 - share) + (row[cell + 1] ?? row[cell]!) * share;
      const level = (p - still) / reach;
      const [end, t] = [level < 0 ? low : high, Math.min(1, Math.abs(level))];
      const at = 4 * ((rows.length - 1 - r) * columns + c);
      for (let k = 0; k < 3; k++) image.data[at + k] = mid[k]! + t * (end[k]! - mid[k]!);
      image.data[at + 3] = 255;
    });
  });
  return image;
}

/** For each column from the valve to the rim, the cell at or before it and how far it lies beyond. */
function placesOf(distance: readonly number[], columns: number) {
  const end = distance[distance.length - 1]!;
  return Array.from({ length: columns }, (_, c) => {
    const at = end * (1 - (c + 0.5) / columns);
    const cell = Math.max(
      0,
      distance.findLastIndex((d) => d <= at),
    );
    const next = distance[cell + 1];
    const span = next === undefined ? 1 : next - distance[cell]!;
    return { cell, share: Math.min(Math.max((at - distance[cell]!) / span, 0), 1) };
  });
}

type Rgb = [number, number, number];

function rgb(hex: string): Rgb {
  return [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16)) as Rgb;
}
