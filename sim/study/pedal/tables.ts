/** The study of the pedal as tables and as a JSON document. */
import type { Closing } from '../../linkage/closing.ts';
import type { EffortPoint } from '../../linkage/effort.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, asObjects, column, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { type PedalStudy, type SpringFigures, stuck } from './compute.ts';

export const OUT = q.newtons('foot_force_out_N', 'out');
export const BACK = q.newtons('foot_force_back_N', 'back');

/** One row a place of the travel. */
export function effortTable({ curve }: PedalStudy, every = 1) {
  return tableOf<EffortPoint>(
    'Force over travel',
    [
      column(q.OPENING, ({ angle }) => angle),
      column(q.FOOT_TRAVEL, ({ travel }) => travel),
      column({ ...OUT, name: 'foot, out' }, ({ out }) => out),
      column({ ...BACK, name: 'foot, back' }, ({ back }) => back),
      column(q.newtons('cable_pull_N', 'cable pull'), ({ pull }) => pull),
      column(q.newtonMetres('closing_torque_Nm', 'closing torque'), ({ closing }) => closing),
    ],
    curve.filter((_, i) => i % every === 0),
  );
}

export const WHOLE = 'nothing';

/** One row a part gone and shaft, where least is left. */
export function closingTable({ closings }: PedalStudy) {
  return tableOf<Closing>(
    'Closing torque with each single part gone',
    [
      words('without', 'without', ({ without }) => without || WHOLE),
      words('shaft', 'shaft', ({ shaft }) => shaft),
      column(q.OPENING, ({ angle }) => angle),
      column(q.newtonMetres('spring_torque_Nm', 'springs'), ({ springs }) => springs),
      column(q.newtonMetres('resistance_Nm', 'resistance'), ({ resistance }) => resistance),
      column(q.newtonMetres('left_Nm', 'left'), ({ left }) => left),
      words('closes', '', ({ left }) => left > 0, { only: 'files' }),
      words('verdict', 'plates', ({ left }) => (left > 0 ? 'shut' : 'DO NOT SHUT'), {
        only: 'people',
      }),
    ],
    closings,
    ({ left }) => (left > 0 ? '' : 'now'),
  );
}

/** Every spring at the ends of the travel. */
export function springTable({ springs }: PedalStudy) {
  const of = ({ spring }: SpringFigures) => spring;
  const torsion = (row: SpringFigures) => of(row).kind === 'torsion';
  return tableOf<SpringFigures>(
    'Every spring',
    [
      words('name', 'spring', (row) => of(row).name),
      words('place', 'on', ({ place }) => place),
      words('kind', 'kind', (row) => of(row).kind),
      column({ key: 'count', head: 'alike', unit: '' }, (row) => of(row).count),
      column(q.STIFFNESS, (row) => (torsion(row) ? undefined : of(row).rate)),
      column(q.MOMENT_RATE, (row) => (torsion(row) ? of(row).rate : undefined)),
      column(q.newtonMetres('torque_shut_Nm', 'shut'), ({ shut }) => shut),
      column(q.newtonMetres('torque_open_Nm', 'wide open'), ({ open }) => open),
      column(q.stress('stress_N_per_mm2', 'stress'), ({ stress }) => stress),
      column(q.stress('borne_N_per_mm2', 'bears'), ({ borne }) => borne),
    ],
    springs,
  );
}

export function pedalDocument(study: PedalStudy, scenario: Scenario) {
  const { curve, hysteresis, reached } = study;
  return {
    ...documentHead('pedal', scenario),
    closes_with_any_part_gone: stuck(study).length === 0,
    force: asColumns(effortTable(study)),
    hysteresis: plain(hysteresis),
    foot_travel_wide_open_mm: q.filed(q.FOOT_TRAVEL, curve.at(-1)!.travel),
    reached_opening_deg: q.filed(q.OPENING, reached),
    closing: asObjects(closingTable(study)),
    springs: asObjects(springTable(study)),
  };
}
