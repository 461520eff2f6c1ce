/** `curve`: one length at every speed. */
import { allSettled } from '../../report/audit.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints, type LengthCurve, runLengths, withLength } from '../../sweep/sweep.ts';
import { cylinderTable } from '../cylinders.ts';
import { askedLength, LENGTH_OPTION } from '../options.ts';
import { Refinement } from '../refinement.ts';
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
        const { engine, speeds, refine, target } = scenario;
        const [curve] = await runLengths(engine, [length], speeds, computer, observer);
        if (!refine) return curveFindings(curve!, scenario);
        const refinement = new Refinement({ speeds, target }, computer, observer);
        const variant = withLength(engine, length);
        const [resolved] = await refinement.refine([variant], [curve!], 'all');
        return curveFindings(resolved!, scenario, refinement.isOpen(variant, resolved!));
      },
    };
  },
};

/** @param open whether the curve is in doubt between its points */
export function curveFindings(curve: LengthCurve, scenario: Scenario, open = true): Findings {
  const outcomes = allPoints(curve);
  const cylinders = cylinderTable(outcomes, scenario.engine);
  return {
    stem: 'curve',
    document: curveDocument(curve, scenario),
    report: curveReport(curve, scenario, curveTable({ outcomes }, scenario), open),
    tables: {
      'curve.csv': lengthCurveTable([curve], scenario),
      ...(cylinders && { 'curve-cylinders.csv': cylinders }),
    },
    sound: allSettled(outcomes),
  };
}
