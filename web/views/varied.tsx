/** What the values of other keys give, where the scenario names some. */
import { variantPlot, variantSentences, variantsTable } from '../../sim/index.ts';
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
