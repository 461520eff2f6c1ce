/** A sweep, or one curve, as a report to keep: one HTML file that reads offline. */
import type { LengthCurve, LengthStudy } from '../decision/lengthStudy.ts';
import { bandsOf, type Score, type Target } from '../decision/target.ts';
import { efficiencies } from '../decision/tradeOff.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { isFailure } from '../sweep/runner.ts';
import type { ScenarioStamp } from './document.ts';
import {
  brief,
  change,
  efficiency,
  fixed,
  millimetres,
  NO_FIGURE,
  percent,
  rpm,
  scoreFigure,
  scoreName,
} from './figures.ts';
import { lineChart, type Series } from './htmlChart.ts';
import { efficiencyMap } from './htmlMap.ts';
import { htmlPage } from './htmlPage.ts';
import {
  answerSection,
  auditSection,
  cautionSection,
  figureSection,
  meaningSection,
  scenarioSection,
} from './htmlSections.ts';
import { uncertaintySection } from './htmlUncertainty.ts';
import { type LengthRow, lengthTable, rowRemark, studyCurves } from './lengthTable.ts';
import { html, type Markup } from './markup.ts';
import { bandWords, curveSentences, decisionWords } from './summary.ts';
import type { Doubt } from './uncertaintyDocument.ts';

/** The whole study. */
export function sweepReport(
  study: LengthStudy,
  scenario: Scenario,
  stamp: ScenarioStamp,
  doubt?: Doubt,
): string {
  const { answer, gain, price, found, shelf, mixed, feed, cautions } = decisionWords(study);
  const body = html`<h1>${scenario.title}</h1>
${answerSection([answer, gain, price, found, shelf, mixed, feed], cautions)}
${speedFigure(studySeries(study), study.target, 'recommended length against the trumpets fitted now')}
${lengthFigure(lengthTable(study), study.target.score)}
${doubt ? uncertaintySection(doubt, study.target) : html``}
<h2>Every length</h2>
${lengthTableMarkup(lengthTable(study), study.target.score)}
${paretoMarkup(study)}
<h2>Every point</h2>
<p class="note">Volumetric efficiency; rows are lengths, columns speeds. The lighter, the fuller. A star marks a point that did not settle.</p>
${efficiencyMap(study)}
${meaningSection(scenario, study.recommended.length)}
${cautionSection()}
${scenarioSection(scenario)}
${auditSection(studyCurves(study))}`;
  return htmlPage(`Trumpet length: ${scenario.title}`, body, stamp);
}

/** One length. */
export function curveReport(curve: LengthCurve, scenario: Scenario, stamp: ScenarioStamp): string {
  const { speeds, target } = scenario;
  const [head, ...flags] = curveSentences(curve, speeds, target);
  const series: Series[] = [
    { name: millimetres(curve.length), xs: speeds, ys: efficiencies(curve.outcomes), look: 'cut' },
  ];
  const body = html`<h1>${scenario.title}</h1>
${answerSection([head!], flags)}
${speedFigure(series, target, 'one length')}
<h2>Every speed</h2>
${curveTableMarkup(curve)}
${meaningSection(scenario, curve.length)}
${cautionSection()}
${scenarioSection(scenario)}
${auditSection([curve])}`;
  return htmlPage(`Trumpets of ${millimetres(curve.length)}: ${scenario.title}`, body, stamp);
}

/** The recommended length, the one fitted now, and the ends of the sweep as a backdrop. */
function studySeries(study: LengthStudy): Series[] {
  const { speeds, recommended, baseline, tried } = study;
  const series = (curve: LengthCurve, look: Series['look'], word: string): Series => ({
    name: `${millimetres(curve.length)}${word}`,
    xs: speeds,
    ys: efficiencies(curve.outcomes),
    look,
  });
  const shown = new Set([recommended.length, baseline.length]);
  const ends = [tried[0]!, tried[tried.length - 1]!].filter(({ length }) => !shown.has(length));
  const keep = recommended.length === baseline.length;
  return [
    ...ends.map((curve) => series(curve, 'other', '')),
    ...(keep ? [] : [series(baseline, 'now', ' fitted now')]),
    series(recommended, 'cut', keep ? ' keep' : ' cut this'),
  ];
}

