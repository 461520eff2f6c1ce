/** What is told where the cylinders of an engine differ (engine/manifolds.ts). */
import { extremes, fillingSpread } from '../decision/filling.ts';
import { cylindersDiffer, kindsOf } from '../engine/manifolds.ts';
import type { CylinderFigures, PointResult } from '../engine/point.ts';
import { firings } from '../firings.ts';
import { rpm } from '../report/figures.ts';
import * as q from '../report/quantities.ts';
import { column, type Table, tableOf } from '../report/table.ts';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';

/** Volumetric efficiency of every cylinder that differs from the others, one row a speed. */
export function cylinderTable(
  outcomes: readonly PointOutcome[],
  engine: EngineSpecification,
): Table | undefined {
  if (!cylindersDiffer(engine)) return undefined;
  const numbers = numbersIn(outcomes);
  const of = (i: number) => (outcome: PointOutcome) =>
    isFailure(outcome) ? undefined : outcome.cylinders?.[i]?.volumetricEfficiency;
  return tableOf<PointOutcome>(
    'Volumetric efficiency by cylinder',
    [
      column(q.SPEED, ({ speed }) => speed),
      ...numbers.map((one, i) => column(q.cylinderEfficiency(one), of(i))),
      column(q.FILLING_SPREAD, spreadOf),
    ],
    outcomes,
  );
}

export const CYLINDER_NOTE =
  'By cylinder: volumetric efficiency, in the order they fire; those in one column do alike. Spread: fullest less emptiest over the mean.';

export const spreadOf = (outcome: PointOutcome) =>
  isFailure(outcome) ? undefined : fillingSpread(outcome);

function numbersIn(outcomes: readonly PointOutcome[]): (readonly number[])[] {
  const known = outcomes.find((one) => !isFailure(one) && one.cylinders !== undefined);
  return known ? (known as PointResult).cylinders!.map(({ numbers }) => numbers) : [];
}

/** Says how far apart the cylinders fill, and what that asks of the mixture; nothing where they are alike. */
export function spreadCautions(outcomes: readonly PointOutcome[]): string[] {
  const points = outcomes.flatMap((one) => (isFailure(one) || !one.cylinders ? [] : [one]));
  const [first] = points;
  if (!first) return [];
  const worst = points.reduce((a, b) => (fillingSpread(b)! > fillingSpread(a)! ? b : a), first);
  const { fullest, emptiest } = extremes(worst.cylinders!);
  const lean = fullest.volumetricEfficiency / worst.volumetricEfficiency - 1;
  return [
    `The cylinders fill unlike, most of all at ${rpm(worst.speed)}: ${named(fullest)} ` +
      `${q.told(q.EFFICIENCY, fullest.volumetricEfficiency)}, ${named(emptiest)} ` +
      `${q.told(q.EFFICIENCY, emptiest.volumetricEfficiency)}. Figures of the engine are means. Fuel that suits ` +
      `the mean leaves the fullest lean by ${q.told(q.FILLING_SPREAD, lean)}: measure the mixture at every cylinder.`,
  ];
}

const named = ({ numbers }: CylinderFigures) =>
  `cylinder${numbers.length > 1 ? 's' : ''} ${numbers.join(' and ')}`;

/** Says of whom a study of one cylinder tells; nothing where all are alike. */
export function leadCautions(engine: EngineSpecification): string[] {
  if (!cylindersDiffer(engine)) return [];
  const lead = firings(engine)[0]!.number;
  // Those that breathe from one chamber differ by their place in the order as well.
  const kinds = engine.intake.chamber ? [] : kindsOf(engine);
  const like = kinds
    .flatMap((kind) => kind.like.get(lead) ?? [])
    .filter((number) => number !== lead);
  const also = like.length > 0 ? `, and so ${like.join(' and ')}'s` : '';
  return [`The cylinders differ; this is cylinder ${lead}'s${also}.`];
}

/** Says that a study which takes cylinders as alike tells of an engine whose cylinders differ. */
export function alikeCautions(engine: EngineSpecification): string[] {
  if (!cylindersDiffer(engine)) return [];
  return [
    'The cylinders fill unlike by when they fire and which pipes they share; here they are taken as alike, so ' +
      'what that does is told as errors of plates, screws, injectors or probes. See curve for how far they differ.',
  ];
}
