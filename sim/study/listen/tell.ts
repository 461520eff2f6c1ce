/** What is heard, in sentences. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
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
import { mouthsInTheOpen } from './source.ts';
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

const missing = ({ box }: ListenStudy): readonly string[] => [
  'Only what mouths breathe: no exhaust, no engine structure, no gears, tyres or fan. The whole car is louder, and mostly by the exhaust unless that is well silenced.',
  `${box ? 'The inlet' : 'Mouths'} in the open over hard ground, nothing beside: no bonnet or bulkhead${box ? ', no walls of the box' : ', airbox or filter'}, no other wall that throws sound back, no wind, no loss in air.`,
  'No noise of turbulence, of lips that whistle or of what strikes a plate: periodic waves alone, every cycle and every cylinder alike.',
];

export function listenSentences(study: ListenStudy): string[] {
  const [first, second] = study.lengths;
  return [
    levelWords(first!, study),
    loudestWords(first!, study.lengthUnit),
    ...(second ? [levelWords(second, study), changeWords(first!, second, study)] : []),
    orderWords(first!, study.speed),
  ];
}

const decibels = (value: number) => q.told(q.decibelsA('', ''), value);

function levelWords({ length, points }: HeardLength, study: ListenStudy): string {
  const { speed, lengthUnit, box } = study;
  const point = points.find(({ outcome }) => outcome.speed === speed)!;
  const [near, far] = [heardA(point, 'near'), heardA(point, 'far')];
  const trumpets = `trumpets of ${lengthIn(length, lengthUnit)}`;
  if (near === undefined || far === undefined) {
    return `With ${trumpets} ${rpm(speed)} could not be computed.`;
  }
  const what = box ? 'The inlet of the box alone' : 'The intake alone';
  return `${what}, full load, ${trumpets}: ${decibels(near)} at ${NEAR} m and ${decibels(far)} at ${FAR.distance} m at ${rpm(speed)}.`;
}

function loudestWords({ length, points }: HeardLength, unit: LengthUnit): string {
  const known = points.filter(({ near }) => near !== undefined);
  if (known.length === 0) return '';
  const loudest = known.reduce((a, b) => (heardA(b, 'near')! > heardA(a, 'near')! ? b : a));
  const level = decibels(heardA(loudest, 'near')!);
  return `With trumpets of ${lengthIn(length, unit)} the loudest of the speeds computed is ${rpm(loudest.outcome.speed)}, with ${level} at ${NEAR} m.`;
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

/** What stands for the mouths where they stand in a box. */
function boxWords({ box }: ListenStudy, { engine }: Scenario): string[] {
  if (!box) return [];
  const given = box.given
    ? ''
    : ' The file has no section airbox: box and snorkel are as is usual, not measured.';
  if (mouthsInTheOpen(engine)) {
    return [`Heard is the end of the snorkel; walls and lid of the box count as silent.${given}`];
  }
  return [
    'The mouths stand in a pressurised box, and nothing of them is heard but through its walls, which is not computed. Told is the inlet of that ' +
      `box as if it ended in the open air: compressor, cooler and pipes before it hold sound back and make noise of their own. Take differences between lengths, not levels.${given}`,
  ];
}

/** Orders in the table for people. */
const SHOWN = 12;

export function listenReport(study: ListenStudy, scenario: Scenario): Report {
  const { lengths, lengthUnit, speed, cutOff, beams, row, box, fullScale } = study;
  const [front, level] = box
    ? ['the inlet', 'its height']
    : ['the middle of the row', 'the height of the mouths'];
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
      ...boxWords(study, scenario),
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
          `Level in dB(A) in front of ${front}: at ${NEAR} m at ${level} (${row.height} m above hard ground), at ${FAR.distance} m at ${FAR.height} m. Orders: at ${NEAR} m, by revolutions.`,
          `Nothing above ${hertz(cutOff)} is in it, where more than plane waves run in ${box ? 'the snorkel' : 'the trumpets'}; above ${hertz(beams)} a mouth sends more ahead than aside, and the level holds less well. The sounds' full scale stands for ${q.told(q.SOUND_PRESSURE, fullScale)} at ${NEAR} m.`,
        ],
      },
      { heading: 'What is not in it', items: missing(study) },
    ],
    outcomes: lengths.flatMap(({ points }) => points.map(({ outcome }) => outcome)),
  };
}
