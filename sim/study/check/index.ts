/** `check`: reads a scenario and says what it was understood to be. */
import type { Study } from '../study.ts';
import { effectQuestion, effectsOf } from './effects.ts';
import { checkDocument } from './tables.ts';
import { checkReport } from './tell.ts';

export const checkStudy: Study = {
  name: 'check',
  help: 'read a scenario and say what it was understood to be',
  options: [
    { flags: '--effects', help: 'rank the defaults by what they move, computed on a coarse mesh' },
  ],
  reads: true,
  open(asked) {
    const { scenario } = asked;
    const question = asked.options.effects === true ? effectQuestion(asked) : undefined;
    return {
      width: question ? question.engines.length * question.speeds.length : 0,
      async run(computer, observer) {
        const effects = question && (await effectsOf(question, computer, observer));
        return {
          stem: 'check',
          document: checkDocument(scenario, effects),
          report: checkReport(scenario, effects),
          tables: {},
          sound: true,
        };
      },
    };
  },
};
