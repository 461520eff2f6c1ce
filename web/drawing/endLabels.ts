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

const SHORT: Record<Role, string> = { now: 'now', best: 'best', hand: 'yours' };

/** Rows of names stand at least this far apart [px]. */
const APART = 17;

/** Longest name of a pinned set-up that fits beside the plot. */
const LONGEST = 15;

export function endLabels(
  own: readonly OfLength[],
  pinned: readonly Named[],
  look: Look,
  { range, height }: { range: readonly [number, number]; height: number },
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
  ].filter(({ y }) => y !== undefined);
  const scale = (height - MARGIN.t - MARGIN.b) / (range[1] - range[0]);
  labels.sort((a, b) => b.y! - a.y!);
  let above = Number.NEGATIVE_INFINITY;
  return labels.map(({ text, color, x, y }) => {
    const at = (range[1] - y!) * scale;
    const place = Math.max(at, above + APART);
    above = place;
    return {
      text: escaped(text),
      x: x!,
      y: y!,
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
  { range, height }: { range: readonly [number, number]; height: number },
): number {
  const scale = (height - MARGIN.t - MARGIN.b) / (range[1] - range[0]);
  const at = (y: number) => (range[1] - y) * scale;
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
