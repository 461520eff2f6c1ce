/** How sure the answer is, and what to measure next, in words. */

import type { LengthUnit } from '../../decision/lengthUnit.ts';
import type { Estimate } from '../../decision/sampleFigures.ts';
import type { Target } from '../../decision/target.ts';
import type { UncertaintyStudy } from '../../decision/uncertainty.ts';
import { change, lengthIn, share as shareText } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import type { Section } from '../../report/report.ts';
import type { Doubt } from './compute.ts';
import { doubtPlot } from './figure.ts';
import { floorWords, knownWords, lossWords } from './known.ts';
import { contenderName, inputsTable } from './tables.ts';

/** Inputs named in the sentence on what to measure next, and listed below it. */
const NAMED = 3;
const LISTED = 10;

export function uncertaintySentences({ study, asked, inputs, unit }: Doubt): string[] {
  const { gainPercent, better, recommended, baseline, effects, explained, failed } = study;
  const raised =
    asked === undefined
      ? []
      : [
          `${asked} samples were asked for; ${counted(inputs.length, 'input')} in doubt want ${study.samples + failed}.`,
        ];
  if (recommended.length === baseline.length) {
    return [
      'The trumpets fitted now are the answer, so there is no gain to be in doubt about.',
      ...floorWords(study),
      ...winWords(study, unit),
      ...knownWords(study),
      ...raised,
    ];
  }
  const chance = `${oftenWords(better, study.samples)} (${shareText(better.low, 0)} at least)`;
  const first = effects.slice(0, NAMED).filter(({ share }) => share > 0.01);
  const named = first.map(({ input, share }) => `${input} (${mostlyWords(share)})`);
  return [
    `With every input anywhere within its spread, ${contenderName(recommended, unit)} beats ` +
      `${contenderName(baseline, unit)} in the band in ${chance}; ` +
      `the gain is ${change(gainPercent.mean.value)} in the mean, from ` +
      `${change(gainPercent.p5.value)} to ${change(gainPercent.p95.value)} in nine of ten.`,
    ...lossWords(study),
    ...floorWords(study),
    ...winWords(study, unit),
    ...(named.length > 0
      ? [
          `Measure next what the gain hangs on most, with its share of the variance: ${named.join(', ')}.`,
        ]
      : []),
    ...(explained < 0.8
      ? [`The ranking explains only ${shareText(explained, 0)} of the variance: take it as a hint.`]
      : []),
    ...(failed > 0 ? [`${counted(failed, 'sample')} failed and are left out.`] : []),
    ...knownWords(study),
    ...raised,
  ];
}

/** A share of a variance that a sample gives: never all of it. */
const mostlyWords = (share: number) =>
  share > NEARLY_ALL ? `over ${shareText(NEARLY_ALL, 0)}` : shareText(share, 0);
const NEARLY_ALL = 0.99;

/** A share of a finite sample: never all of what there might be, and never none. */
function oftenWords({ value }: Estimate, samples: number): string {
  const of = counted(samples, 'sample');
  if (value === 1) return `all of the ${of}`;
  return value === 0 ? `none of the ${of}` : `${shareText(value, 0)} of ${of}`;
}

/** How often which length wins; nothing where no other came near. */
function winWords({ wins = [], samples }: UncertaintyStudy, unit?: LengthUnit): string[] {
  const [first, ...others] = wins;
  if (!first) return [];
  const name = (length: number) => lengthIn(length, unit);
  const more = others
    .filter(({ share }) => share.value > 0)
    .map(({ length, share }) => `${name(length)} in ${shareText(share.value, 0)}`);
  const never = others.filter(({ share }) => share.value === 0).map(({ length }) => name(length));
  return [
    `Of the lengths near the best ${name(first.length)} wins in ${oftenWords(first.share, samples)} ` +
      `(${shareText(first.share.low, 0)} at least)${more.length > 0 ? `, ${more.join(', ')}` : ''}` +
      `${never.length > 0 ? `; ${never.join(', ')} in none` : ''}.`,
  ];
}

/** The words and the picture; text lists the first of the inputs only, if there is a gain to doubt. */
export function doubtSections(doubt: Doubt, target: Target): Section[] {
  const told: Section = {
    heading: 'How sure',
    sentences: uncertaintySentences(doubt),
    plots: [doubtPlot(doubt, target)],
  };
  if (doubt.study.effects.length === 0) return [told];
  return [
    told,
    { tables: [inputsTable(doubt, LISTED)], only: 'text' },
    { tables: [inputsTable(doubt)], only: 'html' },
  ];
}
