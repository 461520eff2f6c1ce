/** Curves of the variants, and what each value of a key is worth. */

import type { VariantStudy, VariedKey } from '../../decision/variants.ts';
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { bandMean, type Quantity } from '../../report/quantities.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { fillingPlot, type NamedCurve, smoothLine } from '../curve/figure.ts';
import type { VariedStudy } from './compute.ts';

const LOOKS: readonly PlotLook[] = ['cut', 'third', 'other'];

/** The best against the engine as it is; of conditions both ends and the middle of the values. */
export function variantPlot(study: VariedStudy): Plot {
  const { asItIs, recommended, weighed, target, resolution } = study;
  const drawn = (curve: LengthCurve) => ({
    outcomes: allPoints(curve),
    // Where others are smooth, what is not known between its points is no straight line.
    ...(resolution && { line: smoothLine(curve, study) }),
  });
  const ends = [...new Set([0, weighed.length >> 1, weighed.length - 1])].map((i) => weighed[i]!);
  const curves = (recommended ? [recommended] : ends).map(
    ({ texts, curve }, i): NamedCurve => ({
      name: texts.join(', '),
      look: LOOKS[i]!,
      ...drawn(curve),
    }),
  );
  const now: NamedCurve = { name: 'as it is', look: 'now', ...drawn(asItIs) };
  return fillingPlot([now, ...curves], target);
}

/** The mean of every value of a single key; none where its values share no unit. */
export function keyPlots({ keys, weighed, recommended, target }: VariantStudy): Plot[] {
  const along = axisOf(keys[0]!);
  if (keys.length > 1 || !along) return [];
  const quantity = bandMean(target.score);
  const order = along.at.map((_, i) => i).sort((a, b) => along.at[a]! - along.at[b]!);
  const line = (name: string, look: PlotLook, rows: readonly number[]) => ({
    ...{ name, look, xs: rows.map((i) => along.at[i]!) },
    ys: plotted(
      quantity,
      rows.map((i) => weighed[i]!.bandMean),
    ),
  });
  return [
    {
      id: 'worth',
      caption: 'What each value is worth in the band',
      description: `What each value of ${keys[0]!.path} is worth in the band. The figures stand in the table below.`,
      ...axes(along.quantity, quantity),
      series: [
        line('', 'other', order),
        ...(recommended ? [line('best', 'cut', [weighed.indexOf(recommended)])] : []),
      ],
    },
  ];
}

/** Numbers of the texts with the unit that they share; undefined where they share none. */
function axisOf({ path, texts }: VariedKey): { quantity: Quantity; at: number[] } | undefined {
  const read = texts.map((text) => /^([+-]?[\d.]+(?:[eE][+-]?\d+)?)\s*(.*)$/.exec(text.trim()));
  const unit = read[0]?.[2];
  if (unit === undefined || read.some((one) => one?.[2] !== unit)) return undefined;
  const quantity = { key: path, head: path, unit };
  return { quantity, at: read.map((one) => Number(one![1])) };
}
