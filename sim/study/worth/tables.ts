/** Gains and prices on one page as a table and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { rpm } from '../../report/figures.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { SpreadRow } from '../balance/spread.ts';
import { effectsTable } from '../check/tables.ts';
import { type FedCurve, topPower, widestSpread } from '../fed.ts';
import { WAYS } from '../idle/tables.ts';
import { trustCounts } from '../meter/compute.ts';
import { SENSORS } from '../meter/errors.ts';
import { SENSOR_NAMES } from '../meter/tables.ts';
import { stuck } from '../pedal/compute.ts';
import type { SensedPoint } from '../plenum/compute.ts';
import { SENSED_SWING, SPREAD } from '../plenum/tables.ts';
import { resolutionDocument } from '../resolution.ts';
import { SIGNALS } from '../response/fuelled.ts';
import { READY } from '../response/tables.ts';
import { tradeOffDocument } from '../tradeOffs.ts';
import { type Opening, type WorthStudy, worthOutcomes } from './compute.ts';
import { leanAfter, openingWords, readyAfter, readyWords, type Way } from './opened.ts';

/** One thing that is weighed. */
export interface WorthRow {
  what: string;
  bodies: string;
  plenum: string;
  /** The command that says more. */
  more: string;
}

export type SensedPair = Record<SensedPoint['way'], SensedPoint & { mean: number; swing: number }>;

/** What a sensor is under at the lowest speed and the smallest opening, both ways. */
export function sensedPair({ plenum: { part, speeds } }: WorthStudy): SensedPair | undefined {
  const [bodies, plenum] = (['bodies', 'plenum'] as const).map((way) =>
    part.find(
      (one): one is SensedPair['bodies'] =>
        one.way === way && one.speed === speeds[0] && one.swing !== undefined,
    ),
  );
  return bodies && plenum && { bodies, plenum };
}

/** Error of a plate that is told of [deg]. */
const PLATE_OFF = 0.2;

/** What a plate that stands off does at idle; undefined where it is not known. */
export function plateOff({ plates }: WorthStudy): SpreadRow | undefined {
  return plates?.rows.find(
    ({ load, error, air }) => load.name === 'idle' && error === PLATE_OFF && air !== undefined,
  );
}

const AIR = q.signedShare('', '');
const KPA = { ...SENSED_SWING, digits: 3, finest: 2 };
const NONE = '-';

const row = (what: string, bodies: string, plenum: string, more: string): WorthRow => {
  return { what, bodies, plenum, more };
};

function worthRows(study: WorthStudy): WorthRow[] {
  const { target, weighed, lengthUnit, bodies, onPlenum } = study.plenum;
  const mean = q.bandMean(target.score);
  const score = q.scored(target.score);
  const other = weighed.bandMean / (1 + weighed.gainPercent / 100);
  const spread = widestSpread(onPlenum);
  const apart = `${q.told(SPREAD, spread.spread)} at ${rpm(spread.speed)}`;
  const power = (curve: FedCurve) => {
    const top = topPower(curve);
    return top ? `${q.told(q.FLYWHEEL_POWER[lengthUnit], top.power)} at ${rpm(top.speed)}` : NONE;
  };
  const ours = q.told(mean, weighed.bandMean);
  return [
    row(`mean ${score.name} in the band`, ours, q.told(mean, other), 'plenum, sweep'),
    row('most brake power', power(bodies), power(onPlenum), 'plenum'),
    ...responseRows(study),
    ...(bodies.engine.cylinder.count > 1
      ? [row('cylinders apart by their place', NONE, apart, 'plenum')]
      : []),
    ...besides(study),
  ];
}

/** Until torque is there, plates opened a little and wide, and what comes lean then. */
function responseRows(study: WorthStudy): WorthRow[] {
  const ready = (opening: Opening) =>
    row(
      `torque there, ${openingWords(study, opening)}`,
      readyWords(study, opening, 'bodies'),
      readyWords(study, opening, 'plenum'),
      'response',
    );
  const lean = (way: Way) => {
    const counts = SIGNALS.map((signal) => leanAfter(study, way, signal));
    return counts.every((count) => count !== undefined) ? counts.join(', ') : NONE;
  };
  const mixture = `charges lean then, by ${SIGNALS.join(', ')}`;
  return [ready('little'), ready('wide'), row(mixture, lean('bodies'), lean('plenum'), 'response')];
}

