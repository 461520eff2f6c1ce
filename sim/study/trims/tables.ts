/** Shares of error and trims as tables and as a JSON document. */
import type { Share } from '../../decision/family.ts';
import type { FoundMixture } from '../../decision/mixtureShares.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, type Column, column, type Table, tableOf } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { LoadMixture, TrimsStudy } from './compute.ts';

const value = (quantity: q.Quantity, of: (i: number) => Share) =>
  column<number>(quantity, (i) => of(i).value);
const doubt = (quantity: q.Quantity, of: (i: number) => Share) =>
  column<number>(quantity, (i) => of(i).deviation);

/** What each cylinder has above the mean of all: one row a cylinder. */
export function cylindersTable({ shares, stays }: TrimsStudy): Table {
  const { plates, injectors } = shares;
  const injector = (i: number) => injectors[i]!;
  return tableOf(
    'Every cylinder against the mean of all',
    [
      column<number>(q.CYLINDER, (i) => i + 1),
      value(q.PLATE_ERROR, (i) => plates[i]!),
      doubt(q.PLATE_DOUBT, (i) => plates[i]!),
      value(q.signedShare('injector_error', 'injector', 'injector above the mean'), injector),
      doubt(q.shareDoubt('injector_error_deviation'), injector),
      column<number>(q.signedShare('fuel_trim_at_every_load', 'trim that stays'), (i) => stays[i]),
    ],
    [...plates.keys()],
  );
}

export function probesTable({ shares, question }: TrimsStudy): Table {
  const probe = (k: number) => shares.probes[k]!;
  return tableOf(
    'Every probe against the mean of all',
    [
      column<number>(q.PROBE, (k) => question.probes[k]),
      value(q.signedShare('probe_error', 'reads too lean by'), probe),
      doubt(q.shareDoubt('probe_error_deviation'), probe),
    ],
    [...shares.probes.keys()],
  );
}

const LOAD: readonly Column<LoadMixture>[] = [
  column(q.SPEED, ({ speed }) => speed),
  column(q.PLATE, ({ angle }) => angle),
  column(q.VISIT, ({ visit }) => visit, { only: 'files' }),
  column(q.ratio('joint_lambda', 'joint', 3), ({ joint }) => joint),
  column(q.ratio('lambda_deviation', 'spread', 3), ({ spread }) => spread),
  column({ ...q.CYLINDER, key: 'leanest_cylinder', head: 'leanest' }, ({ leanest }) => leanest + 1),
  column(q.ratio('leanest_lambda', 'its lambda', 3), ({ lean }) => lean),
  column(q.TORQUE_LOST, ({ loss }) => loss),
  column(q.SWING_LEFT, ({ swingLeft }) => swingLeft),
];

/** All cylinders together: one row a load. */
export function loadsTable({ loads }: TrimsStudy): Table {
  return tableOf('Every load', LOAD, loads);
}

/** One row a reading. */
export function readingsTable({ shares, question, trims }: TrimsStudy): Table {
  const { readings } = shares;
  const { states, probes } = question;
  const of = (i: number): FoundMixture => readings[i]!;
  const state = (i: number) => states[of(i).state]!;
  return tableOf(
    'Every reading',
    [
      column<number>(q.SPEED, (i) => state(i).speed),
      column<number>(q.PLATE, (i) => state(i).angle),
      column<number>(q.VISIT, (i) => state(i).visit, { only: 'files' }),
      column<number>(q.CYLINDER, (i) => of(i).cylinder + 1),
      column<number>(q.PROBE, (i) => probes[of(i).probe]),
      column<number>({ ...q.LAMBDA, key: 'lambda_read', head: 'read' }, (i) => of(i).lambda),
      column<number>({ ...q.LAMBDA, head: 'found' }, (i) => of(i).found),
      column<number>(q.shareDoubt('lambda_deviation'), (i) => of(i).deviation),
      column<number>(q.signedShare('air_above_mean', 'air'), (i) => of(i).air),
      column<number>(q.signedShare('fuel_trim', 'fuel trim'), (i) => trims[i]),
    ],
    [...readings.keys()],
  );
}

export function trimsDocument(study: TrimsStudy, scenario: Scenario) {
  const { question, shares } = study;
  const { doubts, target, fromGases } = question;
  return {
    ...documentHead('trims', scenario),
    target_lambda: plain(target),
    from_gases: fromGases,
    doubts: {
      plate_deg: doubts.plate,
      injector: doubts.injector,
      probe: doubts.probe,
      repeatability: doubts.repeatability,
    },
    deviation_left: {
      plates: plain(shares.left.plates),
      injectors: plain(shares.left.injectors),
      probes: plain(shares.left.probes),
    },
    misfit: plain(shares.misfit),
    cylinders: asObjects(cylindersTable(study)),
    probes: asObjects(probesTable(study)),
    loads: asObjects(loadsTable(study)),
    readings: asObjects(readingsTable(study)),
  };
}
