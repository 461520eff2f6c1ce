/** How sure the answer is as tables and as part of a JSON document. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import type { Estimate, Spread } from '../../decision/sampleFigures.ts';
import type { LengthSpread } from '../../decision/uncertainty.ts';
import { lengthIn } from '../../report/figures.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import {
  asColumns,
  asObjects,
  type Column,
  column,
  tableOf,
  within,
  words,
} from '../../report/table.ts';
import type { Doubt } from './compute.ts';

export type { Doubt } from './compute.ts';

/** What to measure next, most first. */
export function inputsTable({ study, inputs }: Doubt, most = Number.POSITIVE_INFINITY) {
  const rows = study.effects.slice(0, most).map((effect) => {
    const { text, given, why } = inputs.find(({ path }) => path === effect.input)!;
    return { ...effect, text, given, why };
  });
  type Row = (typeof rows)[number];
  return tableOf<Row>(
    'What to measure next',
    [
      words('key', 'input', ({ input }) => input),
      words('spread', 'spread', ({ text }) => text),
      words('given', '', ({ given }) => given, { only: 'files' }),
      words('why', '', ({ why }) => why, { only: 'files' }),
      column(q.GAIN_EFFECT, ({ effect }) => effect),
      column(q.SHARE_OF_VARIANCE, ({ share }) => share),
      words('origin', 'origin', ({ given, why }) => (given ? 'given' : why), { only: 'people' }),
    ],
    rows,
  );
}

const FIGURES = ['mean', 'p5', 'p50', 'p95'] as const;

const SPREAD: readonly Column<Spread>[] = FIGURES.map((figure) =>
  column({ key: figure, head: figure, unit: '', decimals: 3 }, (spread) => spread[figure].value),
);

/** What a curve belongs to: a length, or a variant by its name. */
export function contenderName({ length, name }: LengthSpread, unit?: LengthUnit): string {
  return name ?? lengthIn(length, unit);
}

/** The bands of both curves: one row a length, or variant, and speed. */
export function bandsTable({ study: { recommended, baseline, speeds }, unit }: Doubt) {
  type Row = { of: LengthSpread; speed: number; spread: Spread };
  const rows = [recommended, baseline].flatMap((of) =>
    of.curve.map((spread, j): Row => ({ of, speed: speeds[j]!, spread })),
  );
  const named = recommended.name !== undefined;
  const columns: Column<Row>[] = [
    named
      ? words('variant', 'variant', ({ of }) => of.name)
      : column(q.lengthQuantity(unit), ({ of }) => of.length),
    column(q.SPEED, ({ speed }) => speed),
    ...within(SPREAD, ({ spread }: Row) => spread),
  ];
  return tableOf('Nine engines of ten', columns, rows);
}

export function doubtDocument(doubt: Doubt) {
  const { study, seed } = doubt;
  return {
    samples: study.samples,
    ...(doubt.asked !== undefined && { samples_asked: doubt.asked }),
    failed_samples: study.failed,
    seed,
    gain_percent: spreadOf(study.gainPercent),
    worst_loss_in_band_percent: spreadOf(study.bandLossPercent),
    ...(study.floors.length > 0 && {
      floors: study.floors.map(({ floor, held }) => {
        return { speed_rpm: plain(floor.speed), probability_held: estimate(held) };
      }),
    }),
    ...(study.moved && {
      last_halving_moved: {
        gain_points: plain(study.moved.gain),
        worst_loss_points: plain(study.moved.loss),
        floors_in_samples: study.moved.floors,
      },
    }),
    probability_better: estimate(study.better),
    ...(study.wins && {
      wins: study.wins.map(({ length, share }) => ({
        length_mm: q.filed(q.LENGTH, length),
        probability: estimate(share),
      })),
    }),
    speeds_rpm: study.speeds.map(plain),
    recommended: lengthDocument(study.recommended),
    baseline: lengthDocument(study.baseline),
    inputs: asObjects(inputsTable(doubt)),
    explained_share: plain(study.explained),
  };
}

function lengthDocument({ length, name, curve, bandMean }: LengthSpread) {
  return {
    ...(name === undefined ? { length_mm: q.filed(q.LENGTH, length) } : { name }),
    ...asColumns(tableOf('', SPREAD, curve)),
    band_mean: spreadOf(bandMean),
  };
}

/** Each figure with its 95 % interval. */
function spreadOf(spread: Spread) {
  return Object.fromEntries(FIGURES.map((figure) => [figure, estimate(spread[figure])]));
}

const estimate = ({ value, low, high }: Estimate) => [value, low, high].map(plain);
