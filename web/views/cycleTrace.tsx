/** One cycle at one speed: pressure before the intake valve and inside the mouth. */
import type { Data, Layout } from 'plotly.js-cartesian-dist-min';
import type { Trace } from '../../sim/index.ts';
import { fixed, millimetres, rpm } from '../format.ts';
import { SpeedChoice } from '../parts/SpeedChoice.tsx';
import { type Curve, curveOf, type Picture, type Role } from '../state/picture.ts';
import { isTrace, traceOf, wanted, whySpeed } from '../state/why.ts';
import { closingLine, crankAxis, valveBars } from './crank.ts';
import { curveName } from './lines.ts';
import { axis, baseLayout, type Look, MARGIN, ROLE_LINE } from './look.ts';
import type { Cell, Table } from './table.ts';
import type { View } from './view.ts';

export const cycleTraceView: View = {
  id: 'cycle',
  question: 'Why: what does the valve feel through one cycle?',
  width: 'half',
  lines: true,
  height: 460,
  reading: () =>
    'A length is right for a speed when the pressure before the valve stands high towards the end of the intake: it pushes the last air in and holds it there until the valve is shut (dotted line).',
  summary: (picture) =>
    tracesOf(picture)
      .map(({ curve, trace }) => {
        const kPa = portPressureAtClosing(trace) / 1e3;
        return `${millimetres(curve.length)} at ${rpm(trace.point.speed)}: ${fixed(kPa, 1)} kPa before the valve as it closes.`;
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
    y: station(trace, name).pressure.map((p) => p / 1e3),
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
  const rows = tracesOf(picture).flatMap(({ curve, trace }) => {
    const [port, mouth] = [station(trace, 'port'), station(trace, 'mouth')];
    return trace.crankAngle.map((angle, i): Cell[] => [
      angle,
      curveName(curve),
      port.pressure[i]! / 1e3,
      mouth.pressure[i]! / 1e3,
      port.velocity[i],
      trace.cylinderPressure[i]! / 1e3,
      trace.intakeLift[i]! * 1e3,
      trace.exhaustLift[i]! * 1e3,
    ]);
  });
  return {
    columns: [
      { name: `crank angle at ${whySpeed.value} rpm`, unit: 'deg', decimals: 1 },
      { name: 'length', unit: '' },
      { name: 'pressure before valve', unit: 'kPa', decimals: 2 },
      { name: 'pressure in mouth', unit: 'kPa', decimals: 2 },
      { name: 'velocity before valve', unit: 'm/s', decimals: 1 },
      { name: 'cylinder pressure', unit: 'kPa', decimals: 1 },
      { name: 'intake lift', unit: 'mm', decimals: 2 },
      { name: 'exhaust lift', unit: 'mm', decimals: 2 },
    ],
    rows,
  };
}
