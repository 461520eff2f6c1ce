/** One curve as sentences: its mean in the band, its peak, its cautions. */
import { type Target, targetMean } from '../../decision/target.ts';
import { efficiencies } from '../../decision/tradeOff.ts';
import { millimetres, rpm } from '../../report/figures.ts';
import { EFFICIENCY, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Table } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { LengthCurve } from '../../sweep/sweep.ts';
import { fillingCautions, pointCautions } from '../cautions.ts';
import { POINT_NOTES } from '../points.ts';
import { bandWords } from '../verdict.ts';
import { fillingPlot } from './figure.ts';

export function curveSentences(
  { length, outcomes }: LengthCurve,
  speeds: readonly number[],
  target: Target,
): string[] {
  const values = efficiencies(outcomes);
  const mean = targetMean(speeds, values, target);
  const peak = values.reduce(
    (at, y, i) => (y > values[at]! || Number.isNaN(values[at]!) ? i : at),
    0,
  );
  if (!Number.isFinite(values[peak]!)) return ['No speed could be computed.'];
  const best = told(EFFICIENCY, values[peak]!);
  const top = `the best speed computed is ${rpm(speeds[peak]!)} with ${best}`;
  return [
    Number.isFinite(mean)
      ? `With trumpets of ${millimetres(length)} the mean volumetric efficiency ` +
        `${bandWords(target)} is ${told(EFFICIENCY, mean)}; ${top}.`
      : `A speed of the band failed, so it has no mean; ${top}.`,
  ];
}

export function curveReport(curve: LengthCurve, scenario: Scenario, table: Table): Report {
  const { speeds, target } = scenario;
  const name = millimetres(curve.length);
  return {
    about: `Trumpets of ${name}`,
    scenario,
    answer: curveSentences(curve, speeds, target),
    flags: [
      ...pointCautions([{ name, outcomes: curve.outcomes }]),
      ...fillingCautions(scenario.engine, curve.outcomes),
    ],
    sections: [
      { plots: [fillingPlot([{ name, look: 'cut', outcomes: curve.outcomes }], speeds, target)] },
      { tables: [table], notes: POINT_NOTES },
    ],
    length: curve.length,
    outcomes: curve.outcomes,
  };
}
