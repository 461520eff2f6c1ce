/** `pedal`: force at the foot, and whether every plate shuts with any one part gone. */
import { InputError } from '../../errors.ts';
import type { Study } from '../study.ts';
import { pedalStudyOf } from './compute.ts';
import { closingTable, effortTable, pedalDocument, springTable } from './tables.ts';
import { pedalReport } from './tell.ts';

export const pedalStudy: Study = {
  name: 'pedal',
  help: 'force at the foot, and whether plates shut with any single part gone',
  options: [],
  open({ file, scenario }) {
    const { pedal } = scenario;
    if (!pedal) {
      throw new InputError(
        `${file}: there is no section pedal; add one with pedal, cable, shafts and springs, as docs/pedal.md shows`,
      );
    }
    return {
      width: 0,
      async run() {
        const study = pedalStudyOf(pedal);
        return {
          stem: 'pedal',
          document: pedalDocument(study, scenario),
          report: pedalReport(study, scenario),
          tables: {
            'pedal.csv': effortTable(study),
            'pedal-closing.csv': closingTable(study),
            'pedal-springs.csv': springTable(study),
          },
          sound: true,
        };
      },
    };
  },
};
