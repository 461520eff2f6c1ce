/** `idle`: what the air of an even idle can come through. */
import { InputError } from '../../errors.ts';
import { allSettled } from '../../report/audit.ts';
import type { Study } from '../study.ts';
import { joinedIdleOf } from './joined.ts';
import { frequencyTable, idleDocument, sparkTable, statesTable, waysTable } from './tables.ts';
import { idleReport } from './tell.ts';

export const idleStudy: Study = {
  name: 'idle',
  help: 'what the air of an even idle can come through',
  options: [],
  open({ file, scenario }) {
    const { engine, idle: spec, pressureBar: bar } = scenario;
    if (!spec) {
      throw new InputError(
        `${file}: there is no section idle; add one with speed and, where measured, air, as scenarios/road-four.yaml has it`,
      );
    }
    return {
      width: 4,
      async run(computer, observer) {
        const study = await joinedIdleOf({ engine, spec, ...(bar && { bar }) }, computer, observer);
        return {
          stem: 'idle',
          document: idleDocument(study, scenario),
          report: idleReport(study, scenario),
          tables: {
            'idle.csv': waysTable(study),
            'idle-computed.csv': statesTable(study),
            'idle-spark.csv': sparkTable(study),
            'idle-valve.csv': frequencyTable(study),
          },
          sound: allSettled(study.outcomes),
        };
      },
    };
  },
};
