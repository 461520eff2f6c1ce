/** What the pressure sensor sees as tables. */
import { resonanceOf, type TriedBar } from '../../acoustics/barTrial.ts';
import * as q from '../../report/quantities.ts';
import { asObject, type Column, column, tableOf, words } from '../../report/table.ts';
import { REMARK } from '../points.ts';
import type { SignalStudy } from './compute.ts';
import type { LoadSense } from './load.ts';
import type { Apart, PlateError } from './plateError.ts';
import type { SignalPoint } from './tapped.ts';

export const ANGLE = q.plateAngle('throttle_angle_deg', 'plate', { name: 'plate angle' });
export const MEAN = q.kilopascals('runner_mean_kPa', 'mean', { name: 'mean behind the plate' });
const RUNNER_SWING = q.kilopascals('runner_swing_kPa', 'runner swings', {
  name: 'swing of one runner',
});
export const RIPPLE = q.kilopascals('ripple_kPa', 'ripple', {
  name: 'ripple at the sensor',
  decimals: 2,
});
const GIVEN_RIPPLE = q.kilopascals('given_runners_ripple_kPa', 'given', {
  name: 'ripple with the pressure of runners given',
  decimals: 2,
});
const LINEAR_RIPPLE = q.kilopascals('linear_ripple_kPa', 'linear', {
  name: 'ripple by linear theory',
  decimals: 2,
});
export const OFFSET = q.kilopascals('offset_kPa', 'offset', {
  name: 'reading above the true mean',
  decimals: 2,
  signed: true,
});
const GIVEN_OFFSET = { ...OFFSET, key: 'given_runners_offset_kPa', only: 'files' as const };
export const ALONE = q.kilopascals('one_runner_ripple_kPa', 'one runner', {
  name: 'ripple on one runner alone',
});
const ALONE_OFFSET = { ...OFFSET, key: 'one_runner_offset_kPa', head: 'its offset' };
const CROSSING = q.percentOf('crossing_fraction', 'crosses', {
  name: 'gas out into a hose and back, of the air',
});
export const MORE_AIR = {
  ...q.CHANGE,
  key: 'air_change_fraction',
  head: 'air',
  name: 'air with the bar fitted',
  decimals: 1,
};
const WINDOW = { ...OFFSET, key: 'window_offset_kPa', head: 'window', decimals: 1 };
const WINDOW_SLOPE = { ...WINDOW, key: 'window_moved_10_deg_kPa', head: '10 deg on' };
const FILTERED = q.kilopascals('filtered_ripple_kPa', 'filtered', { name: 'ripple behind filter' });
const FILTER_WORTH = q.milliseconds('filter_for_ripple_ms', 'filter worth', 0);

export const LAG = q.milliseconds('lag_ms', 'lag');
const OVERSHOOT = q.percentOf('overshoot_fraction', 'overshoot', { decimals: 0 });
const HOSE_BORE = q.boreOf('hose_bore_mm', 'hose');
const JET_BORE = q.boreOf('jet_bore_mm', 'jet');
export const VOLUME = q.cubicCentimetres('volume_cm3', 'volume');
const WORST_SPEED = { ...q.AT_SPEED, key: 'worst_at_rpm', head: 'worst at' };
const WORST_ANGLE = { ...ANGLE, key: 'worst_at_throttle_angle_deg' };
export const RESONANCE = { ...q.FREQUENCY, key: 'resonance_Hz', head: 'resonance' };
const RESONANT_SPEED = { ...q.SPEED, key: 'fires_there_at_rpm', head: 'fires there at' };

const AT: readonly Column<SignalPoint>[] = [
  column(q.SPEED, ({ speed }) => speed),
  column(ANGLE, ({ angle }) => angle),
];

