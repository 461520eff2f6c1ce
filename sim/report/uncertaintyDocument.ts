/** How sure the answer is, as part of the JSON document of a sweep. */
import type { Estimate, Spread } from '../decision/sampleFigures.ts';
import type { LengthSpread, UncertaintyStudy } from '../decision/uncertainty.ts';
import type { DoubtfulInput } from '../scenario/doubt.ts';
import { plain } from './document.ts';

type Figure = number | null;

/** Value and its 95 % interval. */
export type EstimateColumn = [value: Figure, low: Figure, high: Figure];

export interface SpreadColumn {
  mean: EstimateColumn;
  p5: EstimateColumn;
  p50: EstimateColumn;
  p95: EstimateColumn;
}

export interface LengthSpreadColumns {
  length_mm: Figure;
  /** Score at each speed: one entry a speed. */
  mean: Figure[];
  p5: Figure[];
  p50: Figure[];
  p95: Figure[];
  band_mean: SpreadColumn;
}

export interface UncertaintyColumns {
  samples: number;
  failed_samples: number;
  seed: number;
  gain_percent: SpreadColumn;
  probability_better: EstimateColumn;
  recommended: LengthSpreadColumns;
  baseline: LengthSpreadColumns;
  /** What to measure next, most first. */
  inputs: {
    key: string;
    spread: string;
    /** Whether the file gives the spread; otherwise it is by trade sense. */
    given: boolean;
    why: string;
    gain_change_percent_points: Figure;
    share_of_variance: Figure;
  }[];
  explained_share: Figure;
}

/** A study of the doubt with what it was asked. */
export interface Doubt {
  study: UncertaintyStudy;
  inputs: readonly DoubtfulInput[];
  seed: number;
}

export function uncertaintyColumns({ study, inputs, seed }: Doubt): UncertaintyColumns {
  return {
    samples: study.samples,
    failed_samples: study.failed,
    seed,
    gain_percent: spreadColumn(study.gainPercent),
    probability_better: estimate(study.better),
    recommended: lengthColumns(study.recommended),
    baseline: lengthColumns(study.baseline),
    inputs: study.effects.map(({ input, effect, share }) => {
      const { text, given, why } = inputs.find(({ path }) => path === input)!;
      return {
        key: input,
        spread: text,
        given,
        why,
        gain_change_percent_points: plain(effect),
        share_of_variance: plain(share),
      };
    }),
    explained_share: plain(study.explained),
  };
}

function lengthColumns({ length, curve, bandMean }: LengthSpread): LengthSpreadColumns {
  const column = (key: keyof Spread) => curve.map((spread) => plain(spread[key].value));
  return {
    length_mm: plain(length * 1e3),
    mean: column('mean'),
    p5: column('p5'),
    p50: column('p50'),
    p95: column('p95'),
    band_mean: spreadColumn(bandMean),
  };
}

function spreadColumn({ mean, p5, p50, p95 }: Spread): SpreadColumn {
  return { mean: estimate(mean), p5: estimate(p5), p50: estimate(p50), p95: estimate(p95) };
}

const estimate = ({ value, low, high }: Estimate): EstimateColumn => [
  plain(value),
  plain(low),
  plain(high),
];