export function speedFigure(series: Series[], target: Target, what: string): Markup {
  const chart = lineChart({
    description:
      `Volumetric efficiency over engine speed: ${what}; the band ${bandWords(target)} is ` +
      'shaded. The figures stand in the tables below.',
    xLabel: 'engine speed [rpm]',
    yLabel: 'volumetric efficiency [-]',
    series,
    bands: bandsOf(target).map((band) => ({ ...band, name: 'band' })),
  });
  return figureSection('Volumetric efficiency over engine speed', chart);
}

/** The mean of every length, with the one recommended and the one fitted now picked out. */
function lengthFigure(rows: readonly LengthRow[], score?: Score): Markup {
  const series = (of: readonly LengthRow[], look: Series['look'], name: string): Series => ({
    name,
    xs: of.map((row) => row.length * 1e3),
    ys: of.map((row) => row.bandMean),
    look,
  });
  const now = rows.filter((row) => row.baseline && !row.recommended);
  const chart = lineChart({
    description:
      'What each trumpet length is worth in the band. The figures stand in the table below.',
    xLabel: 'trumpet length [mm]',
    yLabel: scoreName(score),
    series: [
      series(rows, 'other', ''),
      series(now, 'now', now.length > 0 ? 'fitted now' : ''),
      series(
        rows.filter((row) => row.recommended),
        'cut',
        now.length > 0 ? 'cut this' : 'keep',
      ),
    ],
  });
  return figureSection('What each length is worth in the band', chart);
}

function lengthTableMarkup(rows: readonly LengthRow[], score?: Score): Markup {
  const body = rows.map((row) => {
    const look = row.recommended ? 'cut' : row.baseline ? 'now' : '';
    const loss = row.worstLossSpeed === undefined ? NO_FIGURE : percent(row.worstLossPercent);
    const at = row.worstLossSpeed === undefined ? NO_FIGURE : rpm(row.worstLossSpeed);
    const gain = row.baseline ? NO_FIGURE : change(row.gainPercent);
    return html`<tr class="${look}"><th scope="row">${millimetres(row.length)}</th><td>${scoreFigure(row.bandMean, score)}</td><td>${gain}</td><td>${loss}</td><td>${at}</td><td>${rowRemark(row)}</td></tr>`;
  });
  return html`<div class="wide" tabindex="0" role="region" aria-label="Every length">
<table>
<thead><tr><th scope="col">length</th><th scope="col">${scoreName(score)}</th><th scope="col">gain</th><th scope="col">worst loss outside</th><th scope="col">at</th><th scope="col">remark</th></tr></thead>
<tbody>
${body}
</tbody>
</table>
</div>`;
}

/** Lengths that no other beats in gain without a higher price. */
function paretoMarkup({ pareto }: LengthStudy): Markup {
  const words = pareto.map(
    ({ length, gainPercent, worstLossPercent }) =>
      `${millimetres(length)} (${change(gainPercent)}, at worst ${percent(worstLossPercent)} less outside)`,
  );
  return html`<p>No other length gains as much at a lower price as these: ${words.join('; ')}.</p>`;
}

function curveTableMarkup({ outcomes }: LengthCurve): Markup {
  const rows = outcomes.map((outcome) =>
    isFailure(outcome)
      ? html`<tr><th scope="row">${brief(outcome.speed, 6)}</th><td class="failed" colspan="6">${outcome.failure}</td></tr>`
      : html`<tr><th scope="row">${brief(outcome.speed, 6)}</th><td>${efficiency(outcome.volumetricEfficiency)}</td><td>${fixed(outcome.pressureAtClosing / 1e3, 1)}</td><td>${fixed(outcome.chargeTemperature, 0)}</td><td>${percent(100 * outcome.residualFraction)}</td><td>${fixed(outcome.indicatedTorque, 0)}</td><td>${outcome.settled ? 'yes' : 'NO'}</td></tr>`,
  );
  return html`<div class="wide" tabindex="0" role="region" aria-label="Every speed">
<table>
<thead><tr><th scope="col">rpm</th><th scope="col">volumetric efficiency</th><th scope="col">pressure at closing [kPa]</th><th scope="col">charge [K]</th><th scope="col">residual gas</th><th scope="col">indicated torque [Nm]</th><th scope="col">settled</th></tr></thead>
<tbody>
${rows}
</tbody>
</table>
</div>`;
}
