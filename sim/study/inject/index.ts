/** `inject`: injectors near the valve, above the trumpet, or both, over speed. */
import { InputError } from '../../errors.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { Findings, Study } from '../study.ts';
import { askedTrial, TRY_OPTION } from './ask.ts';
import { type PlacementStudy, placementSettled, placementStudy } from './compute.ts';
import { placementDocument } from './document.ts';
import { placementsTable } from './tables.ts';
import { placementReport } from './tell.ts';
import { triedPointsTable } from './tellTried.ts';

export const injectStudy: Study = {
  name: 'inject',
  help: 'injectors near the valve, above the trumpet, or both, over speed',
  options: [TRY_OPTION],
  open(asked) {
    const { file, scenario } = asked;
    const { engine, injectors, speeds } = scenario;
    if (!injectors || injectors.list.length < 2) {
      throw new InputError(
        `${file}: placement needs two injectors a cylinder; add a section injectors with two rows under each`,
      );
    }
    const trial = askedTrial(asked);
    return {
      width: speeds.length,
      async run(computer, observer) {
        const question = { engine, injectors, speeds, ...(trial && { trial }) };
        return placementFindings(await placementStudy(question, computer, observer), scenario);
      },
    };
  },
};

function placementFindings(study: PlacementStudy, scenario: Scenario): Findings {
  return {
    stem: 'inject',
    document: placementDocument(study, scenario),
    report: placementReport(study, scenario),
    tables: {
      'inject.csv': placementsTable(study),
      ...(study.tried && { 'inject-values.csv': triedPointsTable(study.tried) }),
    },
    sound: placementSettled(study),
  };
}
