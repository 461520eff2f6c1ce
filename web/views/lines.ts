/** Curves against speed as plot lines and as tables, alike in every view. */
import type { Data } from 'plotly.js-cartesian-dist-min';
import { millimetres } from '../format.ts';
import type { Curve, CurvePoint, Picture, Role, Standing } from '../state/picture.ts';
import { type Look, ROLE_LINE, ROLE_NAME } from './look.ts';
import type { Cell, Column, Table } from './table.ts';

export type Value = (point: CurvePoint, index: number) => number | undefined;

const ORDER: Role[] = ['now', 'hand', 'best'];

/** A preview is drawn pale and without markers; a point that did not settle gets a cross. */
export function curveLines(picture: Picture, look: Look, value: Value): Partial<Data>[] {
  const curves = [...picture.curves].sort((a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role));
  return curves.map((curve) => curveLine(curve, look, value));
}

function curveLine(curve: Curve, look: Look, value: Value): Partial<Data> {
  const { dash, width, symbol } = ROLE_LINE[curve.role];
  const preview = curve.points.some(({ standing }) => standing === 'preview');
  const color = look.role[curve.role];
  return {
    type: 'scatter',
    mode: 'lines+markers',
    name: curveName(curve),
    x: curve.points.map(({ speed }) => speed),
    y: curve.points.map((point, i) => value(point, i) ?? null),
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

export function curveName({ role, length }: Curve): string {
  return `${ROLE_NAME[role]}, ${millimetres(length)}`;
}

/** Speeds down, curves across, and how good each point is. */
export function curveTable(
  picture: Picture,
  quantity: Omit<Column, 'name'> & { name: string },
  value: Value,
): Table {
  const { curves, scenario } = picture;
  const columns: Column[] = [{ name: 'speed', unit: 'rpm', decimals: 0 }];
  for (const curve of curves) {
    columns.push({ ...quantity, name: `${quantity.name}, ${curveName(curve)}` });
    columns.push({ name: `state, ${ROLE_NAME[curve.role]}`, unit: '' });
  }
  const rows = scenario.speeds.map((speed, i): Cell[] => [
    speed,
    ...curves.flatMap((curve): Cell[] => {
      const point = curve.points[i]!;
      return [value(point, i), STANDING_WORD[point.standing]];
    }),
  ]);
  return { columns, rows };
}

export const STANDING_WORD: Record<Standing, string> = {
  full: 'computed',
  unsettled: 'not settled',
  preview: 'preview',
  failed: 'failed',
  waiting: 'waiting',
};
