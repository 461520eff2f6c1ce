/** Curves against speed as plot lines and as tables, alike in every view. */
import type { Data } from 'plotly.js-dist-min';
import { type Column, drawnLine, plotted, quantities as q, words } from '../../sim/index.ts';

import type { Role } from '../look.ts';
import { type Look, ROLE_LINE, ROLE_NAME } from '../look.ts';
import type { Curve, CurvePoint, Picture, Standing } from '../state/picture.ts';
import { lengthText } from '../state/unit.ts';
import { numbered, ofCurve, type Table } from './table.ts';

/** A figure of a point in SI. */
export type Value = (point: CurvePoint, index: number) => number | undefined;

const ORDER: Role[] = ['now', 'hand', 'best'];

/** A preview is drawn pale and without markers; a point that did not settle gets a cross. */
export function curveLines(
  picture: Picture,
  look: Look,
  quantity: q.Quantity,
  value: Value,
): Partial<Data>[] {
  return inOrder(picture).map((curve) => curveLine(curve, look, quantity, value));
}

/** A line between the speeds of the file, in the unit of its axis. */
export interface Smooth {
  xs: number[];
  ys: number[];
}

/** The same, smooth where a curve is known between the speeds. */
export function smoothLines(
  picture: Picture,
  look: Look,
  quantity: q.Quantity,
  value: Value,
  smoothOf: (curve: Curve) => Smooth | undefined,
): Partial<Data>[] {
  return inOrder(picture).flatMap((curve) => {
    const points = curveLine(curve, look, quantity, value);
    const smooth = smoothOf(curve);
    if (!smooth) return [points];
    const { line } = points as { line: object };
    const under = { x: smooth.xs, y: drawn(smooth.ys), line, hoverinfo: 'skip', showlegend: false };
    return [
      { type: 'scatter', mode: 'lines', name: curveName(curve), ...under } as Partial<Data>,
      { ...points, mode: 'markers' } as Partial<Data>,
    ];
  });
}

/**
 * A curve every few rpm; undefined where it is known at the file's speeds alone. `value` must not ask for
 * the index.
 */
export function smoothLine({ all }: Curve, quantity: q.Quantity, value: Value): Smooth | undefined {
  if (!all) return undefined;
  const speeds = all.map(({ speed }) => speed);
  const whole = { from: speeds[0]!, to: speeds.at(-1)! };
  return drawnLine(speeds, plotted(quantity, all.map(value)), whole);
}

const inOrder = ({ curves }: Picture) =>
  [...curves].sort((a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role));

const drawn = (ys: readonly number[]) => ys.map((y) => (Number.isFinite(y) ? y : null));

function curveLine(curve: Curve, look: Look, quantity: q.Quantity, value: Value): Partial<Data> {
  const { dash, width, symbol } = ROLE_LINE[curve.role];
  const preview = curve.points.some(({ standing }) => standing === 'preview');
  const color = look.role[curve.role];
  return {
    type: 'scatter',
    mode: 'lines+markers',
    name: curveName(curve),
    x: curve.points.map(({ speed }) => speed),
    y: drawn(plotted(quantity, curve.points.map(value))),
    text: curve.points.map(({ standing }) => STANDING_NOTE[standing]),
    line: { color, width, dash: preview && curve.role !== 'now' ? 'dash' : dash },
    marker: {
      color: curve.points.map(({ standing }) => (standing === 'full' ? color : look.paper)),
      line: { color, width: 1.5 },
      size: curve.points.map(({ standing }) => (standing === 'unsettled' ? 11 : 6)),
      symbol: curve.points.map(({ standing }) => (standing === 'unsettled' ? 'x-thin' : symbol)),
    },
    hovertemplate: '%{y}%{text}',
  } as Partial<Data>;
}

const STANDING_NOTE: Record<Standing, string> = {
  full: '',
  unsettled: ' (not settled)',
  preview: ' (preview)',
  failed: ' (failed)',
  waiting: '',
};

export function curveName({ role, length, firstLook }: Curve): string {
  return `${firstLook ? 'first look' : ROLE_NAME[role]}, ${lengthText(length)}`;
}

/** Speeds down, curves across, and how good each point is. */
export function curveTable(picture: Picture, quantity: q.Quantity, value: Value): Table {
  const { curves, scenario } = picture;
  const columns = curves.flatMap((curve): Column<number>[] => {
    const of = (i: number) => value(curve.points[i]!, i);
    const state = (i: number) => STANDING_WORD[curve.points[i]!.standing];
    const name = `state, ${ROLE_NAME[curve.role]}`;
    return [{ ...ofCurve(quantity, curveName(curve)), of }, words(name, name, state)];
  });
  const speed = { ...q.SPEED, of: (i: number) => scenario.speeds[i] };
  return numbered(q.headed(quantity), scenario.speeds.length, [speed, ...columns]);
}

/** Where each curve has the most of a quantity, in words. */
export function highest({ curves }: Picture, quantity: q.Quantity, value: Value): string {
  const words = curves.map(({ length, points }) => {
    const known = points.flatMap((point, i) => {
      const y = value(point, i);
      return y === undefined ? [] : [{ y, speed: point.speed }];
    });
    if (known.length === 0) return `${lengthText(length)}: not known yet.`;
    const top = known.reduce((a, b) => (b.y > a.y ? b : a));
    const at = q.told(q.SPEED, top.speed);
    return `${lengthText(length)}: highest ${q.told(quantity, top.y)} at ${at}.`;
  });
  return words.join(' ');
}

const STANDING_WORD: Record<Standing, string> = {
  full: 'computed',
  unsettled: 'not settled',
  preview: 'preview',
  failed: 'failed',
  waiting: 'waiting',
};
