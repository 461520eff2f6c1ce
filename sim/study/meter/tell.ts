/** Which sensor to trust, in sentences: the answer first, then why. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { rpm, share } from '../../report/figures.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { isBoosted } from '../length/freeFeed.ts';
import { type MeterStudy, meterOutcomes, trustCounts } from './compute.ts';
import { SENSORS, type Sensor } from './errors.ts';
import { errorsPlot, flowPlot } from './figure.ts';
import * as t from './tables.ts';
import * as words from './words.ts';
import { type Known, knownOf, plate } from './words.ts';

export function meterSentences(study: MeterStudy, unit?: LengthUnit): string[] {
  return [
    verdictWords(study),
    whereWords(study),
    words.meterWords(study, unit),
    words.ringingWords(study),
    words.throughWords(study),
    words.rangeWords(study),
    words.pressureWords(study),
    words.angleWords(study),
    words.quickWords(study),
  ];
}

export function verdictWords(study: MeterStudy): string {
  const known = knownOf(study);
  if (known.length === 0) return 'Nothing could be computed.';
  const counts = trustCounts(study);
  const most = Math.max(...SENSORS.map((one) => counts[one]));
  const [first, others] = [true, false].map((best) =>
    SENSORS.filter((one) => (counts[one] === most) === best),
  ) as [Sensor[], Sensor[]];
  const rest = others.map((one) => `${t.SENSOR_NAMES[one]} at ${counts[one]}; `).join('');
  const none =
    counts.none > 0
      ? `none of the three is so near at ${counts.none}`
      : 'one of the three is so near at each';
  return (
    `Trust ${first.map(article).join(' and ')} most: of ${known.length} speeds and openings ${first.length > 1 ? 'each is' : 'it is'} the least wrong at ${most}, within ` +
    `${share(study.meter.allowed, 0)} of the air; ${rest}${none}.`
  );
}

const article = (sensor: Sensor) =>
  sensor === 'flow' ? 'the flow meter' : `the ${t.SENSOR_NAMES[sensor]}`;

/** Speed by speed, neighbours that agree together. */
function whereWords(study: MeterStudy): string {
  const rows = study.meter.speeds.map((speed) => {
    const row = knownOf(study).filter((one) => one.speed === speed);
    return `${rpm(speed)}: ${stretchesOf(row).map(stretchWords).join(', ') || 'not known'}`;
  });
  return `By speed, plates above their stop. ${rows.join('; ')}.`;
}

interface Stretch {
  trust?: Sensor;
  from: number;
  to: number;
}

function stretchesOf(row: readonly Known[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { errors, above } of row) {
    const last = stretches.at(-1);
    if (last && last.trust === errors.trust) last.to = above;
    else stretches.push({ ...(errors.trust && { trust: errors.trust }), from: above, to: above });
  }
  return stretches;
}

function stretchWords({ trust, from, to }: Stretch): string {
  const name = trust ? t.SENSOR_NAMES[trust] : 'none';
  return from === to ? `${name} at ${plate(from)}` : `${name} ${plate(from)} to ${plate(to)}`;
}

/** Said wherever a sensor is chosen. */
export const METER_CAUTIONS: readonly string[] = [
  'A sensor that reads low leans every cylinder at once: set fuel with lambda measured, the engine warm, rich first.',
  'A backfire passes the meter. Nothing in the snorkel may come loose: it would hold a plate open.',
  'Any one sensor dead must leave an engine that stops or runs rich, and plates that shut. Local rules and licensed practice come first.',
];

const LIMITS =
  'Errors are of the mean reading over a cycle at rest. Flow: by pulsation at the meter and by the meter itself. Pressure: joined runners, its own error and the ripple left, by how the air changes ' +
  'with it between the openings on either side. Angle: its own error likewise, and the day. Independent errors add as squares. Air temperature is known to all. The box is one volume, cylinders alike, cells 40 mm ' +
  'in the intake and 60 mm in the snorkel; swirl, dirt and profile at the meter are left out.';

export function meterReport(study: MeterStudy, scenario: Scenario): Report {
  const outcomes = meterOutcomes(study);
  return {
    about: 'Which sensor to trust',
    scenario,
    answer: meterSentences(study, scenario.lengthUnit),
    flags: [
      ...pointCautions([{ name: 'plates at rest', outcomes }]),
      ...givenWords(study),
      ...(isBoosted(study.engine) ? [BOOSTED] : []),
    ],
    sections: [
      { plots: [errorsPlot(study), flowPlot(study)] },
      {
        tables: [
          t.trustTable(study),
          t.seenTable(study),
          t.meterSizesTable(study),
          t.allowedTable(study),
        ],
        notes: [LIMITS],
      },
      { heading: 'Mind', items: METER_CAUTIONS },
    ],
    length: study.engine.intake.trumpet.length,
    outcomes,
  };
}

function givenWords({ meter, airbox }: MeterStudy): string[] {
  const missing = [airbox.given ? '' : 'airbox', meter.given ? '' : 'meter'].filter(Boolean);
  if (missing.length === 0) return [];
  return [
    `The file has no section ${missing.join(' and ')}: what they hold is as is usual, not measured.`,
  ];
}

const BOOSTED =
  'The feed is boosted: the meter is looked at in the pipe between compressor and box. Before a compressor the flow is steadier, and what blows off is counted too; that is not computed.';
