/** Volumetric efficiency over lengths and speeds as a table whose cells are tinted by value. */
import type { LengthStudy } from '../decision/lengthStudy.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { brief, efficiency } from './figures.ts';
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
  const tones = tint(share);
  const mark = settled ? '' : '*';
  return html`<td style="background:rgb(${tones.join(' ')});color:${inkOn(tones)}">${efficiency(value)}${mark}</td>`;
}

/** Red, green and blue, 0 to 255. */
function tint(share: number): number[] {
  const [from, to, at] = share < 0.5 ? [LOW, MIDDLE, 2 * share] : [MIDDLE, HIGH, 2 * share - 1];
  return from.map((tone, i) => Math.round(tone + at * (to[i]! - tone)));
}

/** Black or white, whichever stands out more: above 4.5 to 1 on any ground (WCAG 2.2, 1.4.3). */
function inkOn(tones: readonly number[]): string {
  const [red, green, blue] = tones.map((tone) => {
    const share = tone / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const luminance = 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  return 1.05 / (luminance + 0.05) > (luminance + 0.05) / 0.05 ? '#fff' : '#000';
}
