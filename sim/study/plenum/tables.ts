/** Individual bodies beside a plenum as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import {
  asObject,
  asObjects,
  type Column,
  column,
  type Table,
  tableOf,
  words,
} from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { bankColumns } from '../banks.ts';
import { spreadOf } from '../cylinders.ts';
import { brakeAt, gainOf } from '../fed.ts';
import { efficiencyOf, REMARK, remarkOf, remarksOf } from '../points.ts';
import { resolutionDocument } from '../resolution.ts';
import { targetDocument, tradeOffDocument } from '../tradeOffs.ts';
import { type PlenumStudy, plenumOutcomes, type SensedPoint } from './compute.ts';

export const GAIN = q.signedShare(
  'bodies_over_plenum_fraction',
  'bodies give',
  "filling of bodies over the plenum's",
);
export const MEAN = q.kilopascals('plenum_mean_kPa', 'p plenum', {
  name: 'mean pressure in the plenum',
});
export const SWING = q.kilopascals('plenum_swing_kPa', 'its swing', {
  name: 'swing of the pressure in the plenum',
  decimals: 2,
});
export const SPREAD = q.percentOf('plenum_spread_fraction', 'its spread', {
  name: "filling of the plenum's cylinders, most less least",
});
export const SENSED_SWING = q.kilopascals('swing_kPa', 'swing', {
  name: 'swing of the pressure at the sensor, peak to peak',
  decimals: 2,
});
const SENSED_MEAN = q.kilopascals('mean_kPa', 'mean', { name: 'mean pressure at the sensor' });
const ABOVE_STOP = q.plateAngle('plate_above_stop_deg', 'plate', { name: 'plate above its stop' });

const of = (quantity: q.Quantity, way: SensedPoint['way']): q.Quantity => ({
  ...quantity,
  key: `${way}_${quantity.key}`,
  head: `${quantity.head} ${way}`,
  name: `${quantity.name ?? quantity.head}, ${way}`,
});

function brakeColumns({ bodies, onPlenum, lengthUnit }: PlenumStudy): Column<number>[] {
  return (['mm', 'in'] as const).flatMap((unit) => {
    const only = unit === lengthUnit ? {} : ({ only: 'files' } as const);
    const torque = q.FLYWHEEL_TORQUE[unit];
    const power = q.FLYWHEEL_POWER[unit];
    return (
      [
        ['bodies', bodies],
        ['plenum', onPlenum],
      ] as const
    ).flatMap(([way, curve]) => [
      column<number>(of(torque, way), (i) => brakeAt(curve, i)?.torque, only),
      column<number>(of(power, way), (i) => brakeAt(curve, i)?.power, only),
    ]);
  });
}

/** One row a speed, full load. */
export function plenumTable(study: PlenumStudy): Table {
  const { bodies, onPlenum, inPlenum, speeds } = study;
  const remark = (i: number) =>
    remarksOf({ bodies: bodies.outcomes[i]!, plenum: onPlenum.outcomes[i]! });
  return tableOf<number>(
    'Full load, individual bodies and plenum',
    [
      column(q.SPEED, (i) => speeds[i]),
      column(of(q.EFFICIENCY, 'bodies'), (i) => efficiencyOf(bodies.outcomes[i]!)),
      column(of(q.EFFICIENCY, 'plenum'), (i) => efficiencyOf(onPlenum.outcomes[i]!)),
      column(GAIN, (i) => gainOf(bodies.outcomes[i]!, onPlenum.outcomes[i]!)),
      ...brakeColumns(study),
      column(MEAN, (i) => inPlenum[i]?.mean),
      column(SWING, (i) => inPlenum[i]?.swing),
      column(SPREAD, (i) => spreadOf(onPlenum.outcomes[i]!)),
      words('remark', '', remark, REMARK),
    ],
    [...speeds.keys()],
  );
}

/** One row a way, speed and plate angle. */
export function sensedTable({ part }: PlenumStudy): Table {
  return tableOf<SensedPoint>(
    'What a pressure sensor is under',
    [
      words('way', 'way', ({ way }) => way),
      column(q.SPEED, ({ speed }) => speed),
      column(ABOVE_STOP, ({ angle }) => angle),
      column(q.EFFICIENCY, ({ outcome }) => efficiencyOf(outcome)),
      column(SENSED_MEAN, ({ mean }) => mean),
      column(SENSED_SWING, ({ swing }) => swing),
      words('remark', '', ({ outcome }) => remarkOf(outcome), REMARK),
    ],
    part,
  );
}

const SIZES: readonly Column<PlenumStudy['plenum']>[] = [
  column(q.cubicCentimetres('plenum_volume_cm3', 'volume'), ({ volume }) => volume),
  column(q.boreOf('plate_bore_mm', 'throttle'), ({ throttle }) => throttle.bore),
  column(q.boreOf('runner_length_mm', 'runner'), ({ runnerLength }) => runnerLength),
  column(q.boreOf('runner_bore_mm', 'its bore'), ({ runnerDiameter }) => runnerDiameter),
  column(q.boreOf('runner_lip_mm', 'its lip'), ({ mouthRadius }) => mouthRadius),
  column(q.boreOf('inlet_length_mm', 'inlet'), ({ inletLength }) => inletLength),
  column(q.boreOf('inlet_bore_mm', 'its bore'), ({ inletDiameter }) => inletDiameter),
  column(q.ratio('inlet_loss', 'its loss'), ({ inletLoss }) => inletLoss),
];

export function sizesTable({ plenum }: PlenumStudy): Table {
  const columns = [...SIZES, ...bankColumns(plenum)];
  return tableOf('Throttle and plenum weighed against', columns, [plenum]);
}

export function plenumDocument(study: PlenumStudy, scenario: Scenario) {
  const { plenum, target, weighed, resolution, free, turns, bodies } = study;
  return {
    ...documentHead('plenum', scenario),
    length_mm: q.filed(q.LENGTH, bodies.engine.intake.trumpet.length),
    plenum_given: plenum.given,
    plenum: asObject(sizesTable(study)),
    target: targetDocument(target),
    full_load: asObjects(plenumTable(study)),
    bodies_against_plenum: tradeOffDocument(weighed, target.score),
    ...(resolution && { resolution: resolutionDocument(resolution) }),
    ...(free && {
      bodies_over_plenum_fraction_unboosted: free.bodies.map((one, i) =>
        q.filed(GAIN, gainOf(one, free.plenum[i]!)),
      ),
    }),
    part_load: asObjects(sensedTable(study)),
    turns_to_fill: { port: plain(turns.port), plenum: plain(turns.plenum) },
    audit: auditOf(plenumOutcomes(study)),
  };
}
