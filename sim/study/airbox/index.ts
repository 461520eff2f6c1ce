/** `airbox`: a box over the trumpets beside the open air. */
import { withLength } from '../../sweep/sweep.ts';
import { askedLength, LENGTH_OPTION } from '../options.ts';
import type { Study } from '../study.ts';
import { airboxSound, airboxStudyOf } from './compute.ts';
import { airboxDocument, airboxTable, boxedLengthsTable, cylindersTable } from './tables.ts';
import { airboxReport } from './tell.ts';

export const airboxStudy: Study = {
  name: 'airbox',
  help: 'a box over the trumpets: what it does to filling, to the best length, to each cylinder',
  options: [LENGTH_OPTION],
  open(asked) {
    const { scenario } = asked;
    const { airbox, speeds, target, refine, lengthUnit } = scenario;
    const { lengths } = scenario.sweep;
    const engine = withLength(scenario.engine, askedLength(asked));
    return {
      width: 2 * speeds.length,
      async run(computer, observer) {
        const question = { engine, airbox, speeds, target, refine, lengths, lengthUnit };
        const study = await airboxStudyOf(question, computer, observer);
        return {
          stem: 'airbox',
          document: airboxDocument(study, scenario),
          report: airboxReport(study, scenario),
          tables: {
            'airbox.csv': airboxTable(study),
            'airbox-lengths.csv': boxedLengthsTable(study),
            'airbox-cylinders.csv': cylindersTable(study),
          },
          sound: airboxSound(study),
        };
      },
    };
  },
};
