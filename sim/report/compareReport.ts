/** A measured run beside the prediction as a report to keep: one HTML file that reads offline. */
import { isRefusal } from '../decision/calibration.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { compareHeads, compareRows, compareWords } from './compareText.ts';
import type { ScenarioStamp } from './document.ts';
import { lineChart, type Series } from './htmlChart.ts';
import { htmlPage } from './htmlPage.ts';
import { answerSection, figureSection, scenarioSection } from './htmlSections.ts';
import { html, type Markup } from './markup.ts';
import type { MeasuredStudy } from './measuredStudy.ts';

export function compareReport(
  study: MeasuredStudy,
  scenario: Scenario,
  stamp: ScenarioStamp,
): string {
  const { answer, peak, air, meaning, leftOut, fit } = compareWords(study);
  const body = html`<h1>${scenario.title}</h1>
${answerSection([answer, peak], leftOut === '' ? [] : [leftOut])}
${overlay(study)}
<p>${meaning}</p>
<p>${air}</p>
${fit.length === 0 ? [] : [html`<h2>What the run says of the unknowns</h2>`]}
${fit.map((sentence) => html`<p>${sentence}</p>`)}
<h2>Every speed</h2>
${tableMarkup(compareHeads(study), compareRows(study))}
${scenarioSection(scenario)}`;
  return htmlPage(`Run and prediction: ${scenario.title}`, body, stamp);
}

function overlay(study: MeasuredStudy): Markup {
  const { comparison, calibration } = study;
  const torque = comparison.figure === 'brake-torque';
  const xs = comparison.speeds;
  const series: Series[] = [
    { name: 'predicted', xs, ys: comparison.predicted, look: 'cut' },
    { name: 'measured', xs, ys: comparison.measured, look: 'now' },
  ];
  if (calibration && !isRefusal(calibration)) {
    const { speeds, predicted } = calibration.comparison;
    series.push({ name: 'fitted', xs: speeds, ys: predicted, look: 'other' });
  }
  const caption = torque ? 'Brake torque over engine speed' : 'Filling over engine speed';
  const chart = lineChart({
    description: `${caption}: measured and predicted. The figures stand in the table below.`,
    xLabel: 'engine speed [rpm]',
    yLabel: torque ? 'brake torque [Nm]' : 'volumetric efficiency [-]',
    series,
  });
  return figureSection(caption, chart);
}

function tableMarkup(heads: readonly string[], rows: readonly (readonly string[])[]): Markup {
  return html`<div class="wide" tabindex="0" role="region" aria-label="Every speed">
<table>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows.map(([first, ...rest]) => html`<tr><th scope="row">${first!}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>`)}
</tbody>
</table>
</div>`;
}
