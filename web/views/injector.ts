/** Colours, dashes and columns that the views of the injectors share. */
import type { Data } from 'plotly.js-cartesian-dist-min';
import type { PlacementStudy, PointOutcome, PointResult } from '../../sim/index.ts';
import { isFailure } from '../../sim/index.ts';
import type { Look } from './look.ts';

export type Shown = 'near' | 'above' | 'both' | 'none';

export const PLACE_NAME: Record<Shown, string> = {
  none: 'no spray',
  near: 'near the valve',
  above: 'above the trumpet',
  both: 'both, staged as in the file',
};

const PLACE_LINE: Record<Shown, { dash: string; width: number; symbol: string }> = {
  none: { dash: 'dot', width: 1.5, symbol: 'x-thin-open' },
  near: { dash: 'dot', width: 2, symbol: 'square' },
  above: { dash: 'solid', width: 3, symbol: 'circle' },
  both: { dash: 'dash', width: 2, symbol: 'diamond' },
};

export function placeColor(place: Shown, look: Look): string {
  const { now, best, hand } = look.role;
  return { none: look.quiet, near: now, above: best, both: hand }[place];
}

export type Spray = NonNullable<PointResult['spray']>;

/** One figure of a point; undefined where it failed or has no spray. */
export function figureOf(
  outcome: PointOutcome,
  figure: (point: PointResult) => number | undefined,
): number | undefined {
  return isFailure(outcome) ? undefined : figure(outcome);
}

export function placeLine(
  place: Shown,
  { speeds }: Pick<PlacementStudy, 'speeds'>,
  values: readonly (number | undefined)[],
  look: Look,
  name = PLACE_NAME[place],
): Partial<Data> {
  const color = placeColor(place, look);
  const { symbol, ...line } = PLACE_LINE[place];
  return {
    type: 'scatter',
    mode: 'lines+markers',
    name,
    x: speeds,
    y: values.map((value) => value ?? null),
    line: { color, ...line },
    marker: { color, symbol, size: 7 },
  } as unknown as Partial<Data>;
}
