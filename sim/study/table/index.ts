/** `table`: values of one key or two at every speed, as they come: nothing is weighed. */
import { InputError } from '../../errors.ts';
import { allSettled } from '../../report/audit.ts';
import { variantsOf } from '../../scenario/variants.ts';
import { sweep, tablePoints } from '../../sweep/sweep.ts';
import type { Study, StudyOption } from '../study.ts';
import { askedVary, refuseInert, VARY_OPTION } from '../vary/ask.ts';
import { rowsJob } from './rowsJob.ts';
import { tableDocument, valuesTable } from './tables.ts';
import { tableReport } from './tell.ts';

const ROWS_OPTION: StudyOption = {
  flags: '--rows <file>',
  help: 'variants from a CSV: keys in the head, a row a variant; results as CSV and Parquet',
};

export const tableStudy: Study = {
  name: 'table',
  help: 'values of one key or two at every speed, as they come, without deciding',
  options: [
    { ...VARY_OPTION, help: VARY_OPTION.help.replace(' in place of the length', '') },
    ROWS_OPTION,
  ],
  stored: true,
  merge: 'merge',
  mergedBy: 'rows',
  open(asked) {
    if (asked.options.rows !== undefined) return rowsJob(asked);
    const { text, file, scenario } = asked;
    const keys = askedVary(asked);
    if (keys.length === 0) {
      throw new InputError(
        '--vary is missing: name a key with its values, or --rows with a table of them',
      );
    }
    const variants = variantsOf(text, file, keys);
    refuseInert(keys, variants);
    const engines = variants.all();
    const table = tablePoints(engines, scenario.speeds);
    return {
      width: table.length,
      table,
      async run(computer, observer) {
        const outcomes = await sweep(engines, scenario.speeds, computer, observer);
        const values = { keys, outcomes, engines };
        return {
          stem: 'table',
          document: tableDocument(values, scenario),
          report: tableReport(values, scenario),
          tables: { 'table.csv': valuesTable(values, scenario) },
          sound: allSettled(outcomes.flat()),
        };
      },
    };
  },
};
