/** `plenum`: individual bodies beside one throttle and a plenum. */
import { withLength } from '../../sweep/sweep.ts';
import { askedLength, LENGTH_OPTION } from '../options.ts';
import type { Study } from '../study.ts';
import { plenumSound, plenumStudyOf } from './compute.ts';
import { plenumDocument, plenumTable, sensedTable } from './tables.ts';
import { plenumReport } from './tell.ts';

export const plenumStudy: Study = {
  name: 'plenum',
  help: 'individual bodies beside one throttle and a plenum on the same engine',
  options: [LENGTH_OPTION],
  open(asked) {
    const { scenario } = asked;
    const { plenum, speeds, target, refine, lengthUnit } = scenario;
    const engine = withLength(scenario.engine, askedLength(asked));
    return {
      width: speeds.length,
      async run(computer, observer) {
        const question = { engine, plenum, speeds, target, refine, lengthUnit };
        const study = await plenumStudyOf(question, computer, observer);
        return {
          stem: 'plenum',
          document: plenumDocument(study, scenario),
          report: plenumReport(study, scenario),
          tables: { 'plenum.csv': plenumTable(study), 'plenum-part.csv': sensedTable(study) },
          sound: plenumSound(study),
        };
      },
    };
  },
};
