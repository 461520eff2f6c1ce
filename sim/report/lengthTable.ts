/** One row a length: what it is worth in the bands and what it costs outside. */
import type { LengthCurve, LengthStudy, WeighedLength } from '../decision/lengthStudy.ts';
import { isFailure } from '../sweep/runner.ts';

export type LengthRow = WeighedLength & {
  recommended: boolean;
  baseline: boolean;
  /** Points that failed, and points that did not settle. */
  failed: number;
  unsettled: number;
};

/** Every length computed, shortest first. */
export function lengthTable(study: LengthStudy): LengthRow[] {
  const { baseline, recommended, weighed } = study;
  const curves = studyCurves(study);
  return weighed.map((row) => {
    const outcomes = curves.find((curve) => curve.length === row.length)?.outcomes ?? [];
    return {
      ...row,
      recommended: row.length === recommended.length,
      baseline: row.length === baseline.length,
      failed: outcomes.filter(isFailure).length,
      unsettled: outcomes.filter((one) => !isFailure(one) && !one.settled).length,
    };
  });
}

/** What stands out about a row, in words; empty where nothing does. */
export function rowRemark(row: LengthRow): string {
  return [
    ...(row.recommended ? [row.baseline ? 'keep' : 'cut this'] : []),
    ...(row.baseline ? ['fitted now'] : []),
    ...(row.meetsFloors ? [] : ['breaks a floor']),
    ...(row.failed > 0 ? [`${row.failed} failed`] : []),
    ...(row.unsettled > 0 ? [`${row.unsettled} not settled`] : []),
  ].join(', ');
}

/** The curves of a study, each once, by rising length. */
export function studyCurves({ tried, baseline, recommended }: LengthStudy): LengthCurve[] {
  const { length, outcomes } = recommended;
  const byLength = new Map<number, LengthCurve>();
  for (const curve of [...tried, baseline, { length, outcomes }]) byLength.set(curve.length, curve);
  return [...byLength.values()].sort((a, b) => a.length - b.length);
}
