/** Volumetric efficiency over lengths and speeds as a table whose cells are tinted by value. */
import type { LengthStudy } from '../decision/lengthStudy.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { brief, efficiency, fixed } from './figures.ts';
import { studyCurves } from './lengthTable.ts';
import { html, type Markup } from './markup.ts';

/** Dark blue to light yellow: even in lightness, safe for the colour-blind, readable in grey. */
const LOW = [24, 46, 92] as const;
const MIDDLE = [112, 120, 122] as const;
const HIGH = [252, 228, 110] as const;

export function efficiencyMap(study: LengthStudy): Markup {
  const { speeds, recommended, baseline } = study;
  const curves = studyCurves(study);
  const known = curves
    .flatMap((curve) => curve.outcomes)
    .flatMap((one) => (isFailure(one) ? [] : [one.volumetricEfficiency]));
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const head = speeds.map((speed) => html`<th scope="col">${brief(speed, 6)}</th>`);
  const rows = curves.map((curve) => {
    const remark =
      curve.length === recommended.length ? ' cut' : curve.length === baseline.length ? ' now' : '';
    const cells = curve.outcomes.map((outcome) => cellMarkup(outcome, low, high));
    return html`<tr><th scope="row">${brief(curve.length * 1e3, 5)}${remark}</th>${cells}</tr>`;
  });
  return html`<div class="wide" tabindex="0" role="region" aria-label="Volumetric efficiency of every length and speed">
<table class="map">
<thead><tr><th scope="col">mm \\ rpm</th>${head}</tr></thead>
<tbody>
${rows}
</tbody>
</table>
</div>`;
}

function cellMarkup(outcome: PointOutcome, low: number, high: number): Markup {
  if (isFailure(outcome)) return html`<td class="failed">failed</td>`;
  const { volumetricEfficiency: value, settled } = outcome;
  const share = high > low ? (value - low) / (high - low) : 0.5;
  const ink = share > 0.55 ? '#111' : '#fff';
  const mark = settled ? '' : '*';
  return html`<td style="background:${tint(share)};color:${ink}">${efficiency(value)}${mark}</td>`;
}

function tint(share: number): string {
  const [from, to, at] = share < 0.5 ? [LOW, MIDDLE, 2 * share] : [MIDDLE, HIGH, 2 * share - 1];
  const mixed = from.map((tone, i) => fixed(tone + at * (to[i]! - tone), 0));
  return `rgb(${mixed.join(' ')})`;
}
