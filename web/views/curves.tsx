/** Filling, torque or power against speed: the lengths in question, and set-ups pinned beside them. */
import { computed, signal } from '@preact/signals';
import type { Data, Layout } from 'plotly.js-dist-min';
import { axes, bandsOf, type Plot, plotted, quantities as q } from '../../sim/index.ts';
import { apartFrom, endLabels } from '../drawing/endLabels.ts';
import {
  curveName,
  curveTable,
  highest,
  smoothLine,
  smoothLines,
  type Value,
} from '../drawing/lines.ts';
import { lossGround } from '../drawing/lossGround.ts';
import { speedRange } from '../drawing/speedRange.ts';
import type { View } from '../drawing/view.ts';
import { bandLabels, bandShapes, baseLayout, type Look, MARGIN, ROLE_PLOT } from '../look.ts';
import { OverCurve } from '../parts/OverCurve.tsx';
import type { KeptPoint } from '../state/kept.ts';
import { type Curve, curveAt, curveOf, type Picture, picture, still } from '../state/picture.ts';
import { unit } from '../state/scenario.ts';
import { look } from '../state/theme.ts';
import { chooseSpeed } from '../state/why.ts';

const FIGURES = ['filling', 'torque', 'power'] as const;
type FigureName = (typeof FIGURES)[number];

const shown = signal<FigureName>('filling');

interface Shown {
  quantity: q.Quantity;
  value: Value;
  pinned(point: KeptPoint): number | undefined;
}

function shownFigure(): Shown {
  switch (shown.value) {
    case 'filling':
      return {
        quantity: q.EFFICIENCY,
        value: ({ efficiency }) => efficiency,
        pinned: ({ efficiency }) => efficiency,
      };
    case 'torque':
      return {
        quantity: q.FLYWHEEL_TORQUE[unit.value],
        value: ({ brakeTorque }) => brakeTorque,
        pinned: ({ torque }) => torque,
      };
    case 'power':
      return {
        quantity: q.FLYWHEEL_POWER[unit.value],
        value: ({ brakePower }) => brakePower,
        pinned: ({ power }) => power,
      };
  }
}

/** Room to the right of the curves for their names [px]. */
export const NAMES = 108;

export const curvesView: View = {
  id: 'filling',
  question: 'How well does it fill at each speed?',
  width: 'half',
  height: 400,
  reading: () =>
    'Fresh air trapped at valve closing over the swept volume full of the day’s air: volumetric efficiency. Higher is more torque. Torque and power are those at the flywheel, less the model’s friction. Hatched: where the length recommended, or yours, gives less than the one fitted now.',
  summary: (picture) => {
    const { quantity, value } = shownFigure();
    return highest(picture, quantity, value);
  },
  ready: ({ curves }) => curves.some(isKnown),
  figure: (picture, colours, height) => {
    const { quantity, value } = shownFigure();
    const { target } = picture.scenario;
    const layout = baseLayout(colours, q.headed(q.SPEED), q.headed(quantity));
    const { own, kept } = linesOf(picture);
    const range = rangeOf(picture);
    const names = endLabels(own, kept, colours, { range, height });
    return {
      data: [
        ...groundOf(picture, own, colours),
        ...kept.map((one) => pinnedLine(one, colours)),
        ...smoothLines(picture, colours, quantity, value, (curve) =>
          smoothLine(curve, quantity, value),
        ),
      ],
      layout: {
        ...layout,
        margin: { ...layout.margin, r: NAMES },
        xaxis: { ...layout.xaxis, range: speedRange(picture) },
        yaxis: { ...layout.yaxis, range, hoverformat: shown.value === 'filling' ? '.3f' : '.1f' },
        shapes: bandShapes(colours, target),
        annotations: [...bandLabels(colours, target), ...names],
      } as Partial<Layout>,
    };
  },
  plain: plainPlot,
  table: (picture) => {
    const { quantity, value } = shownFigure();
    return curveTable(picture, quantity, value);
  },
  onPick: (_, speed) => chooseSpeed(speed),
  Above: FigureChoice,
  Over: TriedCurve,
  overHand: true,
  watch: () => [shown.value, unit.value],
};

const isKnown = ({ points }: Curve) => points.some(({ efficiency }) => efficiency !== undefined);

