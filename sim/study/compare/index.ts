/** `compare`: a run off the dyno beside the prediction, and what it tells. */
import { isRefusal } from '../../decision/calibration.ts';
import { ComputationError } from '../../errors.ts';
import { changedText } from '../../scenario/unknowns.ts';
import { LENGTH_OPTION } from '../options.ts';
import type { Asked, Study } from '../study.ts';
import { askedRun, COMPARE_OPTIONS } from './ask.ts';
import { type MeasuredStudy, measuredStudy } from './compute.ts';
import { compareDocument, compareTable } from './tables.ts';
import { compareReport } from './tell.ts';

export const compareStudy: Study = {
  name: 'compare',
  help: 'a run off the dyno beside the prediction, and what it tells',
  options: [COMPARE_OPTIONS[0]!, LENGTH_OPTION, ...COMPARE_OPTIONS.slice(1)],
  open(asked) {
    const { scenario, options } = asked;
    const question = askedRun(asked);
    return {
      width: scenario.speeds.length,
      async run(computer, observer) {
        const study = await measuredStudy(question, computer, observer);
        if ('problem' in study) throw new ComputationError(study.problem);
        const { calibration, leftOut } = study;
        const refused = calibration !== undefined && isRefusal(calibration);
        return {
          stem: 'compare',
          document: compareDocument(study, scenario),
          report: compareReport(study, scenario),
          tables: { 'compare.csv': compareTable(study) },
          sound: !refused && leftOut.length === 0,
          ...calibrated(asked, study, options.write),
        };
      },
    };
  },
};

/** A copy of the scenario with the values found; none where they were refused. */
function calibrated(
  { text, file }: Asked,
  { calibration, unknowns }: MeasuredStudy,
  path: unknown,
) {
  if (typeof path !== 'string' || !calibration || isRefusal(calibration)) return {};
  const changes = calibration.unknowns.flatMap(({ value }, k) => unknowns[k]!.changes(value));
  const words = 'the scenario with these values';
  return { also: { path, text: changedText(text, file, changes), words } };
}
