/** `signal`: what a pressure sensor on joined runners sees. */
import { InputError } from '../../errors.ts';
import { firesEvenly } from '../../firings.ts';
import { allSettled } from '../../report/audit.ts';
import type { Study } from '../study.ts';
import { sensorStudy } from './compute.ts';
import { signalDocument } from './document.ts';
import { barsTable, cycleTable, pointsTable } from './tables.ts';
import { signalReport } from './tell.ts';

export const signalStudy: Study = {
  name: 'signal',
  help: 'what a pressure sensor on joined runners sees, over speed and plate angle',
  options: [],
  open({ file, scenario }) {
    const { engine, pressureBar: spec } = scenario;
    if (!firesEvenly(engine)) {
      throw new InputError(
        `${file}: the signal takes cylinders fired evenly, and engine.firing has them fire unevenly; trace has the pressure behind the plate of one cylinder`,
      );
    }
    if (!spec) {
      throw new InputError(
        `${file}: the signal needs hoses and a bar; add a section pressureBar with hoseLength, hoseBore and volume, as scenarios/road-four.yaml has it`,
      );
    }
    return {
      width: spec.speeds.length * spec.angles.length,
      async run(computer, observer) {
        const study = await sensorStudy({ engine, spec }, computer, observer);
        return {
          stem: 'signal',
          document: signalDocument(study, scenario),
          report: signalReport(study, scenario),
          tables: {
            'signal.csv': pointsTable(study),
            'signal-bars.csv': barsTable(study),
            'signal-cycle.csv': cycleTable(study),
          },
          sound: allSettled(study.outcomes),
        };
      },
    };
  },
};
