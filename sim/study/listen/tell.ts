/** What is heard, in sentences. */
import { lengthIn, rpm } from '../../report/figures.ts';
import { listed } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { frequencyOf, orderOf } from '../../sound/orders.ts';
import { pointCautions } from '../cautions.ts';
import { leadCautions } from '../cylinders.ts';
import { FAR, type HeardLength, type ListenStudy, NEAR } from './compute.ts';
import { levelPlot, ordersPlot } from './figure.ts';
import {
  difference,
  type HeardOrder,
  heardA,
  orderLevelA,
  ordersHeld,
  ordersTable,
  speedsTable,
} from './tables.ts';

/** Said wherever noise is spoken of. */
export const NOISE_CAUTIONS: readonly string[] = [
  'Open trumpets at full load harm hearing within minutes close by: wear ear plugs and muffs together at the dynamometer and beside the car, and keep others away or protected. Rules for workplaces ask for protection from 85 dB(A) over the day (2003/10/EC, upper action value, from memory).',
  'Begin to play a sound with the volume turned down. All sounds here share one scale, not the level there was.',
  'Noise limits on roads and at circuits count the whole vehicle and are measured as their rules say; what is licensed or allowed where you live comes before anything here.',
];

const MISSING: readonly string[] = [
  'Only what mouths breathe: no exhaust, no engine structure, no gears, tyres or fan. The whole car is louder, and mostly by the exhaust unless that is well silenced.',
  'Mouths in the open over hard ground, nothing beside them: no bonnet, bulkhead, airbox or filter, no other wall that throws sound back, no wind, no loss in air.',
  'No noise of turbulence, of lips that whistle or of what strikes a plate: periodic waves alone, every cycle and every cylinder alike.',
];

export function listenSentences(study: ListenStudy): string[] {
  const [first, second] = study.lengths;
  return [
    levelWords(first!, study),
    loudestWords(first!),
    ...(second ? [levelWords(second, study), changeWords(first!, second, study)] : []),
    orderWords(first!, study.speed),
  ];
}

const decibels = (value: number) => q.told(q.decibelsA('', ''), value);

function levelWords({ length, points }: HeardLength, { speed, lengthUnit }: ListenStudy): string {
  const point = points.find(({ outcome }) => outcome.speed === speed)!;
  const [near, far] = [heardA(point, 'near'), heardA(point, 'far')];
  const trumpets = `trumpets of ${lengthIn(length, lengthUnit)}`;
  if (near === undefined || far === undefined) {
    return `With ${trumpets} ${rpm(speed)} could not be computed.`;
  }
  return `The intake alone, full load, ${trumpets}: ${decibels(near)} at ${NEAR} m and ${decibels(far)} at ${FAR.distance} m at ${rpm(speed)}.`;
}

function loudestWords({ points }: HeardLength): string {
  const known = points.filter(({ near }) => near !== undefined);
  if (known.length === 0) return '';
  const loudest = known.reduce((a, b) => (heardA(b, 'near')! > heardA(a, 'near')! ? b : a));
  const level = decibels(heardA(loudest, 'near')!);
  return `Loudest of the speeds computed is ${rpm(loudest.outcome.speed)} with ${level} at ${NEAR} m.`;
}

function changeWords(first: HeardLength, second: HeardLength, { lengthUnit }: ListenStudy): string {
  const changes = first.points.flatMap((point, i) => {
    const change = difference(point, second.points[i]!);
    return change === undefined ? [] : [{ speed: point.outcome.speed, change }];
  });
  if (changes.length === 0) return '';
  const mean = changes.reduce((sum, { change }) => sum + change, 0) / changes.length;
  const [quiet, loud] = changes
    .toSorted((a, b) => a.change - b.change)
    .filter((_, i) => i === 0 || i === changes.length - 1);
  const told = (value: number) => q.told({ ...q.decibelsA('', ''), signed: true }, value);
  const ends = [quiet, loud].flatMap((one) =>
    one ? [`${told(one.change)} at ${rpm(one.speed)}`] : [],
  );
  return `Against ${lengthIn(first.length, lengthUnit)} that is ${told(mean)} on the mean of all speeds at ${NEAR} m, from ${ends.join(' to ')}.`;
}

/** Orders that are named. */
const NAMED = 4;

const byLoudness = (orders: readonly HeardOrder[]) =>
  orders.toSorted((a, b) => orderLevelA(b) - orderLevelA(a));

function orderWords(one: HeardLength, speed: number): string {
  const loudest = byLoudness(ordersHeld(one, speed)).slice(0, NAMED);
  if (loudest.length === 0) return '';
  const names = loudest.map(
    ({ orders, entry }) =>
      `${q.told(q.ORDER, orderOf(entry))} (${q.told(q.FREQUENCY, frequencyOf(orders, entry))})`,
  );
  return `Loudest to the ear at ${rpm(speed)}, by engine order: ${listed(names)}.`;
}

/** Orders in the table for people. */
const SHOWN = 12;

export function listenReport(study: ListenStudy, scenario: Scenario): Report {
  const { lengths, lengthUnit, speed, cutOff, beams, row, fullScale } = study;
  const loudest = lengths.flatMap((one) =>
    byLoudness(ordersHeld(one, speed))
      .slice(0, SHOWN)
      .toSorted((a, b) => a.entry - b.entry),
  );
  const hertz = (value: number) => q.told(q.FREQUENCY, value);
  return {
    about: 'Listen',
    scenario,
    answer: listenSentences(study),
    flags: [
      ...pointCautions(
        lengths.map(({ length, points }) => ({
          name: lengthIn(length, lengthUnit),
          outcomes: points.map(({ outcome }) => outcome),
        })),
      ),
      ...leadCautions(scenario.engine),
    ],
    sections: [
      { heading: 'Mind', items: NOISE_CAUTIONS },
      { plots: [levelPlot(study), ...(loudest.length > 0 ? [ordersPlot(study)] : [])] },
      {
        tables: [
          speedsTable(study),
          ordersTable(loudest, lengthUnit, `Loudest orders at ${rpm(speed)}`),
        ],
        notes: [
          `Level in dB(A) in front of the middle of the row: at ${NEAR} m at the height of the mouths (${row.height} m above hard ground), at ${FAR.distance} m at ${FAR.height} m. Orders: at ${NEAR} m, by revolutions.`,
          `Nothing above ${hertz(cutOff)} is in it, where more than plane waves run in the trumpets; above ${hertz(beams)} a mouth sends more ahead than aside, and the level holds less well. The sounds' full scale stands for ${q.told(q.SOUND_PRESSURE, fullScale)} at ${NEAR} m.`,
        ],
      },
      { heading: 'What is not in it', items: MISSING },
    ],
    outcomes: lengths.flatMap(({ points }) => points.map(({ outcome }) => outcome)),
  };
}
