/** Sections that every report has: words, scenario, defaults, cautions, audit. */
import type { Scenario } from '../scenario/resolve.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import { allSettled, auditOf } from './audit.ts';
import { CAUTIONS, KNOWN, NOT_KNOWN } from './cautions.ts';
import { lengthDrawing } from './lengthDrawing.ts';
import { LENGTH_MEANING } from './lengthMeaning.ts';
import { html, type Markup } from './markup.ts';
import { counted } from './numbers.ts';
import { asHtml, tableOf, words } from './table.ts';
import { wrapped } from './textTable.ts';

/** The answer first; what stands against it right below. */
export function answerSection(sentences: readonly string[], flags: readonly string[]): Markup {
  return html`<section class="answer" aria-label="Answer">
${sentences.filter((sentence) => sentence !== '').map((sentence) => html`<p>${unbroken(sentence)}</p>`)}
</section>
${flags.map((flag) => html`<p class="flag" role="note">${unbroken(flag)}</p>`)}`;
}

/** Keeps figure and unit on one line. */
function unbroken(sentence: string): string {
  return sentence.replace(/(\d) (?=mm\b|rpm\b|%)/g, '$1\u00a0');
}

/** A picture under its heading; it scrolls sideways where the window is too narrow for it. */
export function figureSection(caption: string, picture: Markup): Markup {
  return html`<figure>
<figcaption>${caption}</figcaption>
<div class="wide" tabindex="0" role="region" aria-label="${caption}">
${picture}
</div>
</figure>`;
}

export function meaningSection(scenario: Scenario, length: number): Markup {
  return html`<h2>What the length means</h2>
<p>${LENGTH_MEANING}</p>
${figureSection('From where to where', lengthDrawing(scenario.engine.intake, length, scenario.lengthUnit))}`;
}

export function cautionSection(): Markup {
  return html`<h2>Before you cut and run</h2>
${list(CAUTIONS)}`;
}

export function knownSection(): Markup {
  return html`<h2>What the computation knows</h2>
${list(KNOWN)}
<h3>And what it does not</h3>
${list(NOT_KNOWN)}`;
}

export function scenarioSection(scenario: Scenario): Markup {
  const { defaultsUsed, warnings, spreads, notes } = scenario;
  const sections = scenario.facts.map(
    ({ heading, facts }) => html`<h3>${heading}</h3>
<table class="words"><tbody>
${facts.map(({ label, text }) => html`<tr><th scope="row">${label}</th><td>${text}</td></tr>`)}
</tbody></table>`,
  );
  return html`<h2>The engine as it was understood</h2>
${notes === '' ? [] : [html`<p>${notes}</p>`]}
${warnings.map(({ path, message }) => html`<p class="flag" role="note"><code>${path}</code>: ${message}</p>`)}
${spreads.length === 0 ? [] : [html`<p>Given with doubt, computed at the middle: ${spreads.map(({ path }) => path).join(', ')}.</p>`]}
${sections}
<h2>Defaults used</h2>
${
  defaultsUsed.length === 0
    ? html`<p>None: the file gives every figure.</p>`
    : html`<p>The file does not say these, so they were taken.</p>
${asHtml(defaultsTable(scenario))}`
}`;
}

/** Whether every point settled, and how well mass and energy add up. */
export function auditSection(outcomes: readonly PointOutcome[]): Markup {
  if (outcomes.length === 0) {
    return html`<h2>Audit</h2>
<p>This answer rests on no computed cycle, so there is none to audit.</p>`;
  }
  const { mass_error_max: mass, energy_error_max: energy } = auditOf(outcomes);
  const settled = allSettled(outcomes)
    ? `All ${counted(outcomes.length, 'point')} settled.`
    : 'Points that failed or did not settle are marked above; they are no answer.';
  const balance =
    mass === null || energy === null
      ? 'No point could be audited.'
      : `Over the last cycle of each, mass adds up to ${mass.toExponential(0)} of what was drawn in and ` +
        `energy to ${energy.toExponential(0)} of the heat released, at worst: round-off.`;
  return html`<h2>Audit</h2>
<p>${settled} ${balance}</p>`;
}

export function list(items: readonly string[]): Markup {
  return html`<ul>
${items.map((item) => html`<li>${item}</li>`)}
</ul>`;
}

/** What is unusual in a scenario, as lines of text; none where nothing is. */
export function warningLines({ warnings }: Scenario, width: number): string[] {
  if (warnings.length === 0) return [];
  const lines = warnings.flatMap(({ path, message }) =>
    wrapped(`${path}: ${message}`, width - 2, '  '),
  );
  return ['Warnings', ...lines.map((line) => `  ${line}`), ''];
}

/** What a scenario does not say and so was taken. */
export function defaultsTable({ defaultsUsed }: Scenario) {
  return tableOf<Scenario['defaultsUsed'][number]>(
    'Defaults used',
    [
      words('key', 'key', ({ path }) => path),
      words('value', 'value', ({ value }) => value),
      words('why', 'why', ({ why }) => why),
    ],
    defaultsUsed,
  );
}
