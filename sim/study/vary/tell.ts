/** A sweep of other keys than the length, in words. */

import { NEXT_TO_NOTHING } from '../../decision/choice.ts';
import { inTarget } from '../../decision/target.ts';
import type { Cost, WeighedVariant } from '../../decision/variants.ts';
import { change, percent, share } from '../../report/figures.ts';
import { brief, listed } from '../../report/numbers.ts';
import { bandMean, shown } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { fillingCautions, pointCautions } from '../cautions.ts';
import { spreadCautions } from '../cylinders.ts';
import type { Doubt } from '../doubt/compute.ts';
import { doubtSections } from '../doubt/tell.ts';
import { knownNotes, resolutionCautions, resolutionWords } from '../resolution.ts';
import { allOutcomes } from '../study.ts';
import { TRADE_OFF_NOTE } from '../tradeOffs.ts';
import { bandWords, floorWords, lossWords, meanWords } from '../verdict.ts';
import type { VariedStudy } from './compute.ts';
import { keyPlots, variantPlot } from './figure.ts';
import { variantsTable } from './tables.ts';

export function variantSentences(study: VariedStudy): string[] {
  const { weighed, target, recommended, costs } = study;
  if (!weighed.some(({ bandMean }) => Number.isFinite(bandMean))) {
    return [`No answer: no variant could be computed at every speed ${bandWords(target)}.`];
  }
  const found = recommended ? bestWords(study, recommended) : [];
  const known = resolutionWords(study, 'variants');
  return [
    ...found,
    ...(costs ? costWords(study, costs) : []),
    ...moves(study),
    ...(known === '' ? [] : [known]),
  ];
}

function bestWords({ keys, weighed, target, between, speeds }: VariedStudy, best: WeighedVariant) {
  const choice = keys.map(({ path }, k) => `${path} ${best.texts[k]}`).join(' and ');
  const loss = lossOutside(
    best,
    speeds.every((speed) => inTarget(target, speed)),
  );
  const within =
    best.bandLossSpeed === undefined
      ? ''
      : ` Inside the band it loses too, at worst ${lossWords(best.bandLossPercent, best.bandLossSpeed, best.feltBandLossPercent)}.`;
  const more = weighed.some(({ bandMean }) => bandMean > best.bandMean);
  return [
    `Best of those tried: ${choice}. Against the engine as it is the band ${bandWords(target)} gains ` +
      `${change(best.gainPercent)}; ${loss}.${within}`,
    ...(best.meetsFloors
      ? more
        ? ['Another variant would give more in the band but breaks a floor of the target.']
        : []
      : ['No variant meets every floor of the target: this one misses by least.']),
    [flatWords(weighed, best), ...best.floors.map(floorWords)].filter(Boolean).join(' '),
    ...(between === undefined ? [] : topWords(keys, between)),
    ...endWords(keys, best),
  ];
}

/** What is lost outside the bands. */
function lossOutside(best: WeighedVariant, none: boolean): string {
  const { worstLossPercent, worstLossSpeed, feltLossPercent } = best;
  if (none) return 'no speed outside it was computed, so the price there is not known';
  if (!Number.isFinite(worstLossPercent)) {
    return 'the price outside it is not known, because points there failed';
  }
  if (worstLossSpeed === undefined) return 'no speed computed outside it loses';
  return `outside it at worst ${lossWords(worstLossPercent, worstLossSpeed, feltLossPercent)}`;
}

/** Keys whose best value is the first or last of those tried: further on may be better still. */
function endWords(keys: VariedStudy['keys'], best: WeighedVariant): string[] {
  const atEnd = keys.flatMap(({ path, values, texts, condition }, k) => {
    const value = best.values[k]!;
    const [least, most] = [Math.min(...values), Math.max(...values)];
    if (condition || least === most || (value !== least && value !== most)) return [];
    return [
      `${texts[values.indexOf(value)]} is the ${value === least ? 'least' : 'greatest'} value of ${path} tried`,
    ];
  });
  if (atEnd.length === 0) return [];
  return [
    `${atEnd.join(', and ')}, so further on may be better still: widen ${atEnd.length > 1 ? 'their' : 'its'} values and run again.`,
  ];
}

