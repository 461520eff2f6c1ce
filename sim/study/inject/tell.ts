/** The study of injector placement in sentences. */

import { difference, sprayOf } from '../../decision/placementEffects.ts';
import { leanTime } from '../../decision/tipIn.ts';
import { inMilliseconds, rpm, share as shareText } from '../../report/figures.ts';
import { fillingChange, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { leadCautions } from '../cylinders.ts';
import { rippleCautions } from '../resolution.ts';
import { type PlacementStudy, placementOutcomes } from './compute.ts';
import * as figure from './figure.ts';
import {
  COVERED,
  partLoadTable,
  pulsesTable,
  SPEEDS_NOTES,
  speedsTable,
  verdict,
} from './tables.ts';
import { TRIED_NOTES, triedTable, triedWords } from './tellTried.ts';

/** Least fuel lost that is spoken of, in a share of the fuel: half of the last digit told. */
const LEAST_TOLD = 0.005;

/** Said wherever the outer injector is spoken of. */
export const FUEL_CAUTIONS: readonly string[] = [
  'Fuel sprayed above open trumpets stands in the open over a hot engine. Shield the exhaust, keep the stand-off fog away from it, and expect a back-fire through the trumpets to light it.',
  'Fit a catch tray with a drain to a safe place under every injector above a mouth, and have fire protection that reaches it.',
  'Pressure-test rails, hoses and joints for leaks cold and hot before the engine is started, and after every piece of work.',
  'Where the share is switched, walls of the trumpet must first be wetted: cylinders run lean for the time stated. Blend over load and speed, and enrich on the dynamometer with the mixture watched at every cylinder.',
  'Who may work on fuel systems, and what is allowed, is for licensed practice, the rules of your event and the law where you live; they come before anything here.',
];

/** The answer, then what stands behind it. */
export function placementSentences(study: PlacementStudy): string[] {
  return [
    answer(study),
    gains(study),
    lossWords(study),
    ...(study.tried ? [triedWords(study, study.tried)] : []),
    partLoadWords(study),
    ...pulseWords(study),
  ].filter((sentence) => sentence !== '');
}

function answer({ choice, above, speeds }: PlacementStudy): string {
  const { reason, switchOver, share, meanGain, meanUncertainty, bestStart } = choice;
  const mean = volumetric(meanGain);
  const doubt = `the model's own uncertainty of ${shareText(meanUncertainty, 2)}`;
  if (reason === 'never-pays') {
    return `Keep all fuel near the valve: over no range up to ${rpm(speeds[speeds.length - 1]!)} does "${above}" gain air (mean ${mean} of a full cylinder at best).`;
  }
  if (reason === 'below-uncertainty') {
    return `Keep all fuel near the valve: what "${above}" gains, ${mean} of a full cylinder on the mean from ${rpm(bestStart ?? speeds[0]!)} on, which is its best range, is below ${doubt}.`;
  }
  const most = shareText(Math.max(...share), 0);
  const limit = choice.limitedByFlow ? ', as much as its flow allows' : '';
  const where =
    reason === 'pays-everywhere'
      ? `Use "${above}" at full load at every speed`
      : `Switch to "${above}" at ${rpm(switchOver!)} at full load`;
  const from = reason === 'pays-everywhere' ? 'over them all' : 'from there on';
  return `${where}, with up to ${most} of the fuel${limit}, and stay near the valve at part load: ${from} it gains ${mean} of a full cylinder on the mean, more than ${doubt}.`;
}

function gains({ speeds, split, outcomes, uncertainty }: PlacementStudy): string {
  const gain = speeds.map((_, i) => difference(outcomes.above[i]!, outcomes.near[i]!));
  const known = gain.map((value) => value ?? Number.NEGATIVE_INFINITY);
  const best = known.indexOf(Math.max(...known));
  const mean = (values: (number | undefined)[]) => {
    const list = values.filter((value): value is number => value !== undefined);
    return volumetric(list.reduce((sum, value) => sum + value, 0) / list.length);
  };
  const losing = speeds.filter((_, i) => (gain[i] ?? 0) < -uncertainty.value);
  const loses = losing.length > 0 ? `, and loses at ${losing.join(', ')} rpm` : '';
  return `Used alone it gains most at ${rpm(speeds[best]!)}, ${volumetric(known[best]!)}${loses}. Against fuel that evaporates only in the cylinder, the outer injector changes filling by ${mean(split.cooling)} through cooling and ${mean(split.displacement)} through vapour that takes room, means of all speeds; the rest comes from waves that colder, heavier gas shifts to lower speeds (${mean(split.waveShift)} on the mean, either way at single speeds), which another trumpet length can undo or use.`;
}

/** What of the fuel does not come back; nothing where that is less than is told. */
function lossWords({ above, outcomes }: PlacementStudy): string {
  const known = outcomes.above.flatMap((outcome) => {
    const lost = sprayOf(outcome)?.lost;
    return lost === undefined ? [] : [{ lost, speed: outcome.speed }];
  });
  const most = known.reduce((a, b) => (b.lost > a.lost ? b : a), { lost: 0, speed: 0 });
  const least = known.reduce((a, b) => (b.lost < a.lost ? b : a), most);
  if (most.lost < LEAST_TOLD) return '';
  const from = known.length > 1 ? `${shareText(least.lost, 0)} at ${rpm(least.speed)} to ` : '';
  return `Of fuel that all comes from "${above}", ${from}${shareText(most.lost, 0)} at ${rpm(most.speed)} misses the mouth, or is blown out of it and in still air not drawn back: it is injected on top, gives nothing, and hangs over the engine as vapour and drops.`;
}

function partLoadWords({ partLoad }: PlacementStudy): string {
  const [near, above] = partLoad.points;
  if (!near || !above) return '';
  const words = (point: typeof near) =>
    `${shareText(point.share, 0)} lands on walls with a time constant of ${inMilliseconds(point.time, 0)}, so that after a step of the throttle the mixture is more than 5 % lean for ${inMilliseconds(leanTime(point, COVERED), 0)}`;
  return `At part load (${rpm(partLoad.speed)}, plate at ${partLoad.throttleAngle} deg): near the valve ${words(near)}; above the trumpet ${words(above)}.`;
}

function pulseWords({ pulses }: PlacementStudy): string[] {
  return pulses.map((pulse) => {
    const full = `${inMilliseconds(pulse.fullPulse, 1)}, ${shareText(pulse.fullDuty, 0)} of the cycle, at the highest speed`;
    const idle = `${inMilliseconds(pulse.idlePulse, 2)} at idle, where ${inMilliseconds(pulse.smallestPulse, 2)} is the least that repeats well`;
    return `Alone, "${pulse.name}" would be open for ${full} and ${idle}: ${verdict(pulse)}.`;
  });
}

/** Volumetric efficiency as a change in per cent of a full cylinder. */
function volumetric(value: number): string {
  return told(fillingChange('', ''), value);
}

/** Why no points are computed between: parcels and settling leave 0.2 % in a point (placementEffects.ts), which would be chased. */
const BETWEEN =
  'the doubt of the mean counts it, by the scatter of the gains from speed to speed. Points between are not sought, since a spray leaves as much scatter in them as curves are resolved to';

export function placementReport(study: PlacementStudy, scenario: Scenario): Report {
  return {
    about: 'Injectors',
    scenario,
    answer: placementSentences(study),
    flags: [
      ...leadCautions(scenario.engine),
      ...rippleCautions([scenario.engine], study.speeds, BETWEEN),
    ],
    sections: [
      { heading: 'Mind', items: FUEL_CAUTIONS },
      {
        plots: [
          figure.gainPlot(study),
          figure.fillingPlot(study),
          figure.coolingPlot(study),
          figure.splitPlot(study),
          figure.evaporationPlot(study, scenario),
          figure.standOffPlot(study),
        ],
      },
      { tables: [speedsTable(study)], notes: SPEEDS_NOTES },
      ...(study.tried ? [{ tables: [triedTable(study.tried)], notes: TRIED_NOTES }] : []),
      { tables: [partLoadTable(study), pulsesTable(study)] },
    ],
    outcomes: placementOutcomes(study),
  };
}
