/** Every length against every speed, with the ridge of the best length and the band. */
import { signal } from '@preact/signals';
import type { Dash, Data, Layout, Shape } from 'plotly.js-dist-min';
import { bandsOf, type Column, plotted, quantities as q } from '../../sim/index.ts';
import { between } from '../compute/between.ts';
import { speedRange } from '../drawing/speedRange.ts';
import { numbered, ofCurve, type Table } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { rpm } from '../format.ts';
import { axis, bandLabels, baseLayout, type Look, MARGIN, speedAxis } from '../look.ts';
import { hand, moveHand } from '../state/hand.ts';
import { type Curve, curveAt, curveOf, type Picture, picture } from '../state/picture.ts';
import { unit } from '../state/scenario.ts';
import { lengthFigure, lengthText } from '../state/unit.ts';
import { chooseSpeed } from '../state/why.ts';
import { NAMES } from './curves.tsx';

/** Whether the map shows the filling itself or its change against the length fitted now. */
const against = signal<'itself' | 'now'>('itself');

export const lengthMapView: View = {
  id: 'map',
  question: 'Which length suits which speed?',
  width: 'half',
  height: 420,
  reading: () =>
    'Each tile is one length at one speed; brighter fills better. The dotted ridge follows the best length from speed to speed: longer serves lower speed, and where the ridge jumps the wave has made one trip more. Press on a tile, or drag, to try its length at its speed.',
  summary: (picture) => {
    const ridge = ridgeOf(picture);
    return `Best length by speed: ${ridge.map(({ speed, length }) => `${rpm(speed)}: ${lengthText(length)}`).join(', ')}.`;
  },
  ready: (picture) => picture.study.table.lengths.length > 0,
  figure: (picture, look) => ({
    data: [tiles(picture, look), ...ridgeLines(picture, look)],
    layout: {
      ...baseLayout(look, q.headed(q.SPEED), q.headed(lengthFigure())),
      margin: MAP_MARGIN,
      hovermode: 'closest',
      xaxis: {
        ...speedAxis(look, q.headed(q.SPEED)),
        showgrid: false,
        range: speedRange(picture),
      },
      yaxis: {
        ...axis(look, q.headed(lengthFigure())),
        showgrid: false,
        range: lengthRange(picture),
      },
      annotations: bandLabels(look, picture.scenario.target).map((label) => ({
        ...label,
        yanchor: 'bottom',
      })),
      shapes: [...bandEdges(picture, look), ...lengthLines(picture, look)],
    } as Partial<Layout>,
  }),
  table: mapTable,
  onDrag: (_, speed, length) => {
    chooseSpeed(speed);
    moveHand(length / plotted(lengthFigure(), [1])[0]!);
  },
  Over: HandLine,
  overHand: true,
  Above: () => (
    <fieldset class="choice">
      <legend class="sr">Shown on the map</legend>
      {(['itself', 'now'] as const).map((kind) => (
        <label key={kind}>
          <input
            type="radio"
            name="map-kind"
            checked={against.value === kind}
            onChange={() => {
              against.value = kind;
            }}
          />{' '}
          {kind === 'itself' ? 'filling' : 'change from now'}
        </label>
      ))}
    </fieldset>
  ),
  watch: () => [against.value, unit.value],
};

/** Axes as those of the curves above. */
const MAP_MARGIN = { ...MARGIN, r: NAMES, t: 28 };

/** From half a step below the shortest length to half a step above the longest, as high as tiles are. */
function lengthRange({ scenario: { sweep } }: Picture): [number, number] {
  const ends = plotted(lengthFigure(), sweep.lengths);
  const [first, second = first] = ends as [number, number?];
  const last = ends[ends.length - 1]!;
  return [first - (second - first) / 2, last + (last - (ends[ends.length - 2] ?? last)) / 2];
}

/** The length under the hand, drawn over the map without drawing it again. */
function HandLine() {
  const now = picture.value;
  if (!now || hand.value === undefined) return null;
  const [low, high] = lengthRange(now);
  const [at] = plotted(lengthFigure(), [hand.value]);
  const { l, r, t, b } = MAP_MARGIN;
  return (
    <div class="over-frame" style={{ inset: `${t}px ${r}px ${b}px ${l}px` }}>
      <div
        class="hand-rise"
        style={{ transform: `translateY(${(-100 * (at! - low)) / (high - low)}%)` }}
      >
        <div class="hand-line" />
      </div>
    </div>
  );
}

/** Rows of the map: the lengths of the sweep, known or estimated. */
function rowsOf({ study, scenario }: Picture): Curve[] {
  return scenario.sweep.lengths.map((length) => curveAt(study, 'best', length));
}

/** The value of a tile [-]. */
function valuesOf(picture: Picture): (number | undefined)[][] {
  const now = curveOf(picture, 'now')!;
  return rowsOf(picture).map(({ points }) =>
    points.map(({ efficiency }, j) => {
      if (efficiency === undefined) return undefined;
      if (against.value === 'itself') return efficiency;
      const own = now.points[j]!.efficiency;
      return own && efficiency / own - 1;
    }),
  );
}

