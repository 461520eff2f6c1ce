/** `curve`: one length at every speed. */
import { allSettled } from '../../report/audit.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { type LengthCurve, runLengths } from '../../sweep/sweep.ts';
import { askedLength, LENGTH_OPTION } from '../options.ts';
import type { Findings, Study } from '../study.ts';
import { curveDocument, curveTable, lengthCurveTable } from './tables.ts';
import { curveReport } from './tell.ts';

export const curveStudy: Study = {
  name: 'curve',
  help: 'one length at every speed',
  options: [LENGTH_OPTION],
  open(asked) {
    const { scenario } = asked;
    const length = askedLength(asked);
    return {
      width: scenario.speeds.length,
      async run(computer, observer) {
        const { engine, speeds } = scenario;
        const [curve] = await runLengths(engine, [length], speeds, computer, observer);
        return curveFindings(curve!, scenario);
      },
    };
  },
};

export function curveFindings(curve: LengthCurve, scenario: Scenario): Findings {
  return {
    stem: 'curve',
    document: curveDocument(curve, scenario),
    report: curveReport(curve, scenario, curveTable(curve)),
    tables: { 'curve.csv': lengthCurveTable([curve]) },
    sound: allSettled(curve.outcomes),
  };
}
