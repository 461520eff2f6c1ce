/** One cycle at one speed: pressure before the intake valve and inside the mouth. */
import type { Data, Layout } from 'plotly.js-dist-min';
import {
  type Column,
  plotted,
  quantities as q,
  type Trace,
  tableOf,
  words,
} from '../../sim/index.ts';
import { closingLine, crankAxis, valveBars } from '../drawing/crank.ts';
import { curveName } from '../drawing/lines.ts';
import type { Table } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { rpm, told } from '../format.ts';
import type { Role } from '../look.ts';
import { axis, baseLayout, type Look, MARGIN, ROLE_LINE } from '../look.ts';
import { SpeedChoice } from '../parts/SpeedChoice.tsx';
import { type Curve, curveOf, type Picture } from '../state/picture.ts';
import { lengthText } from '../state/unit.ts';
import { isTrace, traceOf, wanted, whySpeed } from '../state/why.ts';

export const cycleTraceView: View = {
  id: 'cycle',
  question: 'Why: what pressure does the valve meet through one cycle?',
  width: 'half',
  lines: true,
  height: 460,
  reading: () =>
    'A length is right for a speed when the pressure before the valve stands high towards the end of the intake: it pushes the last air in and holds it there until the valve is shut (dotted line).',
  summary: (picture) =>
    tracesOf(picture)
      .map(({ curve, trace }) => {
        const pressure = told(q.PRESSURE, portPressureAtClosing(trace));
        return `${lengthText(curve.length)} at ${rpm(trace.point.speed)}: ${pressure} before the valve as it closes.`;
      })
      .join(' '),
  ready: (picture) => tracesOf(picture).length > 0,
  figure: (picture, look) => {
    const traces = tracesOf(picture);
    const { shapes, annotations } = valveBars(traces[0]!.trace, look);
    const layout = baseLayout(look, '', '');
    return {
      data: [
        ...traces.map(({ curve, trace }) => line(curve, trace, 'port', 'y', look)),
        ...traces.map(({ curve, trace }) => line(curve, trace, 'mouth', 'y2', look)),
      ],
      layout: {
        ...layout,
        margin: { ...MARGIN, t: 52, b: 62 },
        xaxis: { ...crankAxis(look), anchor: 'y2' },
        yaxis: { ...axis(look, 'before valve [kPa]'), domain: [0.42, 1], hoverformat: '.1f' },
        yaxis2: { ...axis(look, 'mouth [kPa]'), domain: [0, 0.34], hoverformat: '.1f', nticks: 6 },
        shapes: [...shapes, ...closingLine(traces[0]!.trace, look)],
        annotations,
      } as Partial<Layout>,
    };
  },
  table: traceTable,
  Above: SpeedChoice,
  onNear: () => {
    wanted.value = true;
  },
  watch: () => ROLES.map((role) => traceOf(role)),
};

const ROLES: Role[] = ['now', 'best', 'hand'];

function tracesOf(picture: Picture): { curve: Curve; trace: Trace }[] {
  return ROLES.flatMap((role) => {
    const curve = curveOf(picture, role);
    const trace = traceOf(role);
    return curve && isTrace(trace) ? [{ curve, trace }] : [];
  });
}

const station = (trace: Trace, name: string) => trace.stations.find((at) => at.name === name)!;

function line(curve: Curve, trace: Trace, name: string, yaxis: string, look: Look): Partial<Data> {
  const { dash, width } = ROLE_LINE[curve.role];
  return {
    type: 'scatter',
    mode: 'lines',
    name: curveName(curve),
    x: trace.crankAngle,
    y: plotted(q.PRESSURE, station(trace, name).pressure),
    yaxis,
    showlegend: name === 'port',
    line: { color: look.role[curve.role], width: width - 0.5, dash },
    hovertemplate: '%{y} kPa',
  } as Partial<Data>;
}

function portPressureAtClosing(trace: Trace): number {
  const { close } = trace.intakeEvents;
  const at = trace.crankAngle.findIndex((angle) => angle >= close);
  return station(trace, 'port').pressure[Math.max(at, 0)]!;
}

function traceTable(picture: Picture): Table {
  type Row = { name: string; trace: Trace; i: number };
  const rows = tracesOf(picture).flatMap(({ curve, trace }) =>
    trace.crankAngle.map((_, i): Row => ({ name: curveName(curve), trace, i })),
  );
  const named = (quantity: q.Quantity, name: string, of: (trace: Trace) => readonly number[]) => ({
    ...quantity,
    key: `${name.replaceAll(' ', '_')}_${quantity.key}`,
    name: `${quantity.name ?? quantity.head} ${name}`,
    of: ({ trace, i }: Row) => of(trace)[i],
  });
  const columns: Column<Row>[] = [
    {
      ...q.CRANK_ANGLE,
      name: `crank angle at ${whySpeed.value} rpm`,
      of: ({ trace, i }) => trace.crankAngle[i],
    },
    words('length', 'length', ({ name }) => name),
    named(q.PRESSURE, 'before valve', (trace) => station(trace, 'port').pressure),
    named(q.PRESSURE, 'in mouth', (trace) => station(trace, 'mouth').pressure),
    named(q.VELOCITY, 'before valve', (trace) => station(trace, 'port').velocity),
    named(q.PRESSURE, 'in cylinder', (trace) => trace.cylinderPressure),
    named(q.LIFT, 'of intake', (trace) => trace.intakeLift),
    named(q.LIFT, 'of exhaust', (trace) => trace.exhaustLift),
  ];
  return tableOf('One cycle', columns, rows);
}
