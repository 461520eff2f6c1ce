/** The best variant against the engine as it is. */
import type { Plot } from '../../report/plot.ts';
import { fillingPlot } from '../curve/figure.ts';
import type { VariantStudy } from './compute.ts';

export function variantPlot({ baseline, recommended, speeds, target }: VariantStudy): Plot {
  return fillingPlot(
    [
      { name: 'as it is', look: 'now', outcomes: baseline },
      { name: recommended.texts.join(', '), look: 'cut', outcomes: recommended.outcomes },
    ],
    speeds,
    target,
  );
}
