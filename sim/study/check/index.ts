/** `check`: reads a scenario and says what it was understood to be. */
import type { Study } from '../study.ts';
import { checkDocument } from './tables.ts';
import { checkReport } from './tell.ts';

export const checkStudy: Study = {
  name: 'check',
  help: 'read a scenario and say what it was understood to be',
  options: [],
  reads: true,
  open: ({ scenario }) => ({
    width: 0,
    run: async () => ({
      stem: 'check',
      document: checkDocument(scenario),
      report: checkReport(scenario),
      tables: {},
      sound: true,
    }),
  }),
};