/** One row a speed and plate angle: what hoses and bar make of it. */
export function pointsTable({ points }: SignalStudy) {
  return tableOf<SignalPoint>(
    'What the sensor on the bar sees',
    [
      ...AT,
      column(q.EFFICIENCY, ({ point }) => point.volumetricEfficiency),
      column(MEAN, ({ mean }) => mean),
      column(RUNNER_SWING, ({ swing }) => swing),
      column(RIPPLE, ({ joined }) => joined.ripple),
      column(GIVEN_RIPPLE, ({ bar }) => bar.ripple),
      column(LINEAR_RIPPLE, ({ bar }) => bar.linearRipple),
      column(OFFSET, ({ joined }) => joined.offset),
      column(GIVEN_OFFSET, ({ bar }) => bar.offset),
      column(LAG, ({ lag }) => (Number.isFinite(lag) ? lag : undefined)),
      column(CROSSING, ({ joined }) => joined.crossing),
      ...ALONE_COLUMNS.map((one) => ({ ...one, only: 'files' as const })),
      words('settled', '', ({ point, cycle }) => point.settled && cycle.point.settled, {
        only: 'files',
      }),
      words('remark', '', remarkOf, REMARK),
    ],
    points,
  );
}

const ALONE_COLUMNS: readonly Column<SignalPoint>[] = [
  column(ALONE, ({ alone }) => alone.ripple),
  column(ALONE_OFFSET, ({ alone }) => alone.offset),
  column(WINDOW, ({ windowOffset }) => windowOffset),
  column(WINDOW_SLOPE, ({ windowSlope }) => windowSlope),
  column(FILTERED, ({ filtered }) => filtered),
  column(FILTER_WORTH, ({ filterWorth: time }) => (Number.isFinite(time) ? time : undefined)),
];

/** The same on one runner alone. */
export function aloneTable({ points }: SignalStudy) {
  return tableOf('One runner alone', [...AT, ...ALONE_COLUMNS], points);
}

function remarkOf({ point, cycle }: SignalPoint): string {
  return point.settled && cycle.point.settled ? '' : 'not settled';
}

const SIZES: readonly Column<TriedBar>[] = [
  column(HOSE_BORE, ({ bar }) => bar.hose.bore),
  column(JET_BORE, ({ bar }) => bar.jet!.bore),
  column(VOLUME, ({ bar }) => bar.volume),
];

const worthOf = ({ triedAt }: SignalStudy): Column<TriedBar>[] => [
  column(LINEAR_RIPPLE, ({ ripple }) => ripple, { head: 'ripple' }),
  column(WORST_SPEED, ({ worst }) => triedAt[worst]!.speed),
  column(WORST_ANGLE, ({ worst }) => triedAt[worst]!.angle),
  column(LAG, ({ lag }) => (Number.isFinite(lag) ? lag : undefined)),
  column(OVERSHOOT, ({ overshoot }) => overshoot),
];

/** Bars that were tried, the search's own remarks beside them. */
export function barsTable(
  study: SignalStudy,
  rows = study.search.tried,
  label = 'Every bar tried',
) {
  const { best, unbeaten } = study.search;
  const remark = (row: TriedBar) => (row === best ? 'best' : '');
  return tableOf<TriedBar>(
    label,
    [
      ...SIZES,
      ...worthOf(study),
      words('unbeaten', '', (row) => unbeaten.includes(row), { only: 'files' }),
      words('remark', '', remark, REMARK),
    ],
    rows,
    (row) => (row === best ? 'cut' : ''),
  );
}

/** Of many bars that no other beats, the best and those each a tenth steadier than the one before. */
export function unbeatenTable(study: SignalStudy) {
  const { unbeaten, best } = study.search;
  const kept: TriedBar[] = [];
  for (const one of unbeaten) {
    const last = kept.at(-1);
    if (!last || one === best || one.ripple < STEADIER * last.ripple) kept.push(one);
  }
  return barsTable(study, kept, 'What no other bar beats in ripple and lag');
}

const STEADIER = 0.9;

/** The bar of the file with other volumes. */
export function volumesTable(study: SignalStudy) {
  const { bar, cylinders, volumes, points } = study;
  const resonance = (row: TriedBar) => resonanceOf(row.bar, points[0]!.gas).frequency;
  return tableOf<TriedBar>(
    'The same hoses and jets on other volumes',
    [
      column(VOLUME, (row) => row.bar.volume),
      column(RESONANCE, resonance),
      column(RESONANT_SPEED, (row) => (resonance(row) * 120) / cylinders),
      ...worthOf(study),
    ],
    volumes,
    (row) => (row.bar.volume === bar.volume ? 'now' : ''),
  );
}

export const BLIND_FROM = q.plateAngle('blind_from_deg', 'blind from', { digits: 2 });
const MISSING = q.percentOf('air_missing_there_fraction', 'air missing');
const AT_WIDEST = { ...OFFSET, key: 'widest_less_ambient_kPa', head: 'widest less ambient' };
const SLOPE = q.kilopascals('rise_per_deg_at_narrowest_kPa', 'rise a degree');

