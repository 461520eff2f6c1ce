/** `balance`: from readings of the bodies to screws. */
import { InputError } from '../../errors.ts';
import { textOf } from '../options.ts';
import type { Study } from '../study.ts';
import { askedScrews, BALANCE_OPTIONS, checkBodies } from './ask.ts';
import { screwsStudy } from './screws.ts';
import { bodiesTable, loadsTable, readingsTable, screwsDocument, turnsTable } from './tables.ts';
import { screwsReport } from './tellScrews.ts';

export const balanceStudy: Study = {
  name: 'balance',
  help: 'flow or vacuum read body by body: which screws to turn, which way, how far',
  options: BALANCE_OPTIONS,
  open(asked) {
    const { scenario, options } = asked;
    checkBodies(scenario.engine);
    const file = textOf(options, 'readings');
    if (file === undefined) {
      throw new InputError('--readings is missing: name the CSV of the readings');
    }
    const question = askedScrews(asked, file);
    return {
      width: 0,
      async run() {
        const study = screwsStudy(question);
        return {
          stem: 'balance',
          document: screwsDocument(study, scenario),
          report: screwsReport(study, scenario),
          tables: {
            'balance.csv': turnsTable(study),
            'balance-bodies.csv': bodiesTable(study),
            'balance-loads.csv': loadsTable(study),
            'balance-readings.csv': readingsTable(study),
          },
          sound: true,
        };
      },
    };
  },
};
