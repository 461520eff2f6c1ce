/** `response`: how quickly torque follows the plates at one speed. */
import { allSettled } from '../../report/audit.ts';
import type { Study } from '../study.ts';
import { askedResponse, RESPONSE_OPTIONS } from './ask.ts';
import { responseOutcomes, responseStudyOf } from './compute.ts';
import { fuelledTable } from './leanTables.ts';
import { chargesTable, cylindersTable, responseDocument, waysTable } from './tables.ts';
import { responseReport } from './tell.ts';

export const responseStudy: Study = {
  name: 'response',
  help: 'how quickly torque follows the plates, and how lean it runs: bodies near and far, in a box, plenum',
  options: RESPONSE_OPTIONS,
  open(asked) {
    const question = askedResponse(asked);
    return {
      width: 6,
      async run(computer, observer) {
        const study = await responseStudyOf(question, computer, observer);
        return {
          stem: 'response',
          document: responseDocument(study, asked.scenario),
          report: responseReport(study, asked.scenario),
          tables: {
            'response.csv': waysTable(study),
            'response-cylinders.csv': cylindersTable(study),
            'response-fuelled.csv': fuelledTable(study),
            'response-charges.csv': chargesTable(study),
          },
          sound: allSettled(responseOutcomes(study)),
        };
      },
    };
  },
};
