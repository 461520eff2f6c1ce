/** A sweep of other keys than the length, in words. */
import { change, percent, rpm } from '../../report/figures.ts';
import { brief } from '../../report/numbers.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { allOutcomes } from '../study.ts';
import { TRADE_OFF_NOTE } from '../tradeOffs.ts';
import { bandWords } from '../verdict.ts';
import type { VariantStudy, WeighedVariant } from './compute.ts';
import { variantPlot } from './figure.ts';
import { variantsTable } from './tables.ts';

export function variantSentences(study: VariantStudy): string[] {
  const { keys, recommended, target, between, bestSecond } = study;
  if (!Number.isFinite(recommended.bandMean)) {
    return [`No answer: no variant could be computed at every speed ${bandWords(target)}.`];
  }
  const best = keys.map(({ path }, k) => `${path} ${recommended.texts[k]}`).join(' and ');
  const loss =
    recommended.worstLossSpeed === undefined
      ? 'no speed outside it loses'
      : `at worst ${percent(recommended.worstLossPercent)} less outside it, at ${rpm(recommended.worstLossSpeed)}`;
  return [
    `Best of those tried: ${best}. Against the engine as it is the band ${bandWords(target)} gains ` +
      `${change(recommended.gainPercent)}; ${loss}.`,
    ...(recommended.meetsFloors
      ? []
      : ['No variant meets every floor of the target: this one misses by least.']),
    ...(between === undefined ? [] : [topWords(study, between)]),
    ...(bestSecond ? [moveWords(study)] : []),
  ];
}

function topWords({ keys }: VariantStudy, between: number): string {
  const { path, values, texts } = keys[0]!;
  const end = [Math.min(...values), Math.max(...values)].indexOf(between);
  if (values.length < 3 || end >= 0) {
    return `The best stands at the end of the values of ${path}, so further on may be better still.`;
  }
  const near = values.reduce(
    (at, value, i) => (Math.abs(value - between) < Math.abs(values[at]! - between) ? i : at),
    0,
  );
  return `The trend of ${path} tops near ${texts[near]}.`;
}

/** How the best of the second key moves with the first. */
function moveWords({ keys, bestSecond }: VariantStudy): string {
  const [first, second] = keys;
  const moves = bestSecond!.map(({ text, best, between }) => {
    const scale = unitScale(second!, best);
    return `${text}: ${scale ? `${brief(between * scale.factor, 4)} ${scale.unit}` : best.texts[1]}`;
  });
  return `Best ${second!.path} for each ${first!.path}, by the parabola through the best and its neighbours: ${moves.join('; ')}.`;
}

/** Factor from SI to the unit of the texts, where the scale has no offset and no dead centre. */
function unitScale(
  { values, texts }: VariantStudy['keys'][number],
  { values: own }: WeighedVariant,
) {
  const at = values.indexOf(own[1]!);
  const match = /^([+-]?[\d.]+(?:[eE][+-]?\d+)?) ?(mm|cm|m|in|rpm|bar|mbar|kPa|)$/.exec(texts[at]!);
  if (!match || Number(match[1]) === 0) return undefined;
  return { factor: Number(match[1]) / values[at]!, unit: match[2]! };
}

export function variantReport(study: VariantStudy, scenario: Scenario): Report {
  const { weighed, baseline } = study;
  const named = weighed.map(({ texts, outcomes }) => ({ name: texts.join(', '), outcomes }));
  return {
    about: 'Variants',
    scenario,
    answer: variantSentences(study),
    flags: pointCautions([...named, { name: 'as it is', outcomes: baseline }]),
    sections: [
      { plots: [variantPlot(study)] },
      {
        tables: [variantsTable(study)],
        notes: [`${TRADE_OFF_NOTE} Unbeaten: no other gains as much at a lower price.`],
      },
    ],
    outcomes: allOutcomes([...weighed, { outcomes: baseline }]),
  };
}