/** What each of the other studies puts in, where the file asks it. */
function besides(study: WorthStudy): WorthRow[] {
  const { idle, pedal } = study;
  const [pair, off] = [sensedPair(study), plateOff(study)];
  const swing = (one: SensedPair['bodies']) =>
    `${q.told(KPA, one.swing)} about ${q.told(KPA, one.mean)}`;
  const way = idle?.best ? WAYS[idle.best.name][1] : 'no way that reaches';
  const shuts = pedal && stuck(pedal).length === 0 ? 'yes' : 'NO';
  const at = pair && rpm(pair.bodies.speed);
  return [
    ...(pair
      ? [row(`signal nearly shut, ${at}`, swing(pair.bodies), swing(pair.plenum), 'signal')]
      : []),
    row('sensor to trust', trusted(study), NONE, 'meter'),
    ...(off
      ? [row(`idle air of one plate ${PLATE_OFF} deg off`, q.told(AIR, off.air!), NONE, 'balance')]
      : []),
    ...(idle ? [row('idle air, cold and with load', way, NONE, 'idle')] : []),
    ...(pedal ? [row('plates shut with any one part gone', shuts, NONE, 'pedal')] : []),
  ];
}

/** Each sensor with the places at which it is the least wrong. */
function trusted({ meter }: WorthStudy): string {
  const counts = trustCounts(meter);
  const told = SENSORS.toSorted((a, b) => counts[b] - counts[a]);
  return (
    told.map((one) => `${SENSOR_NAMES[one]} at ${counts[one]}`).join(', ') +
    `, none at ${counts.none}`
  );
}

export function worthTable(study: WorthStudy): Table {
  return tableOf<WorthRow>(
    'Weighed side by side',
    [
      words('what', 'what', ({ what }) => what),
      words('individual_bodies', 'individual bodies', ({ bodies }) => bodies),
      words('plenum', 'plenum', ({ plenum }) => plenum),
      words('more', 'told by', ({ more }) => more),
    ],
    worthRows(study),
  );
}

const OPENINGS: readonly Opening[] = ['little', 'wide'];

function responseDocument(study: WorthStudy, opening: Opening) {
  const { speed, from, to, seconds } = study.response[opening].question;
  const ready = (way: Way) => q.filed(READY, readyAfter(study, opening, way));
  return {
    speed_rpm: speed,
    from_above_stop_deg: from,
    to_above_stop_deg: to,
    within_ms: q.filed(READY, seconds),
    all_there_ms: { bodies: ready('bodies'), plenum: ready('plenum') },
  };
}

export function worthDocument(study: WorthStudy, scenario: Scenario) {
  const { length, plenum, fitted, effects, idle, pedal } = study;
  const { score } = plenum.target;
  const [pair, off] = [sensedPair(study), plateOff(study)];
  const top = (curve: FedCurve) => {
    const found = topPower(curve);
    return found ? { kW: q.filed(q.FLYWHEEL_POWER.mm, found.power), at_rpm: found.speed } : null;
  };
  return {
    ...documentHead('worth', scenario),
    recommended_length_mm: q.filed(q.LENGTH, length.recommended.length),
    plenum_given: plenum.plenum.given,
    recommended_against_plenum: tradeOffDocument(plenum.weighed, score),
    fitted_against_plenum: tradeOffDocument(fitted, score),
    ...(plenum.resolution && { plenum_resolution: resolutionDocument(plenum.resolution) }),
    recommended_against_fitted: tradeOffDocument(length.decision, score),
    most_brake_power: { bodies: top(plenum.bodies), plenum: top(plenum.onPlenum) },
    response: OPENINGS.map((opening) => responseDocument(study, opening)),
    turns_to_fill: { port: plain(plenum.turns.port), plenum: plain(plenum.turns.plenum) },
    signal_swing_kPa: pair
      ? {
          bodies: q.filed(SENSED_SWING, pair.bodies.swing),
          plenum: q.filed(SENSED_SWING, pair.plenum.swing),
        }
      : null,
    sensor_trusted_at: trustCounts(study.meter),
    plate_off_air_change: plain(off?.air),
    idle_best: idle?.best?.name ?? null,
    closes_with_any_part_gone: pedal ? stuck(pedal).length === 0 : null,
    side_by_side: asObjects(worthTable(study)),
    defaults_by_effect: asObjects(effectsTable(effects)),
    audit: auditOf(worthOutcomes(study)),
  };
}
