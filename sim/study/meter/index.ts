/** `meter`: which sensor tells the air. */
import { askedLength, LENGTH_OPTION } from '../options.ts';
import type { Study } from '../study.ts';
import { meterQuestion } from './ask.ts';
import { meterSound, meterStudyOf } from './compute.ts';
import { meterDocument, seenTable, trustTable } from './tables.ts';
import { meterReport } from './tell.ts';

export const meterStudy: Study = {
  name: 'meter',
  help: 'which sensor to trust: a flow meter in the inlet of the box, pressure, or plate angle',
  options: [LENGTH_OPTION],
  open(asked) {
    const { scenario } = asked;
    const question = meterQuestion(scenario, askedLength(asked));
    const { speeds, angles } = question.meter;
    return {
      width: speeds.length * angles.length,
      async run(computer, observer) {
        const study = await meterStudyOf(question, computer, observer);
        return {
          stem: 'meter',
          document: meterDocument(study, scenario),
          report: meterReport(study, scenario),
          tables: { 'meter.csv': trustTable(study), 'meter-signals.csv': seenTable(study) },
          sound: meterSound(study),
        };
      },
    };
  },
};
