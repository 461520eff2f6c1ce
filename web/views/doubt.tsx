/** The curves of both lengths with the room that the spreads of the inputs leave them. */
import { bandsTable, doubtPlot, USUAL_UNCERTAINTY, uncertaintySentences } from '../../sim/index.ts';
import { resultOf } from '../state/asked.ts';
import { doubt } from '../state/doubt.ts';
import type { Picture } from '../state/picture.ts';
import { askedView } from './asked.tsx';

export const doubtView = askedView({
  id: 'doubt',
  question: 'How sure is it, when my figures are not exact?',
  width: 'half',
  height: 400,
  study: doubt,
  reading:
    'Many engines are drawn, each input anywhere within its spread: the one in the file, or what the trade can measure. The strips hold nine engines of ten.',
  sentences: uncertaintySentences,
  plot: (found, { scenario }) => doubtPlot(found, scenario.target),
  table: bandsTable,
  decimals: 3,
  ask: {
    label: 'Work out how sure it is',
    cost: ({ study: { full }, scenario: { uncertainty = USUAL_UNCERTAINTY, speeds } }) =>
      `At least ${2 * uncertainty.samples * (full?.sampling?.speeds ?? speeds).length} points, some minutes of all cores; the page goes on working meanwhile.`,
    ready: ({ study }) => study.full !== undefined,
  },
});

/** Whether the study has found anything to rank. */
export function ranked(_: Picture): boolean {
  return (resultOf(doubt)?.study.effects.length ?? 0) > 0;
}
