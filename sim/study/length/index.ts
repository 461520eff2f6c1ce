/** `sweep`: every length, or values of other keys, at every speed, and the decision. */
import { allSettled } from '../../report/audit.ts';
import { doubtSample } from '../../scenario/doubt.ts';
import type { Axis } from '../../scenario/range.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { tablePoints, withLength } from '../../sweep/sweep.ts';
import { askedUncertainty, DOUBT_OPTIONS } from '../doubt/ask.ts';
import { doubtOf } from '../doubt/compute.ts';
import { bandsTable } from '../doubt/tables.ts';
import type { Asked, Job, Study } from '../study.ts';
import { askedVary, VARY_OPTION } from '../vary/ask.ts';
import { variantJob } from '../vary/index.ts';
import { type LengthQuestion, lengthStudy, lengthsToRun } from './compute.ts';
import { sweepReport } from './report.ts';
import { pointsTable, sweepDocument } from './tables.ts';

export const sweepStudy: Study = {
  name: 'sweep',
  help: 'try every length of the scenario, or values of other keys, and decide',
  options: [VARY_OPTION, ...DOUBT_OPTIONS],
  stored: true,
  merge: 'merge',
  open(asked) {
    const keys = askedVary(asked);
    const lengths = lengthsOf(keys, asked.scenario);
    return lengths ? lengthJob(asked, lengths) : variantJob(asked, keys);
  },
};

/** Lengths to try [m]; none where other keys are varied. The length alone is swept as ever. */
function lengthsOf(keys: readonly Axis[], { sweep }: Scenario): readonly number[] | undefined {
  if (keys.length === 0) return sweep.lengths;
  const [{ path, values }] = keys as [Axis];
  if (keys.length > 1 || path !== 'intake.trumpet.length') return undefined;
  return [...values].sort((a, b) => a - b);
}

function questionOf(scenario: Scenario, lengths: readonly number[]): LengthQuestion {
  const { engine, speeds, refine, target, fit, injectors, lengthUnit: unit } = scenario;
  const known = { engine, lengths, speeds, refine, unit, target };
  return { ...known, ...(fit && { fit }), ...(injectors && { injectors }) };
}

function lengthJob(asked: Asked, lengths: readonly number[]): Job {
  const { text, file, scenario } = asked;
  const question = questionOf(scenario, lengths);
  const uncertainty = askedUncertainty(asked);
  const engines = lengthsToRun(question).map((length) => withLength(scenario.engine, length));
  const table = tablePoints(engines, scenario.speeds);
  return {
    width: table.length,
    table,
    async run(computer, observer) {
      const study = await lengthStudy(question, computer, observer);
      const sample = uncertainty && doubtSample(text, file, uncertainty);
      const doubt = sample && (await doubtOf(study, scenario, sample, computer, observer));
      const report = sweepReport(study, scenario, doubt);
      return {
        stem: 'sweep',
        document: sweepDocument(study, scenario, doubt),
        report,
        tables: {
          'sweep.csv': pointsTable(study, scenario),
          ...(doubt && { 'uncertainty.csv': bandsTable(doubt) }),
        },
        page: 'report.html',
        sound: allSettled(report.outcomes),
      };
    },
  };
}
