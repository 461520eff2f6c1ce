/** How sure the answer is, and what to measure next, in words. */
import type { Target } from '../../decision/target.ts';
import type { UncertaintyStudy } from '../../decision/uncertainty.ts';
import { change, share as shareText } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import type { Section } from '../../report/report.ts';
import type { Doubt } from './compute.ts';
import { doubtPlot } from './figure.ts';
import { contenderName, inputsTable } from './tables.ts';

/** Inputs named in the sentence on what to measure next, and listed below it. */
const NAMED = 3;
const LISTED = 10;

export function uncertaintySentences(study: UncertaintyStudy): string[] {
  const { gainPercent, better, recommended, baseline, effects, explained, failed } = study;
  if (recommended.length === baseline.length) {
    return ['The trumpets fitted now are the answer, so there is no gain to be in doubt about.'];
  }
  const chance = `${shareText(better.value, 0)} (${shareText(better.low, 0)} at least)`;
  const first = effects.slice(0, NAMED).filter(({ share }) => share > 0.01);
  const named = first.map(({ input, share }) => `${input} (${shareText(share, 0)})`);
  return [
    `With every input anywhere within its spread, ${contenderName(recommended)} beats ` +
      `${contenderName(baseline)} in the band in ${chance} of ${counted(study.samples, 'sample')}; ` +
      `the gain is ${change(gainPercent.mean.value)} in the mean, from ` +
      `${change(gainPercent.p5.value)} to ${change(gainPercent.p95.value)} in nine of ten.`,
    ...(named.length > 0
      ? [`Measure next what the gain hangs on most: ${named.join(', ')} of its variance.`]
      : []),
    ...(explained < 0.8
      ? [`The ranking explains only ${shareText(explained, 0)} of the variance: take it as a hint.`]
      : []),
    ...(failed > 0 ? [`${counted(failed, 'sample')} failed and are left out.`] : []),
  ];
}

/** The words and the picture; text lists the first of the inputs only. */
export function doubtSections(doubt: Doubt, target: Target): Section[] {
  return [
    {
      heading: 'How sure',
      sentences: uncertaintySentences(doubt.study),
      plots: [doubtPlot(doubt, target)],
    },
    { tables: [inputsTable(doubt, LISTED)], only: 'text' },
    { tables: [inputsTable(doubt)], only: 'html' },
  ];
}
