/** Screws and readings as tables and as a JSON document. */
import type { FoundBody } from '../../decision/bodyErrors.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { ScrewsStudy, Turn } from './screws.ts';

/** Every screw in the order of work. */
export function turnsTable({ turns }: ScrewsStudy): Table {
  return tableOf<Turn>(
    'Every screw in the order of work',
    [
      column(q.CYLINDER, ({ body }) => body + 1),
      words('screw', 'screw', ({ screw }) => screw),
      words('way', 'way', ({ turns: by }) => wayOf(by)),
      column(q.TURNS, ({ turns: by }) => by),
      column(q.TURNS_DOUBT, ({ deviation }) => deviation),
    ],
    turns,
  );
}

/** In is clockwise, plus. */
export function wayOf(turns: number): string {
  if (turns === 0) return 'leave';
  return turns > 0 ? 'in' : 'out';
}

/** What each body has above the mean of all. */
export function bodiesTable({ errors, question }: ScrewsStudy): Table {
  const { plates, bleeds } = errors;
  return tableOf(
    'Every body against the mean of all',
    [
      column<number>(q.CYLINDER, (i) => i + 1),
      column<number>(q.PLATE_ERROR, (i) => plates[i]!.value),
      column<number>(q.PLATE_DOUBT, (i) => plates[i]!.deviation),
      ...(question.wholeBleed > 0
        ? [
            column<number>(q.BLEED_ERROR, (i) => bleeds[i]!.value),
            column<number>(q.BLEED_DOUBT, (i) => bleeds[i]!.deviation),
          ]
        : []),
    ],
    [...plates.keys()],
  );
}

/** One row a load: spread of air now, what doubt leaves of it once screws are turned, what the gauge can show. */
export function loadsTable({ errors, question }: ScrewsStudy): Table {
  const { states } = question;
  return tableOf(
    'Every load',
    [
      column<number>(q.SPEED, (j) => states[j]!.speed),
      column<number>(q.PLATE, (j) => states[j]!.angle),
      words<number>('bleeds', 'bleeds', (j) => (states[j]!.bleedShut ? 'shut' : 'as set')),
      column<number>(q.VISIT, (j) => states[j]!.visit, { only: 'files' }),
      column<number>(
        q.plainShare('air_spread', 'air spread now'),
        (j) => errors.remainders[j]!.before,
      ),
      column<number>(
        q.plainShare('air_spread_left', 'left then'),
        (j) => errors.remainders[j]!.after,
      ),
      column<number>(q.plainShare('air_seen', 'gauge shows'), (j) => errors.remainders[j]!.seen),
    ],
    [...states.keys()],
  );
}

/** One row a reading. */
export function readingsTable({ errors, question }: ScrewsStudy): Table {
  const { states, gauges, figure } = question;
  const state = ({ state: j }: FoundBody) => states[j]!;
  return tableOf<FoundBody>(
    'Every reading',
    [
      column(q.SPEED, (one) => state(one).speed),
      column(q.PLATE, (one) => state(one).angle),
      column(q.VISIT, (one) => state(one).visit, { only: 'files' }),
      column(q.CYLINDER, ({ body }) => body + 1),
      column(q.GAUGE, ({ gauge }) => gauges[gauge]),
      ...(figure === 'vacuum' ? [column<FoundBody>(q.VACUUM, ({ value }) => value)] : []),
      column(q.signedShare('air_above_mean', 'air'), ({ air }) => air),
      column(q.shareDoubt('air_above_mean_deviation'), ({ deviation }) => deviation),
    ],
    errors.readings,
  );
}

export function gaugesTable({ errors, question }: ScrewsStudy): Table {
  const { gauges } = errors;
  return tableOf(
    'Every gauge against the mean of all',
    [
      column<number>(q.GAUGE, (k) => question.gauges[k]),
      column<number>(q.signedShare('gauge_error', 'reads high by'), (k) => gauges[k]!.value),
      column<number>(q.shareDoubt('gauge_error_deviation'), (k) => gauges[k]!.deviation),
    ],
    [...gauges.keys()],
  );
}

export function screwsDocument(study: ScrewsStudy, scenario: Scenario) {
  const { errors, question } = study;
  const { doubts, screws } = question;
  return {
    ...documentHead('balance', scenario),
    read: question.figure,
    doubts: {
      plate_deg: doubts.plate,
      bleed_mm2: q.filed(q.BLEED_DOUBT, doubts.bleed),
      gauge: doubts.gauge,
      repeatability: doubts.repeatability,
    },
    screws: {
      lever_mm: q.filed(q.LENGTH, screws.lever),
      pitch_mm: q.filed(q.LENGTH, screws.pitch),
      bleed_turns: screws.bleedTurns,
      master: screws.master === 0 ? null : screws.master,
    },
    deviation_left: {
      plates: plain(errors.left.plates),
      bleeds: plain(errors.left.bleeds),
      gauges: plain(errors.left.gauges),
    },
    misfit: plain(errors.misfit),
    turns: asObjects(turnsTable(study)),
    bodies: asObjects(bodiesTable(study)),
    gauges: asObjects(gaugesTable(study)),
    loads: asObjects(loadsTable(study)),
    readings: asObjects(readingsTable(study)),
  };
}