/** What is lost, between the speeds too where both curves are known there. */
function groundOf(
  { curves, scenario }: Picture,
  own: ReturnType<typeof linesOf>['own'],
  look: Look,
) {
  const { quantity, value } = shownFigure();
  const smooth = curves.map((curve) => ({ ...curve, ...smoothLine(curve, quantity, value) }));
  const xs = smooth[0]?.xs;
  const both = smooth.flatMap(({ role, ys }) => (ys ? [{ role, ys }] : []));
  return xs && both.length === curves.length
    ? lossGround(both, xs, look)
    : lossGround(own, scenario.speeds, look);
}

/** The curves of a picture, and of what is pinned beside them, in the unit of the axis. */
function linesOf({ curves, pinned: kept }: Picture) {
  const { quantity, value, pinned } = shownFigure();
  return {
    own: curves.map((curve) => ({ ...curve, ys: plotted(quantity, curve.points.map(value)) })),
    kept: kept.map(({ name, points }) => ({
      name,
      xs: points.map(({ speed }) => speed),
      ys: plotted(quantity, points.map(pinned)),
    })),
  };
}

function FigureChoice() {
  return (
    <fieldset class="choice">
      <legend class="sr">Shown over speed</legend>
      {FIGURES.map((name) => (
        <label key={name}>
          <input
            type="radio"
            name="curve-figure"
            checked={shown.value === name}
            onChange={() => {
              shown.value = name;
            }}
          />{' '}
          {name}
        </label>
      ))}
    </fieldset>
  );
}

/** The length that is tried, drawn over the plot at every move of the hand. */
function TriedCurve({ height }: { height: number }) {
  const [now, base] = [picture.value, still.value];
  const tried = now && curveOf(now, 'hand');
  if (!tried || !base) return null;
  const { quantity, value } = shownFigure();
  const ys = plotted(quantity, tried.points.map(value));
  const range = stillRange.value!;
  const { own, kept } = linesOf(base);
  const box = { range, height };
  const label = apartFrom(endLabels(own, kept, look.value, box), ys, box);
  return (
    <OverCurve
      curve={tried}
      ys={ys}
      fitted={own[0]!.ys}
      xRange={speedRange(base)}
      yRange={range}
      margin={{ ...MARGIN, r: NAMES }}
      label={label}
    />
  );
}

/** The same while a length is tried, worked out once. */
const stillRange = computed(() => still.value && rangeOf(still.value));

/** From a little below the least of all that is known to a little above the most, whatever length is tried. */
function rangeOf(picture: Picture): [number, number] {
  const { quantity, value, pinned } = shownFigure();
  const tried = picture.study.full?.tried ?? [];
  const lengths = tried.map(({ length }) => curveAt(picture.study, 'best', length));
  const known = [
    ...[...picture.curves, ...lengths].flatMap(({ points, all = [] }) =>
      plotted(quantity, [...points, ...all].map(value)),
    ),
    ...picture.pinned.flatMap(({ points }) => plotted(quantity, points.map(pinned))),
  ].filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const edge = 0.05 * (high - low || 1);
  // Above, the name of the band wants room.
  return [low - edge, high + 2 * edge];
}

function pinnedLine(
  { name, xs, ys }: { name: string; xs: number[]; ys: number[] },
  look: Look,
): Partial<Data> {
  return {
    type: 'scatter',
    mode: 'lines',
    name,
    x: xs,
    y: ys.map((y) => (Number.isFinite(y) ? y : null)),
    line: { color: look.quiet, width: 1.5, dash: 'dashdot' },
    hovertemplate: '%{y}',
  } as unknown as Partial<Data>;
}

function plainPlot({ curves, scenario }: Picture): Plot {
  const { quantity, value } = shownFigure();
  return {
    id: 'filling',
    caption: q.headed(quantity),
    description: q.headed(quantity),
    ...axes(q.SPEED, quantity),
    series: curves.filter(isKnown).map((curve) => {
      const smooth = smoothLine(curve, quantity, value);
      return {
        name: curveName(curve),
        xs: scenario.speeds,
        ys: plotted(quantity, curve.points.map(value)),
        look: ROLE_PLOT[curve.role],
        ...(smooth && { line: [smooth] }),
      };
    }),
    bands: bandsOf(scenario.target).map(({ from, to }) => ({ from, to, name: 'your band' })),
  };
}
