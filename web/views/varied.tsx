/** What the values of other keys give, where the scenario names some. */
import { quantities as q, variantPlot, variantSentences, variantsTable } from '../../sim/index.ts';
import { axesOf, parallel } from '../drawing/parallel.ts';
import type { View } from '../drawing/view.ts';
import { ChooseSpan } from '../parts/ChooseSpan.tsx';
import { resultOf } from '../state/asked.ts';
import { drawSpan, spans } from '../state/spans.ts';
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
    'A line is a variant, an axis what it has, from the least to the greatest; point at a line to read it. The best is thick; the stronger a line, the further its gain in your band lies from the middle. Draw along an axis, or set its ends below, to keep the variants within.',
  summary: () => variantSentences(found())[0] ?? '',
  ready: () => resultOf(varied) !== undefined,
  figure: (_, look) => parallel(variantsTable(found()), look, q.GAIN.key, spans.value),
  table: () => variantsTable(found()),
  onDrag: (_, x, y, begins) => drawSpan(Math.round(x), y, begins),
  Below: ChooseSpans,
  watch: () => [varied.state.value, spans.value],
};

/** The ends of every axis, for the keyboard, and how many variants lie within. */
function ChooseSpans() {
  if (!resultOf(varied)) return null;
  return <ChooseSpan axes={axesOf(variantsTable(found()))} />;
}
