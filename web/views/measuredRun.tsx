/** A run off the dyno over the prediction. */
import type { Data, Layout } from 'plotly.js-cartesian-dist-min';
import { compareWords, isRefusal, type MeasuredStudy } from '../../sim/index.ts';
import { MeasuredControl } from '../parts/MeasuredControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { resultOf } from '../state/asked.ts';
import { measured } from '../state/measured.ts';
import { baseLayout, type Look } from './look.ts';
import type { Table } from './table.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

export const measuredRunView: View = {
  id: 'measured-run',
  question: 'Does my dyno run agree?',
  width: 'wide',
  height: 420,
  asked: true,
  reading: () =>
    'Open a run as CSV: a head line such as speed_rpm,torque_Nm (or power_kW, volumetric_efficiency), one row a speed; the air of the day in lines above it, such as “# temperature: 24 degC”. It is read in this browser and goes nowhere. Shapes are compared, not levels.',
  summary: () => sentencesOf(resultOf(measured)!).join(' '),
  ready: () => resultOf(measured) !== undefined,
  figure: (_, look) => {
    const study = resultOf(measured)!;
    const { name, unit, times } = figureOf(study);
    const layout = baseLayout(look, 'engine speed [rpm]', `${name} [${unit}]`);
    return {
      data: curvesOf(study).map(({ name, speeds, values, kind }) =>
        lineOf(kind, name, speeds, values, times, look),
      ),
      layout: withKey(look, {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.1f' },
        shapes: peakLines(study, look),
      } as Partial<Layout>),
    };
  },
  table: () => measuredTable(resultOf(measured)!),
  watch: () => [measured.state.value],
  Above: () => {
    const study = resultOf(measured);
    return (
      <>
        <MeasuredControl />
        {study && <Sentences sentences={sentencesOf(study)} />}
      </>
    );
  },
};

function sentencesOf(study: MeasuredStudy): string[] {
  const { answer, peak, air, meaning, leftOut, fit } = compareWords(study);
  return [`${answer} ${peak}`, ...fit, air, meaning, leftOut];
}

function figureOf({ comparison }: MeasuredStudy) {
  return comparison.figure === 'brake-torque'
    ? { name: 'torque at the brake', unit: 'N m', times: 1 }
    : { name: 'volumetric efficiency', unit: '%', times: 100 };
}

type Kind = 'measured' | 'predicted' | 'fitted';

function curvesOf({ comparison, calibration }: MeasuredStudy) {
  const { speeds } = comparison;
  const known = [
    { kind: 'measured' as Kind, name: 'measured', speeds, values: comparison.measured },
    { kind: 'predicted' as Kind, name: 'predicted', speeds, values: comparison.predicted },
  ];
  if (!calibration || isRefusal(calibration)) return known;
  const after = calibration.comparison;
  const fit = { kind: 'fitted' as Kind, name: 'predicted with the values found' };
  return [...known, { ...fit, speeds: after.speeds, values: after.predicted }];
}

function lineOf(
  kind: Kind,
  name: string,
  speeds: readonly number[],
  values: readonly number[],
  times: number,
  look: Look,
): Partial<Data> {
  const color = colorOf(kind, look);
  const dash = { measured: 'solid', predicted: 'solid', fitted: 'dash' }[kind];
  const symbol = { measured: 'cross', predicted: 'circle', fitted: 'diamond' }[kind];
  return {
    type: 'scatter',
    mode: kind === 'measured' ? 'markers+lines' : 'lines+markers',
    name,
    x: speeds,
    y: values.map((value) => times * value),
    line: { color, dash, width: kind === 'measured' ? 1 : 2.5 },
    marker: { color, symbol, size: kind === 'measured' ? 9 : 6 },
  } as unknown as Partial<Data>;
}

function colorOf(kind: Kind, look: Look): string {
  return { measured: look.ink, predicted: look.role.best, fitted: look.role.hand }[kind];
}

/** Where each curve is highest, as far as it lies inside the range. */
function peakLines({ comparison: { peaks } }: MeasuredStudy, look: Look): Layout['shapes'] {
  return (['measured', 'predicted'] as const).flatMap((kind) => {
    const x = peaks[kind];
    if (x === undefined) return [];
    const line = { color: colorOf(kind, look), width: 1, dash: 'dot' as const };
    return [{ type: 'line', yref: 'paper', x0: x, x1: x, y0: 0, y1: 1, line } as const];
  }) as Layout['shapes'];
}

function measuredTable(study: MeasuredStudy): Table {
  const { name, unit, times } = figureOf(study);
  const curves = curvesOf(study);
  const { speeds, measured: run, predicted } = study.comparison;
  return {
    columns: [
      { name: 'speed', unit: 'rpm', decimals: 0 },
      ...curves.map((curve) => ({ name: `${name}, ${curve.name}`, unit, decimals: 2 })),
      { name: 'predicted less measured', unit: '%', decimals: 1 },
    ],
    rows: speeds.map((speed, i) => [
      speed,
      ...curves.map((curve) => {
        const value = curve.values[curve.speeds.indexOf(speed)];
        return value === undefined ? undefined : times * value;
      }),
      100 * (predicted[i]! / run[i]! - 1),
    ]),
  };
}