/** Where the pressure tells load: one row a speed. */
export function loadTable({ load }: SignalStudy) {
  return tableOf<LoadSense>(
    'Where the mean still tells load',
    [
      column(q.SPEED, ({ speed }) => speed),
      column(SLOPE, ({ slope }) => slope),
      column(BLIND_FROM, ({ blindFrom }) => blindFrom),
      column(MISSING, ({ missing }) => missing),
      column(AT_WIDEST, ({ atWidest }) => atWidest),
    ],
    load,
  );
}

const ABOVE = q.kilopascals('pressure_above_others_kPa', 'pressure', { decimals: 2 });
const AIR_ABOVE = q.percentOf('air_above_others_fraction', 'air');
export const LAMBDA = q.ratio('lambda', 'lambda', 3);
export const UNSEEN = q.plateAngle('plate_unseen_deg', 'unseen', { digits: 2 });

/** A key of a figure that holds with the bar fitted. */
const fitted = (quantity: q.Quantity): q.Quantity => ({
  ...quantity,
  key: `fitted_${quantity.key}`,
});

/** One plate that is off, as one row of a file. */
const PLATE_ERROR: readonly Column<PlateError>[] = [
  column(ABOVE, ({ alone }) => alone.pressure),
  column(AIR_ABOVE, ({ alone }) => alone.air),
  column(UNSEEN, ({ unseen }) => unseen.alone),
  column(fitted(ABOVE), ({ joined }) => joined.pressure),
  column(fitted(AIR_ABOVE), ({ joined }) => joined.air),
  column(fitted(UNSEEN), ({ unseen }) => unseen.joined),
  column(fitted(LAMBDA), ({ lambda }) => lambda.one),
  column({ ...LAMBDA, key: 'fitted_lambda_of_others' }, ({ lambda }) => lambda.others),
  column(q.percentOf('air_given_fraction', 'given', { decimals: 2 }), ({ given }) => given),
  column(q.percentOf('air_got_by_each_other_fraction', 'got', { decimals: 2 }), ({ got }) => got),
  column(MORE_AIR, ({ moreAir }) => moreAir),
  column(q.ratio('imbalance', 'imbalance', 6), ({ imbalance }) => imbalance),
];

export const plateErrorRow = (one: PlateError) =>
  asObject(tableOf('One plate off', PLATE_ERROR, [one]));

interface ApartRow extends Apart {
  fitted: string;
  unseen: number;
}

/** One plate further open than the others at idle, by itself and with the bar fitted. */
export function plateErrorTable({ plateError }: SignalStudy) {
  if (!plateError) return undefined;
  const { alone, joined, unseen } = plateError;
  return tableOf<ApartRow>(
    'One plate off at idle',
    [
      words('runners', 'runners', ({ fitted: how }) => how),
      column({ ...ABOVE, head: 'stands higher' }, ({ pressure }) => pressure),
      column({ ...AIR_ABOVE, head: 'more air' }, ({ air }) => air),
      column({ ...UNSEEN, head: 'plate unseen' }, (row) => row.unseen),
    ],
    [
      { fitted: 'by themselves', ...alone, unseen: unseen.alone },
      { fitted: 'joined by the bar', ...joined, unseen: unseen.joined },
    ],
  );
}

/** One cycle at the first point: idle. */
export function cycleTable({ points }: SignalStudy) {
  const [idle] = points;
  const of = (name: string) => q.kilopascals(`${name}_kPa`, name.replaceAll('_', ' '));
  const angles = idle!.history.map((_, i) => i);
  const { runners, inside, sensor } = idle!.joined;
  const next = runners[1];
  return tableOf<number>(
    'One cycle at idle',
    [
      column(q.CRANK_ANGLE, (i) => i),
      column(of('runner'), (i) => runners[0]![i]),
      ...(next ? [column<number>(of('next_runner'), (i) => next[i])] : []),
      column(of('bar'), (i) => inside[i]),
      column(of('sensor'), (i) => sensor[i]),
      column(of('runner_without_bar'), (i) => idle!.history[i]),
      column(of('one_runner'), (i) => idle!.alone.marched.sensor[i]),
    ],
    angles,
  );
}
