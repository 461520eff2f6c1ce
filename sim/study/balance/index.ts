/** `balance`: what a body that differs does and, from readings of the bodies, which screws to turn. */
import { allSettled } from '../../report/audit.ts';
import { textOf } from '../options.ts';
import type { Asked, Job, Study } from '../study.ts';
import { askedRod, askedScrews, BALANCE_OPTIONS, checkBodies } from './ask.ts';
import { FAULTS } from './faults.ts';
import { screwsStudy } from './screws.ts';
import { OFFSETS, spreadStudy } from './spread.ts';
import { bodiesTable, loadsTable, readingsTable, screwsDocument, turnsTable } from './tables.ts';
import { screwsReport } from './tellScrews.ts';
import {
  faultsTable,
  outcomesOf,
  spreadDocument,
  spreadReport,
  spreadTable,
} from './tellSpread.ts';

export const balanceStudy: Study = {
  name: 'balance',
  help: 'what one body that differs does; with readings, which screws to turn, which way, how far',
  options: BALANCE_OPTIONS,
  open(asked) {
    checkBodies(asked.scenario.engine);
    const file = textOf(asked.options, 'readings');
    return file === undefined ? spreadJob(asked) : screwsJob(asked, file);
  },
};

function screwsJob(asked: Asked, file: string): Job {
  const { scenario } = asked;
  const question = askedScrews(scenario.engine, asked.read(file), file);
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
}

function spreadJob(asked: Asked): Job {
  const { scenario } = asked;
  const rod = askedRod(asked);
  return {
    width: 3 * (OFFSETS.length + FAULTS.length),
    async run(computer, observer) {
      const study = await spreadStudy(scenario, computer, observer);
      return {
        stem: 'balance-spread',
        document: spreadDocument(study, scenario),
        report: spreadReport(study, scenario, rod),
        tables: {
          'balance-spread.csv': spreadTable(study),
          'balance-faults.csv': faultsTable(study),
        },
        sound: allSettled(outcomesOf(study)),
      };
    },
  };
}
