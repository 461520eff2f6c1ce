/** `trims`: from lambda per cylinder to fuel per cylinder. */
import type { Study } from '../study.ts';
import { askedTrims, TRIMS_OPTIONS } from './ask.ts';
import { mixtureTrims } from './compute.ts';
import { cylindersTable, loadsTable, readingsTable, trimsDocument } from './tables.ts';
import { trimsReport } from './tell.ts';

export const trimsStudy: Study = {
  name: 'trims',
  help: 'mixture read cylinder by cylinder: which errors are behind it, and fuel for each',
  options: TRIMS_OPTIONS,
  open(asked) {
    const question = askedTrims(asked);
    const { scenario } = asked;
    return {
      width: 0,
      async run() {
        const study = mixtureTrims(question);
        return {
          stem: 'trims',
          document: trimsDocument(study, scenario),
          report: trimsReport(study, scenario),
          tables: {
            'trims.csv': readingsTable(study),
            'trims-cylinders.csv': cylindersTable(study),
            'trims-loads.csv': loadsTable(study),
          },
          sound: true,
        };
      },
    };
  },
};
