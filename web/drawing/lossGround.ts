/** Ground between the curve fitted now and one that lies below it, hatched: what is lost. */
import type { Data } from 'plotly.js-dist-min';
import type { Look, Role } from '../look.ts';

interface Line {
  role: Role;
  ys: readonly number[];
}

interface At {
  x: number;
  own: number;
  other: number;
}

/** Losses of the length under the hand, else of the one recommended. */
export function lossGround(
  lines: readonly Line[],
  speeds: readonly number[],
  look: Look,
): Partial<Data>[] {
  const of = (role: Role) => lines.find((line) => line.role === role)?.ys;
  const [own, other] = [of('now'), of('hand') ?? of('best')];
  if (!own || !other) return [];
  const known = speeds.flatMap((x, i): At[] =>
    Number.isFinite(own[i]) && Number.isFinite(other[i])
      ? [{ x, own: own[i]!, other: other[i]! }]
      : [],
  );
  const path = withCrossings(known);
  const edge = {
    type: 'scatter',
    mode: 'lines',
    x: path.map(({ x }) => x),
    line: { width: 0 },
    hoverinfo: 'skip',
    showlegend: false,
  };
  const hatch = {
    shape: '/',
    fgcolor: look.price,
    bgcolor: 'rgba(0,0,0,0)',
    size: 6,
    solidity: 0.3,
  };
  return [
    { ...edge, y: path.map((at) => at.own) },
    {
      ...edge,
      y: path.map((at) => Math.min(at.own, at.other)),
      fill: 'tonexty',
      fillcolor: look.price,
      fillpattern: hatch,
    },
  ] as unknown as Partial<Data>[];
}

/** With the points in which the two cross between speeds. */
function withCrossings(points: readonly At[]): At[] {
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    if (!before) return [point];
    const [a, b] = [before.other - before.own, point.other - point.own];
    if (a * b >= 0) return [point];
    const t = a / (a - b);
    const y = before.own + t * (point.own - before.own);
    return [{ x: before.x + t * (point.x - before.x), own: y, other: y }, point];
  });
}
