/** `meter`: which sensor tells the air. */
import type { Scenario } from '../../scenario/resolve.ts';
import { withLength } from '../../sweep/sweep.ts';
import { askedLength, LENGTH_OPTION } from '../options.ts';
import type { Study } from '../study.ts';
import { type MeterQuestion, meterSound, meterStudyOf } from './compute.ts';
import { meterDocument, seenTable, trustTable } from './tables.ts';
import { meterReport } from './tell.ts';

/** With the trumpets of a length [m]. */
export function meterQuestion(scenario: Scenario, length: number): MeterQuestion {
  const { airbox, meter, idle } = scenario;
  const engine = withLength(scenario.engine, length);
  return { engine, airbox, meter, ...(idle && { idleAir: idle.air }) };
}

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
