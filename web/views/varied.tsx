/** What the values of other keys give, where the scenario names some. */
import { quantities as q, variantPlot, variantSentences, variantsTable } from '../../sim/index.ts';
import { parallel } from '../drawing/parallel.ts';
import type { View } from '../drawing/view.ts';
import { resultOf } from '../state/asked.ts';
import { hasVaried, varied } from '../state/varied.ts';
import { askedView } from './asked.tsx';

export const variedView = askedView({
  id: 'varied',
  question: 'What do the other keys give?',
  width: 'wide',
  study: varied,
  applies: hasVaried,
  reading:
    'Every value of the keys under sweep.vary at every speed, weighed against the engine as it is, as the length is. What the day brings, air and mixture, is costed and never recommended.',
  sentences: variantSentences,
  plot: variantPlot,
  table: variantsTable,
  decimals: 3,
  ask: {
    label: 'Try the values',
    cost: ({ scenario: { sweep, speeds } }) => {
      const values = (sweep.vary ?? []).reduce((product, { texts }) => product * texts.length, 1);
      return `${(values + 1) * speeds.length} points; the page goes on working meanwhile.`;
    },
  },
});

const found = () => resultOf(varied)!;

/** All variants at once, once they are worked out: which values go with which gain and which price. */
export const variedTogetherView: View = {
  id: 'varied-together',
  question: 'Which values go with which gain and price?',
  width: 'wide',
  asked: true,
  applies: hasVaried,
  reading: () =>
    'A line is a variant, an axis what it has, from the least to the greatest; point at a line to read it. The best is thick; of the others the warm ones gain more in your band, the cold ones less.',
  summary: () => variantSentences(found())[0] ?? '',
  ready: () => resultOf(varied) !== undefined,
  figure: (_, look) => parallel(variantsTable(found()), look, q.GAIN.key),
  table: () => variantsTable(found()),
  watch: () => [varied.state.value],
};
