/** Distance against time: where in the intake the pressure stands high through one cycle. */
import type { Data, Layout } from 'plotly.js-dist-min';
import { type Column, plotted, quantities as q, type Trace } from '../../sim/index.ts';
import { arrivalOf } from '../drawing/arrival.ts';
import { closingLevel, crankAxisUp, valveBarsUp } from '../drawing/crank.ts';
import { numbered, ofCurve, type Table } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { rpm, told } from '../format.ts';
import type { Role } from '../look.ts';
import { axis, baseLayout, type Look, MARGIN, ROLE_NAME } from '../look.ts';
import { WavePlayer } from '../parts/WavePlayer.tsx';
import { curveOf, type Picture } from '../state/picture.ts';
import { unit } from '../state/scenario.ts';
import { lengthFigure, lengthText } from '../state/unit.ts';
import { CYCLE, moment, waveRole } from '../state/wave.ts';
import { isTrace, traceOf, wanted, whySpeed } from '../state/why.ts';

/** To the left, between the axis and its figures, stand the bars of the valves [px]. */
const WAVE_MARGIN = { ...MARGIN, l: 84, r: 64 };

export const waveView: View = {
  id: 'wave',
  question: 'Where is the wave?',
  width: 'half',
  height: 460,
  reading: () =>
    `At ${rpm(whySpeed.value ?? 0)}. Valve at the left and mouth at the right as in the drawing of the intake, upwards through the cycle. The opening valve sends low pressure to the mouth; it comes back as high pressure, and should arrive before the intake closes.`,
  summary: (picture) => {
    const shown = shownTrace(picture);
    if (!shown) return 'Not computed yet.';
    const { peak, angle } = arrivalOf(shown.trace);
    return `${ROLE_NAME[shown.role]}, ${lengthText(shown.length)} at ${rpm(whySpeed.value!)}: while the intake is open, the pressure before the valve is highest, ${told(q.PRESSURE, peak)}, at ${told(q.CRANK_ANGLE, angle)}; the valve closes at ${told(q.CRANK_ANGLE, shown.trace.intakeEvents.close)}.`;
  },
  ready: (picture) => shownTrace(picture) !== undefined,
  figure: (picture, look) => {
    const { trace } = shownTrace(picture)!;
    const { shapes, annotations } = valveBarsUp(trace, look);
    const { length } = picture.curves.find(({ role }) => role === waveRole.value)!;
    const { distance } = trace.wave;
    const [face, valve] = plotted(lengthFigure(), [length, distance[distance.length - 1]!]);
    return {
      data: [tiles(trace, picture, look)],
      layout: {
        ...baseLayout(look, '', ''),
        margin: WAVE_MARGIN,
        hovermode: 'closest',
        xaxis: {
          ...axis(look, `distance from rim [${unit.value}]`),
          range: [valve!, 0],
          showgrid: false,
        },
        yaxis: { ...crankAxisUp(look), showgrid: false },
        shapes: [...shapes, closingLevel(trace, look), faceLine(face!, look)],
        annotations: [...annotations, faceLabel(face!, look)],
      } as Partial<Layout>,
    };
  },
  table: waveTable,
  onPick: (_picture, _distance, angle) => {
    moment.value = Math.round(angle) % CYCLE;
  },
  Below: WavePlayer,
  Over: Cursor,
  onNear: () => {
    wanted.value = true;
  },
  watch: () => [traceOf(waveRole.value), waveRole.value],
};

/** The trace on show, if there is one. */
function shownTrace(picture: Picture): { role: Role; length: number; trace: Trace } | undefined {
  const role = waveRole.value;
  const trace = traceOf(role);
  const length = curveOf(picture, role)?.length;
  return isTrace(trace) && length !== undefined ? { role, length, trace } : undefined;
}

function tiles({ wave, crankAngle }: Trace, { scenario }: Picture, look: Look): Partial<Data> {
  const [still] = plotted(q.PRESSURE, [scenario.engine.intake.feed.pressure]) as [number];
  const rows = wave.pressure.map((row) => plotted(q.PRESSURE, row));
  const reach = Math.max(...rows.flat().map((p) => Math.abs(p - still)));
  const [low, mid, high] = look.wave;
  return {
    type: 'heatmap',
    x: plotted(lengthFigure(), wave.distance),
    y: crankAngle,
    z: rows,
    zmin: still - reach,
    zmax: still + reach,
    colorscale: [
      [0, low],
      [0.5, mid],
      [1, high],
    ],
    colorbar: { thickness: 10, outlinewidth: 0, ticksuffix: ' kPa', x: 1.01, xpad: 4 },
    hovertemplate: `%{y:.0f} deg, %{x:.1f} ${unit.value} from the rim: %{z:.1f} kPa<extra></extra>`,
  } as unknown as Partial<Data>;
}

function faceLine(face: number, look: Look) {
  return {
    type: 'line',
    yref: 'paper',
    y0: 0,
    y1: 1,
    x0: face,
    x1: face,
    line: { color: look.quiet, width: 1 },
  } as const;
}

function faceLabel(face: number, look: Look) {
  return {
    text: 'body face',
    yref: 'paper',
    x: face,
    y: 1,
    xanchor: 'left',
    yanchor: 'top',
    showarrow: false,
    font: { size: 12, color: look.ink },
  } as const;
}

/** The moment, drawn over the plot without redrawing it. */
function Cursor() {
  const share = moment.value / CYCLE;
  const { l, r, t, b } = WAVE_MARGIN;
  return (
    <div class="over-frame" style={{ inset: `${t}px ${r}px ${b}px ${l}px` }}>
      <div class="cursor level" style={{ bottom: `${100 * share}%` }} />
    </div>
  );
}

function waveTable(picture: Picture): Table {
  const { crankAngle, wave } = shownTrace(picture)!.trace;
  const angle = { ...q.CRANK_ANGLE, name: `crank angle at ${whySpeed.value} rpm` };
  const pressures = wave.distance.map((at, j): Column<number> => {
    const place = `${q.told({ ...lengthFigure(), digits: 4 }, at)} from rim`;
    return { ...ofCurve(q.PRESSURE, place), of: (i) => wave.pressure[i]![j] };
  });
  const columns = [{ ...angle, of: (i: number) => crankAngle[i] }, ...pressures];
  return numbered('Pressure along the intake', crankAngle.length, columns);
}
