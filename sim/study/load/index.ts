/** `load`: filling over plate angle and speed. */
import { isFailure } from '../../sweep/runner.ts';
import type { Study } from '../study.ts';
import { askedLoad, LOAD_OPTIONS } from './ask.ts';
import { fillingMap } from './compute.ts';
import { loadDocument, loadTables } from './tables.ts';
import { loadReport } from './tell.ts';

export const loadStudy: Study = {
  name: 'load',
  help: 'filling over plate angle and speed, and what the air of the day does to it',
  options: LOAD_OPTIONS,
  open(asked) {
    const question = askedLoad(asked);
    return {
      width: question.mostAngles * question.mostSpeeds,
      async run(computer, observer) {
        const study = await fillingMap(question, computer, observer);
        return {
          stem: 'load',
          document: loadDocument(study),
          report: loadReport(study),
          tables: loadTables(study),
          sound: study.outcomes.flat().every((one) => !isFailure(one) && one.settled),
        };
      },
    };
  },
};
