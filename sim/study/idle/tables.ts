/** Ways of idle air as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObject, asObjects, type Column, column, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { REMARK } from '../points.ts';
import { NEAR } from './asking.ts';
import type { FrequencyRow, IdleStudy, SparkReserve } from './compute.ts';
import type { JoinedIdle } from './joined.ts';
import type { StateWay } from './moves.ts';
import type { IdleNeed, IdleState } from './need.ts';
import { dutyOf } from './settings.ts';
import type { LateSpark } from './spark.ts';
import type { IdleWay, WayName } from './ways.ts';

export { dutyOf };

/** What each way is called in tables, and in sentences. */
export const WAYS: Record<WayName, readonly [short: string, long: string]> = {
  ajar: ['plates ajar', 'plates ajar'],
  bleeds: ['bleeds', 'a bleed in each body'],
  own: ['own bar', 'a valve into a bar of its own'],
  shared: ['pressure bar', 'a valve into the pressure bar'],
  one: ['one cylinder', 'all through one cylinder'],
  driven: ['driven plates', 'driven plates'],
};

const airFlow = (key: string, head: string): q.Quantity => ({
  ...q.MASS_FLOW,
  key,
  head,
  name: head,
  decimals: 2,
});
export const AIR = airFlow('air_warm_g_per_s', 'warm');
const NEED: readonly Column<IdleNeed>[] = [
  column(AIR, ({ warm }) => warm),
  column(airFlow('air_loaded_g_per_s', 'warm with load'), ({ loaded }) => loaded),
  column(airFlow('air_cold_g_per_s', 'cold'), ({ cold }) => cold),
  column(airFlow('air_for_load_g_per_s', 'for the load'), ({ load }) => load),
  column(airFlow('air_most_g_per_s', 'most'), ({ most }) => most),
];

export const OPENING = q.plateAngle('above_stop_deg', 'above stop');
export const BORE = q.boreOf('drilling_mm', 'drilling');
export const DUTY = q.percentOf('duty_warm', 'duty warm', { decimals: 0 });
export const SPREAD = q.percentOf('air_of_one_above_others', 'one above', {
  name: 'air of the one that is off above the others',
});
export const LAMBDA = q.ratio('lambda_of_it', 'its lambda', 3);
export const REACH = q.ratio('reach', 'reach');
export const TURNS = q.ratio('turns_to_respond', 'turns', 1);
export const RIPPLE = q.kilopascals('signal_ripple_kPa', 'ripple', { decimals: 2 });
export const OFFSET = q.kilopascals('signal_offset_kPa', 'offset', { decimals: 2 });

/** One row a way. */
export function waysTable({ ways, best, cylinders }: IdleStudy, rows = ways) {
  const uneven: Column<IdleWay>[] = [
    column(SPREAD, ({ spread }) => spread),
    column(LAMBDA, ({ lambda }) => lambda.one),
    column({ ...LAMBDA, key: 'lambda_of_others', head: 'others' }, ({ lambda }) => lambda.others),
  ];
  return tableOf<IdleWay>(
    'Ways to let idle air in',
    [
      words('way', 'way', ({ name }) => WAYS[name][0]),
      column(OPENING, ({ opening }) => opening),
      column(BORE, ({ bore }) => bore),
      column(DUTY, ({ duty }) => duty?.[0]),
      column({ ...DUTY, key: 'duty_cold', head: 'cold' }, ({ duty }) => duty?.[1]),
      column({ ...DUTY, key: 'duty_most', head: 'most' }, ({ duty }) => duty?.[2]),
      ...(cylinders > 1 ? uneven : []),
      column(REACH, ({ reach }) => reach),
      column(TURNS, ({ turns }) => turns),
      column(RIPPLE, ({ ripple }) => ripple),
      column(OFFSET, ({ offset }) => offset),
      words('enough', '', ({ enough }) => enough, { only: 'files' }),
      words('remark', '', (way) => remarkOf(way, best), REMARK),
    ],
    rows,
    (way) => (way === best ? 'cut' : ''),
  );
}

function remarkOf(way: IdleWay, best: IdleWay | undefined): string {
  if (way === best) return 'best';
  return way.enough ? '' : 'too little';
}

/** One row a frequency of the valve. */
export function frequencyTable({ frequencies }: IdleStudy) {
  const ripple = (key: string, head: string) => q.kilopascals(key, head, { decimals: 2 });
  return tableOf<FrequencyRow>(
    'The valve at other frequencies, warm',
    [
      column({ ...q.FREQUENCY, digits: 3 }, ({ frequency }) => frequency),
      column(q.percentOf('lost_share', 'lost', { decimals: 0 }), ({ lost }) => lost),
      column(DUTY, ({ duty }) => duty),
      column(ripple('own_bar_ripple_kPa', 'in its own bar'), ({ own }) => own),
      column(ripple('pressure_bar_ripple_kPa', 'in the pressure bar'), ({ shared }) => shared),
      column(ripple('sensor_ripple_kPa', 'at its sensor'), ({ sensor }) => sensor),
    ],
    frequencies,
  );
}

/** What each state is called. */
const STATE_WORDS: Record<IdleState, string> = {
  warm: 'warm',
  loaded: 'warm, load',
  cold: 'cold',
  most: 'cold, load',
};

const WANTED = { ...AIR, key: 'air_wanted_g_per_s', head: 'wanted', name: 'wanted' };
const DRAWN = { ...AIR, key: 'air_g_per_s', head: 'air', name: 'air' };
const SENSOR_RIPPLE = { ...RIPPLE, key: 'sensor_ripple_kPa', head: 'sensor swings' };
const SENSOR_OFFSET = { ...OFFSET, key: 'sensor_offset_kPa', signed: true };
export const LEFT = q.ratio('authority_left', 'left');

