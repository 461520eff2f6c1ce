/** `idle`: what the air of an even idle can come through. */
import { InputError } from '../../errors.ts';
import type { Study } from '../study.ts';
import { idleStudyOf } from './compute.ts';
import { frequencyTable, idleDocument, waysTable } from './tables.ts';
import { idleReport } from './tell.ts';

export const idleStudy: Study = {
  name: 'idle',
  help: 'what the air of an even idle can come through',
  options: [],
  open({ file, scenario }) {
    const { engine, idle: spec, pressureBar: bar } = scenario;
    if (!spec) {
      throw new InputError(
        `${file}: there is no section idle; add one with speed and, where measured, air`,
      );
    }
    return {
      width: 0,
      async run() {
        const study = idleStudyOf({ engine, spec, ...(bar && { bar }) });
        return {
          stem: 'idle',
          document: idleDocument(study, scenario),
          report: idleReport(study, scenario),
          tables: { 'idle.csv': waysTable(study), 'idle-valve.csv': frequencyTable(study) },
          sound: true,
        };
      },
    };
  },
};
