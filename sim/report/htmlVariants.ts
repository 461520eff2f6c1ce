/** A sweep of other keys than the length as a report to keep. */
import { efficiencies } from '../decision/tradeOff.ts';
import type { VariantStudy } from '../decision/variantStudy.ts';
import type { Scenario } from '../scenario/resolve.ts';
import type { ScenarioStamp } from './document.ts';
import { change, percent, scoreFigure, scoreName } from './figures.ts';
import type { Series } from './htmlChart.ts';
import { htmlPage } from './htmlPage.ts';
import { speedFigure } from './htmlReport.ts';
import { answerSection, auditSection, cautionSection, scenarioSection } from './htmlSections.ts';
import { html } from './markup.ts';
import { variantSentences } from './variantText.ts';

export function variantReport(
  study: VariantStudy,
  scenario: Scenario,
  stamp: ScenarioStamp,
): string {
  const heads = [...study.keys.map(({ path }) => path), scoreName(study.target.score)];
  const rows = study.weighed.map(
    (variant) =>
      html`<tr class="${variant === study.recommended ? 'cut' : ''}">${variant.texts.map((text) => html`<th scope="row">${text}</th>`)}<td>${scoreFigure(variant.bandMean, study.target.score)}</td><td>${change(variant.gainPercent)}</td><td>${percent(variant.worstLossPercent)}</td><td>${study.pareto.includes(variant) ? 'unbeaten' : ''}</td></tr>`,
  );
  const series = (outcomes: VariantStudy['baseline'], name: string, look: Series['look']) => ({
    name,
    xs: study.speeds,
    ys: efficiencies(outcomes),
    look,
  });
  const { recommended, baseline, target } = study;
  const lines = [
    series(baseline, 'as it is', 'now'),
    series(recommended.outcomes, recommended.texts.join(', '), 'cut'),
  ];
  const curves = [baseline, ...study.weighed.map(({ outcomes }) => outcomes)].map((outcomes) => ({
    length: Number.NaN,
    outcomes,
  }));
  const body = html`<h1>${scenario.title}</h1>
${answerSection(variantSentences(study), [])}
${speedFigure(lines, target, 'best variant against the engine as it is')}
<h2>Every variant</h2>
<div class="wide" tabindex="0" role="region" aria-label="Every variant">
<table>
<thead><tr>${[...heads, 'gain', 'worst loss outside', 'remark'].map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows}
</tbody>
</table>
</div>
${cautionSection()}
${scenarioSection(scenario)}
${auditSection(curves)}`;
  return htmlPage(`Variants: ${scenario.title}`, body, stamp);
}