type Stated = Pick<JoinedIdle, 'joined' | 'spec' | 'stop' | 'cylinders'>;

const NAMED: readonly Column<StateWay>[] = [
  words('way', 'way', ({ name }) => WAYS[name][0]),
  words('state', 'state', ({ state }) => STATE_WORDS[state]),
];
const AIRS: readonly Column<StateWay>[] = [
  column(WANTED, ({ wanted }) => wanted),
  column(DRAWN, ({ air }) => air),
];
const SHORT = words<StateWay>('remark', '', (row) => (short(row) ? 'too little' : ''), REMARK);

/** How each way is set. */
const setColumns = ({ spec, stop }: Stated): Column<StateWay>[] => [
  column(OPENING, ({ setting }) => setting.angle - stop),
  column(BORE, ({ setting }) => setting.bore),
  column(
    { ...DUTY, key: 'duty', head: 'duty' },
    ({ setting: { valve } }) => valve && dutyOf(spec, valve.open),
  ),
  column(LEFT, ({ left }) => left),
];

const UNEVEN: readonly Column<StateWay>[] = [
  column({ ...SPREAD, name: 'one above' }, ({ spread }) => spread),
  column(LAMBDA, ({ lambda }) => lambda.one),
  column({ ...LAMBDA, key: 'lambda_of_others', head: 'others' }, ({ lambda }) => lambda.others),
];
/** How even cylinders are, where there are others, and what the sensor sees. */
const even = ({ cylinders }: Stated): Column<StateWay>[] => [
  ...(cylinders > 1 ? UNEVEN : []),
  column(SENSOR_RIPPLE, ({ signal }) => signal?.ripple),
  column(SENSOR_OFFSET, ({ signal }) => signal?.offset),
];

/** Ways computed with the engine, for files: one row a way and state, the first cylinder's plate, drilling or nipple off. */
export function statesTable(study: Stated) {
  const columns = [...NAMED, ...AIRS, ...setColumns(study), ...even(study)];
  return tableOf('Ways computed with the engine', columns, study.joined);
}

/** What nobody moves gives with the load what it gives without, and need not be said twice. */
const once = ({ joined }: Stated) =>
  joined.filter(
    ({ name, state }) =>
      (name !== 'ajar' && name !== 'bleeds') || state === 'warm' || state === 'cold',
  );

export function settingsTable(study: Stated) {
  const columns = [...NAMED, ...AIRS, ...setColumns(study), SHORT];
  return tableOf('How each way is set', columns, once(study));
}

export function evennessTable(study: Stated) {
  const columns = [...NAMED, AIRS[1]!, ...even(study)];
  return tableOf('How even it is, and what the sensor sees', columns, once(study));
}

/** Whether the engine gets less than it wants. */
export const short = ({ air, wanted }: StateWay) => air < (1 - NEAR) * wanted;

export const HELD_BACK = {
  ...q.BRAKE_TORQUE,
  key: 'torque_held_back_Nm',
  head: 'held back',
  decimals: 2,
};
export const MIDDLE = {
  ...q.plateAngle('best_50_percent_burned_deg', 'best half burned'),
  name: 'crank angle of 50 % burned, spark at its best',
};
const EXHAUST = {
  ...q.TEMPERATURE,
  key: 'exhaust_at_best_K',
  head: 'exhaust',
  name: 'exhaust, spark at its best',
};

/** What the spark holds back when it is late, and how hot the exhaust gets. */
export function sparkTable({ sparks, spec }: Pick<JoinedIdle, 'sparks' | 'spec'>) {
  return tableOf<LateSpark>(
    `Spark ${q.told(OPENING, spec.retard)} late, on plates`,
    [
      words('state', 'state', ({ state }) => STATE_WORDS[state]),
      column(MIDDLE, ({ middle }) => middle),
      column(HELD_BACK, ({ torque }) => torque),
      column(q.percentOf('share_of_indicated', 'of indicated'), ({ share }) => share),
      column(EXHAUST, ({ best }) => best),
      column({ ...EXHAUST, key: 'exhaust_late_K', head: 'late' }, ({ late }) => late),
    ],
    sparks,
  );
}

const SPARK: readonly Column<SparkReserve>[] = [
  column(q.percentOf('share_of_torque', 'share'), ({ share }) => share),
  column({ ...q.BRAKE_TORQUE, key: 'torque_Nm' }, ({ torque }) => torque),
  column(q.ratio('exhaust_hotter_K', 'hotter', 0), ({ hotter }) => hotter),
];

export function idleDocument(study: JoinedIdle, scenario: Scenario) {
  const { spec, need, mean, best, spark } = study;
  return {
    ...documentHead('idle', scenario),
    speed_rpm: spec.speed,
    need: asObject(tableOf('', NEED, [need])),
    runner_mean_kPa: q.filed(RIPPLE, mean),
    ways: asObjects(waysTable(study)),
    best: best ? asObject(waysTable(study, [best])) : null,
    pulsed_at_Hz: plain(study.pulsed),
    computed: asObjects(statesTable(study)),
    frequencies: asObjects(frequencyTable(study)),
    spark_reserve: asObject(tableOf('', SPARK, [spark])),
    spark_late: asObjects(sparkTable(study)),
    audit: auditOf(study.outcomes),
  };
}
