/** `sweep` over other keys than the length: every combination of their values at every speed. */
import { allSettled } from '../../report/audit.ts';
import type { Axis } from '../../scenario/range.ts';
import { variantEngines } from '../../scenario/variants.ts';
import { tablePoints } from '../../sweep/sweep.ts';
import type { Asked, Job } from '../study.ts';
import { valuesTable } from '../table/tables.ts';
import { withConditions } from './ask.ts';
import { variantStudy } from './compute.ts';
import { variantDocument } from './tables.ts';
import { variantReport } from './tell.ts';

export function variantJob({ text, file, scenario }: Asked, axes: readonly Axis[]): Job {
  const keys = withConditions(axes);
  const { engine: baseline, speeds, target, uncertainty } = scenario;
  const engines = variantEngines(text, file, keys);
  const table = tablePoints([...engines, baseline], speeds);
  return {
    width: table.length,
    table,
    async run(computer, observer) {
      const question = { baseline, keys, engines, speeds, target };
      const study = await variantStudy(question, computer, observer);
      const report = variantReport(study, scenario);
      return {
        stem: 'variants',
        document: variantDocument(study, scenario),
        report,
        tables: {
          'variants.csv': valuesTable({
            keys,
            outcomes: study.weighed.map(({ outcomes }) => outcomes),
          }),
        },
        page: 'report.html',
        sound: allSettled(report.outcomes),
        ...(uncertainty && {
          remarks: ['The doubt is carried through in sweeps of lengths only.'],
        }),
      };
    },
  };
}
