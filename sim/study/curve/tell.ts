/** One curve as sentences: its mean in the band, its peak, its cautions. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { targetMean } from '../../decision/target.ts';
import { efficiencies } from '../../decision/tradeOff.ts';
import { lengthIn, rpm } from '../../report/figures.ts';
import { EFFICIENCY, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Table } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { fillingCautions, pointCautions } from '../cautions.ts';
import { CYLINDER_NOTE, cylinderTable, spreadCautions } from '../cylinders.ts';
import { POINT_NOTES } from '../points.ts';
import { bandWords } from '../verdict.ts';
import { fillingPlot, smoothLine } from './figure.ts';

/** What a curve is an answer to. */
export type CurveQuestion = Pick<Scenario, 'speeds' | 'target'> & { lengthUnit?: LengthUnit };

/** @param asked speeds of the file, between which the curve may be resolved */
export function curveSentences(curve: LengthCurve, asked: CurveQuestion): string[] {
  const { target } = asked;
  const { length } = curve;
  const points = allPoints(curve);
  const [xs, ys] = [points.map(({ speed }) => speed), efficiencies(points)];
  const [line] = smoothLine(curve, asked);
  const speeds = line ? line.xs : xs;
  const values = line ? line.ys : ys;
  const mean = targetMean(speeds, values, target);
  const peak = values.reduce(
    (at, y, i) => (y > values[at]! || Number.isNaN(values[at]!) ? i : at),
    0,
  );
  if (!Number.isFinite(values[peak]!)) return ['No speed could be computed.'];
  const best = told(EFFICIENCY, values[peak]!);
  const top = `the best speed is ${rpm(Math.round(speeds[peak]!))} with ${best}`;
  return [
    Number.isFinite(mean)
      ? `With trumpets of ${lengthIn(length, asked.lengthUnit)} the mean volumetric efficiency ` +
        `${bandWords(target)} is ${told(EFFICIENCY, mean)}; ${top}.`
      : `A speed of the band failed, so it has no mean; ${top}.`,
  ];
}

export function curveReport(
  curve: LengthCurve,
  scenario: Scenario,
  table: Table,
  open: boolean,
): Report {
  const { target } = scenario;
  const outcomes = allPoints(curve);
  const name = lengthIn(curve.length, scenario.lengthUnit);
  const cylinders = cylinderTable(outcomes, scenario.engine);
  const line = curve.resolved && { line: smoothLine(curve, scenario) };
  return {
    about: `Trumpets of ${name}`,
    scenario,
    answer: curveSentences(curve, scenario),
    flags: [
      ...pointCautions([{ name, outcomes }]),
      ...(open ? [openWords(curve)] : []),
      ...fillingCautions(scenario.engine, outcomes),
      ...spreadCautions(outcomes),
    ],
    sections: [
      { plots: [fillingPlot([{ name, look: 'cut', outcomes, ...line }], target)] },
      { tables: [table], notes: POINT_NOTES },
      ...(cylinders ? [{ tables: [cylinders], notes: [CYLINDER_NOTE] }] : []),
    ],
    length: curve.length,
    outcomes,
  };
}

/** Says that a curve is not known between its points. */
function openWords({ resolved }: LengthCurve): string {
  return resolved
    ? 'Not resolved: at the narrowest distance of speeds the curve still moves between them.'
    : 'Computed at the speeds listed alone: between them the curve ripples. Give speeds as a range to have it resolved.';
}