function tiles(picture: Picture, look: Look): Partial<Data> {
  const { speeds, sweep } = picture.scenario;
  const change = against.value === 'now';
  const [low, still, high] = [look.price, look.paper, look.gain];
  const ramp = look.ramp.map((color, i) => [i / (look.ramp.length - 1), color]);
  return {
    type: 'heatmap',
    x: speeds,
    y: plotted(lengthFigure(), sweep.lengths),
    z: valuesOf(picture).map((row) =>
      plotted(tileQuantity(), row).map((value) => (Number.isFinite(value) ? value : null)),
    ),
    xgap: 1,
    ygap: 1,
    hoverongaps: false,
    colorscale: change
      ? [
          [0, low],
          [0.5, still],
          [1, high],
        ]
      : ramp,
    ...(change && { zmid: 0 }),
    colorbar: { thickness: 10, outlinewidth: 0, ticksuffix: change ? ' %' : '', x: 1.01, xpad: 4 },
    hovertemplate: `%{x} rpm, %{y} ${unit.value}: %{z:${change ? '+.1f} %' : '.3f}'}<extra></extra>`,
  } as unknown as Partial<Data>;
}

/** At each speed the length of best filling, to the millimetre, between the lengths computed. */
function ridgeOf(picture: Picture): { speed: number; length: number }[] {
  const { speeds, sweep } = picture.scenario;
  const rows = rowsOf(picture);
  return speeds.flatMap((speed, j) => {
    const values = rows.map(({ points }) => points[j]!.efficiency);
    if (values.includes(undefined)) return [];
    return [{ speed, length: best(sweep.lengths, values as number[]) }];
  });
}

function best(lengths: readonly number[], values: readonly number[]): number {
  const first = Math.ceil(lengths[0]! * 1e3 - 1e-9);
  const last = Math.floor(lengths[lengths.length - 1]! * 1e3 + 1e-9);
  let at = lengths[0]!;
  let top = Number.NEGATIVE_INFINITY;
  for (let mm = first; mm <= last; mm++) {
    const value = between(lengths, values, mm / 1e3) ?? Number.NEGATIVE_INFINITY;
    if (value > top) [at, top] = [mm / 1e3, value];
  }
  return at;
}

/** The ridge with a halo of paper, since tiles beneath are dark and light. */
function ridgeLines(picture: Picture, look: Look): Partial<Data>[] {
  const ridge = ridgeOf(picture);
  const x = ridge.map(({ speed }) => speed);
  const y = plotted(
    lengthFigure(),
    ridge.map(({ length }) => length),
  );
  const halo = { type: 'scatter', mode: 'lines', x, y, hoverinfo: 'skip' } as const;
  const line = {
    type: 'scatter',
    mode: 'lines+markers',
    x,
    y,
    line: { color: look.ink, width: 2, dash: 'dot' },
    marker: { color: look.paper, size: 6, line: { color: look.ink, width: 1.5 } },
    hovertemplate: `best at %{x} rpm: %{y} ${unit.value}<extra></extra>`,
  } as const;
  return [
    { ...halo, line: { color: look.paper, width: 6 }, opacity: 0.75 },
    line,
  ] as Partial<Data>[];
}

function bandEdges({ scenario }: Picture, look: Look): Partial<Shape>[] {
  const edges = bandsOf(scenario.target).flatMap(({ from, to }) => [from, to]);
  return edges.flatMap((x) =>
    haloed({ yref: 'paper', x0: x, x1: x, y0: 0, y1: 1 }, look, look.ink),
  );
}

function lengthLines({ curves }: Picture, look: Look): Partial<Shape>[] {
  return curves.flatMap(({ role, length }) => {
    const [y] = plotted(lengthFigure(), [length]);
    const place = { xref: 'paper', x0: 0, x1: 1, y0: y!, y1: y! } as const;
    return haloed(place, look, look.role[role], role === 'now' ? 'dot' : 'solid');
  });
}

/** A line with an edge of paper on both sides. */
function haloed(
  place: Partial<Shape>,
  look: Look,
  color: string,
  dash: Dash = 'solid',
): Partial<Shape>[] {
  const line = { type: 'line', ...place } as const;
  return [
    { ...line, line: { color: look.paper, width: 4.5 } },
    { ...line, line: { color, width: 2, dash } },
  ];
}

const tileQuantity = () => (against.value === 'itself' ? q.EFFICIENCY : q.CHANGE);

function mapTable(picture: Picture): Table {
  const { speeds, sweep } = picture.scenario;
  const rows = valuesOf(picture);
  const at = (speed: number, j: number): Column<number> => {
    const quantity = ofCurve(tileQuantity(), `at ${speed} rpm`);
    return { ...quantity, of: (i) => rows[i]![j] };
  };
  const length = { ...lengthFigure(), of: (i: number) => sweep.lengths[i] };
  return numbered('Every length', rows.length, [length, ...speeds.map(at)]);
}
