/** Names of curves at their right ends, pushed apart where they would lie over each other. */
import type { Layout } from 'plotly.js-dist-min';
import { type Look, MARGIN, type Role } from '../look.ts';
import { lengthText } from '../state/unit.ts';

interface Ended {
  ys: readonly number[];
}

interface Named extends Ended {
  name: string;
  xs: readonly number[];
}

interface OfLength extends Ended {
  role: Role;
  length: number;
  firstLook?: boolean;
  points: readonly { speed: number }[];
}

/** The plot: values at its foot and head, and its height with margins [px]. */
interface Box {
  range: readonly [number, number];
  height: number;
}

/** How far below the head of the plot a value lies [px]. */
function heights({ range, height }: Box): (y: number) => number {
  const scale = (height - MARGIN.t - MARGIN.b) / (range[1] - range[0]);
  return (y) => (range[1] - y) * scale;
}

const SHORT: Record<Role, string> = { now: 'now', best: 'best', hand: 'yours' };

/** Rows of names stand at least this far apart [px]. */
const APART = 17;

/** Longest name of a pinned set-up that fits beside the plot. */
const LONGEST = 15;

export function endLabels(
  own: readonly OfLength[],
  pinned: readonly Named[],
  look: Look,
  box: Box,
): NonNullable<Layout['annotations']> {
  const labels = [
    ...own.map(({ role, length, firstLook, points, ys }) => ({
      text: `${firstLook ? 'first look' : SHORT[role]} ${lengthText(length)}`,
      color: look.role[role],
      ...end(
        points.map(({ speed }) => speed),
        ys,
      ),
    })),
    ...pinned.map(({ name, xs, ys }) => ({
      text: name.length > LONGEST ? `${name.slice(0, LONGEST - 1)}…` : name,
      color: look.quiet,
      ...end(xs, ys),
    })),
  ];
  const known = labels.flatMap(({ x, y, ...label }) =>
    x === undefined || y === undefined ? [] : [{ ...label, x, y }],
  );
  return pushedApart(known, box);
}

interface Label {
  text: string;
  color: string;
  x: number;
  y: number;
}

function pushedApart(labels: readonly Label[], box: Box): NonNullable<Layout['annotations']> {
  const heightOf = heights(box);
  let above = Number.NEGATIVE_INFINITY;
  const falling = labels.toSorted((a, b) => b.y - a.y);
  return falling.map(({ text, color, x, y }) => {
    const at = heightOf(y);
    const place = Math.max(at, above + APART);
    above = place;
    return {
      text: escaped(text),
      x,
      y,
      xanchor: 'left',
      yanchor: 'middle',
      xshift: 8,
      yshift: at - place,
      showarrow: false,
      font: { color, size: 13 },
    };
  });
}

/** How far a further name must be moved, down positive, to lie over none of those that stand [px]. */
export function apartFrom(
  standing: NonNullable<Layout['annotations']>,
  ys: readonly number[],
  box: Box,
): number {
  const at = heights(box);
  const own = at(ys[ys.findLastIndex(Number.isFinite)] ?? Number.NaN);
  const taken = standing.map(({ y, yshift = 0 }) => at(Number(y)) - yshift);
  const free = (place: number) => taken.every((one) => Math.abs(one - place) >= APART - 0.01);
  const places = [own, ...taken.flatMap((one) => [one - APART, one + APART])].filter(free);
  const away = (place: number) => Math.abs(place - own);
  return places.reduce((a, b) => (away(b) < away(a) ? b : a), places[0] ?? own) - own;
}

function end(xs: readonly number[], ys: readonly number[]) {
  const last = ys.findLastIndex(Number.isFinite);
  return { x: xs[last], y: ys[last] };
}

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
