/** The study of injector placement in sentences, and as text for the command line. */
import { difference, type PlacementStudy, sprayOf } from '../decision/placement.ts';
import { leanTime } from '../decision/tipIn.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { isFailure } from '../sweep/runner.ts';
import { change, efficiency, fixed, NO_FIGURE, percent, rpm } from './figures.ts';
import { textTable, wrapped } from './textTable.ts';

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
  return [answer(study), gains(study), partLoadWords(study), ...pulseWords(study)];
}

function answer({ choice, above, speeds }: PlacementStudy): string {
  const { reason, switchOver, share, meanGain, meanUncertainty, bestStart } = choice;
  const mean = volumetric(meanGain);
  const doubt = `the model's own uncertainty of ${percent(100 * meanUncertainty, 2)}`;
  if (reason === 'never-pays') {
    return `Keep all fuel near the valve: over no range up to ${rpm(speeds[speeds.length - 1]!)} does "${above}" gain air (mean ${mean} of a full cylinder at best).`;
  }
  if (reason === 'below-uncertainty') {
    return `Keep all fuel near the valve: what "${above}" gains, ${mean} of a full cylinder on the mean from ${rpm(bestStart ?? speeds[0]!)} on, which is its best range, is below ${doubt}.`;
  }
  const most = percent(100 * Math.max(...share), 0);
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

function partLoadWords({ partLoad }: PlacementStudy): string {
  const [near, above] = partLoad.points;
  if (!near || !above) return '';
  const words = (point: typeof near) =>
    `${percent(100 * point.share, 0)} lands on walls with a time constant of ${fixed(point.time * 1e3, 0)} ms, so that after a step of the throttle the mixture is more than 5 % lean for ${fixed(leanTime(point, 0.05) * 1e3, 0)} ms`;
  return `At part load (${rpm(partLoad.speed)}, plate at ${partLoad.throttleAngle} deg): near the valve ${words(near)}; above the trumpet ${words(above)}.`;
}

function pulseWords({ pulses }: PlacementStudy): string[] {
  return pulses.map((pulse) => {
    const full = `${fixed(pulse.fullPulse * 1e3, 1)} ms, ${percent(100 * pulse.fullDuty, 0)} of the cycle, at the highest speed`;
    const idle = `${fixed(pulse.idlePulse * 1e3, 2)} ms at idle, where ${fixed(pulse.smallestPulse * 1e3, 2)} ms is the least that repeats well`;
    const verdict =
      pulse.servesFull && pulse.servesIdle
        ? 'it could do both'
        : pulse.servesFull
          ? 'large enough for full load, too large for idle'
          : pulse.servesIdle
            ? 'fine enough for idle, too small for full load alone'
            : 'it can do neither alone';
    return `Alone, "${pulse.name}" would be open for ${full} and ${idle}: ${verdict}.`;
  });
}

/** Volumetric efficiency as a change in per cent of a full cylinder. */
function volumetric(value: number): string {
  return change(100 * value, 2);
}

export function placementText(study: PlacementStudy, scenario: Scenario): string[] {
  return [
    scenario.title,
    '',
    ...placementSentences(study).flatMap((sentence) => wrapped(sentence, 92, '  ')),
    '',
    ...placementRows(study),
    '',
    'VE: volumetric efficiency; gains in per cent of a full cylinder. Evaporated: before the valve, of',
    'the fuel injected. Stand-off: drops blown out of the mouth. Lost: fuel that does not come back.',
    '',
    'Mind',
    ...FUEL_CAUTIONS.flatMap((caution) => wrapped(`- ${caution}`, 90, '  ')),
    '',
  ];
}

function placementRows(study: PlacementStudy): string[] {
  const { speeds, outcomes, choice } = study;
  const heads = [
    'speed',
    'VE near',
    'above',
    'both',
    'gain above',
    'evaporated',
    'T closing',
    'film',
    'stand-off',
    'lost',
    'share',
    '',
  ];
  const units = [
    '[rpm]',
    '[-]',
    '[-]',
    '[-]',
    '[%]',
    'near/above [%]',
    'near/above [K]',
    'above [mg]',
    '[%]',
    '[%]',
    '[%]',
    '',
  ];
  const rows = speeds.map((speed, i) => {
    const [near, above, both] = [outcomes.near[i]!, outcomes.above[i]!, outcomes.both[i]!];
    const [nearSpray, spray] = [sprayOf(near), sprayOf(above)];
    const ve = (point: typeof near) =>
      isFailure(point) ? NO_FIGURE : efficiency(point.volumetricEfficiency);
    const T = (point: typeof near) =>
      isFailure(point) ? NO_FIGURE : fixed(point.chargeTemperature, 0);
    const share = (value: number | undefined) => fixed(100 * (value ?? Number.NaN), 0);
    const settled = [near, above, both].every((point) => !isFailure(point) && point.settled);
    return [
      String(speed),
      ve(near),
      ve(above),
      ve(both),
      fixed(100 * (difference(above, near) ?? Number.NaN), 2),
      `${share(nearSpray?.evaporatedUpstream)}/${share(spray?.evaporatedUpstream)}`,
      `${T(near)}/${T(above)}`,
      fixed((spray?.filmMass ?? Number.NaN) * 1e6, 0),
      fixed(100 * (spray?.standOff ?? Number.NaN), 1),
      fixed(100 * (spray?.lost ?? Number.NaN), 1),
      share(choice.share[i]),
      settled ? '' : 'not settled',
    ];
  });
  return textTable(heads, [units, ...rows], [11]);
}
