/** `worth`: whether individual bodies pay on this engine, on one page. */
import type { Study } from '../study.ts';
import { worthSound, worthStudyOf } from './compute.ts';
import { worthDocument, worthTable } from './tables.ts';
import { worthReport } from './tell.ts';

export const worthStudy: Study = {
  name: 'worth',
  help: 'whether individual bodies pay on this engine, on one page to print',
  options: [],
  open(asked) {
    const { scenario } = asked;
    return {
      width: scenario.speeds.length * scenario.sweep.lengths.length,
      async run(computer, observer) {
        const study = await worthStudyOf(asked, computer, observer);
        return {
          stem: 'worth',
          document: worthDocument(study, scenario),
          report: worthReport(study, scenario),
          tables: { 'worth.csv': worthTable(study) },
          sound: worthSound(study),
        };
      },
    };
  },
};
