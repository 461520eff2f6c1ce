/** Whether an injector above the trumpet pays, from which speed, and with what share. */
import type { Data, Layout, Shape } from 'plotly.js-cartesian-dist-min';
import {
  FUEL_CAUTIONS,
  isFailure,
  type PlacementStudy,
  placementSentences,
} from '../../sim/index.ts';
import { fixed } from '../format.ts';
import { AskControl } from '../parts/AskControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { hasPlacement, placed, placement } from '../state/placement.ts';
import { PLACE_NAME, placeLine } from './injector.ts';
import { axis, baseLayout, type Look } from './look.ts';
import type { Table } from './table.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

export const injectorPlaceView: View = {
  id: 'injector-place',
  question: 'Does an injector above the trumpet pay, and from which speed?',
  width: 'wide',
  height: 480,
  asked: true,
  applies: hasPlacement,
  reading: () =>
    'Change of filling at full load against all fuel near the valve, with the trumpets fitted now. Within the shaded strip a difference is less than the model’s own uncertainty. Below: the share of the fuel to give from above.',
  summary: () => placementSentences(placed()!)[0]!,
  ready: () => placed() !== undefined,
  figure: (_, look) => placeFigure(placed()!, look),
  table: () => placeTable(placed()!),
  watch: () => [placement.state.value],
  Above: () => {
    const study = placed();
    if (study) return <Sentences sentences={placementSentences(study)} />;
    const cost =
      'Hundreds of points with sprays, some minutes of all cores, one speed after another.';
    return <AskControl study={placement} label="Compare the placements" cost={cost} />;
  },
  Below: Cautions,
};

/** Stands below the plot and before it is asked for: fuel in the open is no matter of computing. */
function Cautions() {
  return (
    <details open={placed() !== undefined}>
      <summary>Before you fit an injector above the trumpets</summary>
      <ul class="cautions">
        {FUEL_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}

/** Gain of a placement over near the valve [% of a full cylinder]. */
function gains({ outcomes }: PlacementStudy, place: 'above' | 'both'): (number | undefined)[] {
  return outcomes[place].map((point, i) => {
    const near = outcomes.near[i]!;
    if (isFailure(point) || isFailure(near)) return undefined;
    return 100 * (point.volumetricEfficiency - near.volumetricEfficiency);
  });
}

/** Two plots over one speed axis: gain above, share below. */
const GAIN: [number, number] = [0.36, 1];
const SHARE: [number, number] = [0, 0.24];

function placeFigure(study: PlacementStudy, look: Look) {
  const { speeds, choice, stagedShare } = study;
  const layout = baseLayout(look, 'engine speed [rpm]', 'change of filling [% points]');
  const share = (values: readonly number[]) => values.map((value) => 100 * value);
  const below = (line: Partial<Data>) => ({ ...line, yaxis: 'y2' }) as Partial<Data>;
  return {
    data: [
      placeLine('above', study, gains(study, 'above'), look),
      placeLine('both', study, gains(study, 'both'), look),
      below(placeLine('above', study, share(choice.share), look, 'share recommended')),
      below(placeLine('both', study, share(stagedShare), look, 'share in the file')),
    ],
    layout: withKey(
      look,
      {
        ...layout,
        xaxis: { ...layout.xaxis, anchor: 'y2' },
        yaxis: {
          ...layout.yaxis,
          domain: GAIN,
          zeroline: true,
          zerolinecolor: look.role.now,
          zerolinewidth: 2,
          hoverformat: '+.2f',
        },
        yaxis2: { ...axis(look, 'share [%]'), domain: SHARE, range: [-5, 105], hoverformat: '.0f' },
        shapes: marks(study, look),
        annotations: switchLabel(choice.switchOver, look),
      } as Partial<Layout>,
      speeds.length > 0 ? 2 : 1,
    ),
  };
}

function marks({ uncertainty, choice }: PlacementStudy, look: Look): Partial<Shape>[] {
  const half = 100 * uncertainty.value;
  const strip: Partial<Shape> = {
    type: 'rect',
    xref: 'paper',
    yref: 'y',
    x0: 0,
    x1: 1,
    y0: -half,
    y1: half,
    fillcolor: look.band,
    line: { width: 1, color: look.line },
    layer: 'below',
  };
  if (choice.switchOver === undefined) return [strip];
  const x = choice.switchOver;
  const line = { color: look.ink, width: 1.5, dash: 'dash' } as const;
  return [strip, { type: 'line', yref: 'paper', x0: x, x1: x, y0: 0, y1: 1, line }];
}

function switchLabel(speed: number | undefined, look: Look): Layout['annotations'] {
  if (speed === undefined) return [];
  const label = {
    text: 'switch here',
    x: speed,
    y: 1,
    yref: 'paper',
    xanchor: 'left',
    xshift: 4,
    showarrow: false,
    font: { size: 12, color: look.ink },
  };
  return [label as Layout['annotations'][number]];
}

function placeTable(study: PlacementStudy): Table {
  const { speeds, outcomes, choice, stagedShare, uncertainty } = study;
  const places = ['near', 'above', 'both'] as const;
  const above = gains(study, 'above');
  const both = gains(study, 'both');
  return {
    columns: [
      { name: 'speed', unit: 'rpm', decimals: 0 },
      ...places.map((place) => ({
        name: `volumetric efficiency, ${PLACE_NAME[place]}`,
        unit: '%',
        decimals: 2,
      })),
      { name: 'gain above the trumpet', unit: '% points', decimals: 2 },
      { name: 'gain both', unit: '% points', decimals: 2 },
      { name: `uncertain by ${fixed(100 * uncertainty.value, 2)}`, unit: '' },
      { name: 'share recommended from above', unit: '%', decimals: 0 },
      { name: 'share in the file', unit: '%', decimals: 0 },
    ],
    rows: speeds.map((speed, i) => [
      speed,
      ...places.map((place) => {
        const point = outcomes[place][i]!;
        return isFailure(point) ? undefined : 100 * point.volumetricEfficiency;
      }),
      above[i],
      both[i],
      Math.abs(above[i] ?? 0) > 100 * uncertainty.value ? 'beyond' : 'within',
      100 * choice.share[i]!,
      100 * stagedShare[i]!,
    ]),
  };
}