/** The other variants that give next to the same; said only where no floor narrows the choice. */
function flatWords(weighed: readonly WeighedVariant[], best: WeighedVariant): string {
  const near = weighed.filter(
    (one) => one !== best && one.bandMean >= (1 - NEXT_TO_NOTHING) * best.bandMean,
  );
  if (near.length === 0 || best.floors.length > 0) return '';
  const names = listed(near.map(({ texts }) => texts.join(' and ')));
  return `Within ${share(NEXT_TO_NOTHING)} of it in the band: ${names}.`;
}

/** What a condition costs, which nobody chooses. */
function costWords({ keys, target }: VariedStudy, costs: readonly Cost[]): string[] {
  const known = costs.filter(({ bandMean }) => Number.isFinite(bandMean));
  const [kind, hard] = known.reduce(
    ([most, least], one) => [
      one.bandMean > most.bandMean ? one : most,
      one.bandMean < least.bandMean ? one : least,
    ],
    [known[0]!, known[0]!],
  );
  const names = keys.filter(({ condition }) => condition).map(({ path }) => path);
  const are = names.length > 1 ? 'are conditions, not choices' : 'is a condition, not a choice';
  const best = names.length < keys.length ? ', each with the best of the other key' : '';
  return [
    `${names.join(' and ')} ${are}, so no value is recommended. What it costs${best}: ${hard.text} ` +
      `gives ${percent(Math.abs(hard.changePercent))} less in the band ${bandWords(target)} than ` +
      `${kind.text}, a ${meanWords(hard.bandMean, target)} instead of ` +
      `${shown(bandMean(target.score), kind.bandMean)}.`,
  ];
}

/** Where the trend of a single key tops between its values; nothing at their ends. */
function topWords(keys: VariedStudy['keys'], between: number): string[] {
  const { path, values, texts } = keys[0]!;
  const end = [Math.min(...values), Math.max(...values)].includes(between);
  if (values.length < 3 || end) return [];
  const near = values.reduce(
    (at, value, i) => (Math.abs(value - between) < Math.abs(values[at]! - between) ? i : at),
    0,
  );
  return [`The trend of ${path} tops near ${texts[near]}.`];
}

/** How the best of the second key moves with the first; nothing where there is one key. */
function moves({ keys, bestSecond }: VariedStudy): string[] {
  if (!bestSecond) return [];
  const [first, second] = keys;
  const tops = bestSecond.map(({ text, best, between }) => {
    const scale = unitScale(second!, best);
    return `${text}: ${scale ? `${brief(between * scale.factor, 4)} ${scale.unit}` : best.texts[1]}`;
  });
  const curved = bestSecond.some(({ best, between }) => between !== best.values[1]);
  const how = curved ? ', by the parabola through the best and its neighbours' : '';
  return [`Best ${second!.path} for each ${first!.path}${how}: ${tops.join('; ')}.`];
}

/** Factor from SI to the unit of the texts, where the scale has no offset and no dead centre. */
function unitScale(
  { values, texts }: VariedStudy['keys'][number],
  { values: own }: WeighedVariant,
) {
  const at = values.indexOf(own[1]!);
  const match = /^([+-]?[\d.]+(?:[eE][+-]?\d+)?) ?(mm|cm|m|in|rpm|bar|mbar|kPa|)$/.exec(texts[at]!);
  if (!match || Number(match[1]) === 0) return undefined;
  return { factor: Number(match[1]) / values[at]!, unit: match[2]! };
}

export function variantReport(study: VariedStudy, scenario: Scenario, doubt?: Doubt): Report {
  const { weighed, baseline, target } = study;
  const named = weighed.map(({ texts, curve }) => ({
    name: texts.join(', '),
    outcomes: allPoints(curve),
  }));
  return {
    about: 'Variants',
    scenario,
    answer: variantSentences(study),
    flags: [
      ...pointCautions([...named, { name: 'as it is', outcomes: allPoints(study.asItIs) }]),
      ...fillingCautions(scenario.engine, baseline),
      ...spreadCautions(baseline),
      ...resolutionCautions(
        study,
        (place) => weighed[place]?.texts.join(', ') ?? 'the engine as it is',
      ),
    ],
    sections: [
      { plots: [variantPlot(study), ...keyPlots(study)] },
      ...(doubt ? doubtSections(doubt, target) : []),
      {
        tables: [variantsTable(study)],
        notes: [
          `${TRADE_OFF_NOTE} Unbeaten: no other gains as much at a lower price.`,
          ...knownNotes(study.resolution),
        ],
      },
    ],
    outcomes: allOutcomes([...weighed.map(({ curve }) => curve), study.asItIs]),
  };
}
