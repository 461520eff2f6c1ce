/** How sure the answer is, as a section of the report: words, bands on the curves, what to measure. */
import { bandsOf, type Target } from '../decision/target.ts';
import type { LengthSpread } from '../decision/uncertainty.ts';
import { change, millimetres, percent, scoreName } from './figures.ts';
import { lineChart, type Series } from './htmlChart.ts';
import { figureSection } from './htmlSections.ts';
import { html, type Markup } from './markup.ts';
import { uncertaintySentences } from './questionWords.ts';
import type { Doubt } from './uncertaintyDocument.ts';

export function uncertaintySection(doubt: Doubt, target: Target): Markup {
  const { study, inputs } = doubt;
  const { recommended, baseline, speeds, effects } = study;
  const rows = effects.map(({ input, effect, share }) => {
    const { text, given, why } = inputs.find(({ path }) => path === input)!;
    return html`<tr><th scope="row"><code>${input}</code></th><td>${text}</td><td>${change(effect, 2)}</td><td>${percent(100 * share, 0)}</td><td>${given ? 'given' : why}</td></tr>`;
  });
  return html`<h2>How sure</h2>
${uncertaintySentences(study).map((sentence) => html`<p>${sentence}</p>`)}
${figureSection(
  'Nine of ten engines within the spreads lie between the lines of each length',
  lineChart({
    description: `${scoreName(target.score)} over engine speed: the points with 5 and 95 % of the samples below, for the recommended length and the one fitted now.`,
    xLabel: 'engine speed [rpm]',
    yLabel:
      target.score === 'indicated-torque' ? 'indicated torque [Nm]' : 'volumetric efficiency [-]',
    series: [...ends(baseline, speeds, 'now'), ...ends(recommended, speeds, 'cut')],
    bands: bandsOf(target).map((band) => ({ ...band, name: 'band' })),
  }),
)}
<h3>What to measure next</h3>
<div class="wide" tabindex="0" role="region" aria-label="What to measure next">
<table>
<thead><tr><th scope="col">input</th><th scope="col">spread</th><th scope="col">gain over half of it</th><th scope="col">share of variance</th><th scope="col">origin</th></tr></thead>
<tbody>
${rows}
</tbody>
</table>
</div>`;
}

/** The 5 and 95 % points of a length as two lines, the upper one named. */
function ends(spread: LengthSpread, speeds: readonly number[], look: Series['look']): Series[] {
  const line = (key: 'p5' | 'p95', name: string): Series => ({
    name,
    xs: speeds,
    ys: spread.curve.map((at) => at[key].value),
    look,
  });
  return [line('p5', ''), line('p95', millimetres(spread.length))];
}
