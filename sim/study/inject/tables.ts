/** The study of injector placement as tables. */

import { difference, type PartLoad, sprayOf } from '../../decision/placementEffects.ts';
import { MOST_DUTY, type PulseFigures } from '../../decision/pulseWidth.ts';
import { deliveredAfterStep, leanTime } from '../../decision/tipIn.ts';
import { cumulative } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { type Column, column, type Table, tableOf, within, words } from '../../report/table.ts';
import type { SprayCycle } from '../../spray/sprayTally.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { chargeTemperatureOf, efficiencyOf, GAS, REMARK, remarkOf, STATE } from '../points.ts';
import type { PlacementStudy } from './compute.ts';

const spray = (quantity: q.Quantity, figure: (cycle: SprayCycle) => number) =>
  column<PointOutcome>(quantity, (outcome) => {
    const cycle = sprayOf(outcome);
    return cycle && figure(cycle);
  });

const SPRAY: readonly Column<PointOutcome>[] = [
  spray(q.OUTER_SHARE, (cycle) => cycle.outerShare),
  spray(q.EVAPORATED_AT_CLOSING, (cycle) => cycle.evaporatedShare),
  spray(q.EVAPORATED, (cycle) => cycle.evaporatedUpstream),
  spray(q.milliseconds('residence_time_ms', 'residence'), (cycle) => cycle.residenceTime),
  spray(q.ratio('mixture_early_over_mean', 'mixture early'), ({ mixture }) => mixture.early),
  spray(q.ratio('mixture_late_over_mean', 'mixture late'), ({ mixture }) => mixture.late),
  spray(q.FILM_MASS, (cycle) => cycle.filmMass),
  spray(q.FILM_SHARE, (cycle) => cycle.filmShare),
  spray(q.milliseconds('film_time_constant_ms', 'film time'), (cycle) => cycle.filmTime),
  spray(q.STAND_OFF, (cycle) => cycle.standOff),
  spray(q.RETURNED, (cycle) => cycle.returned),
  spray(q.LOST, (cycle) => cycle.lost),
  spray(q.milligrams('fuel_per_cycle_mg', 'fuel'), (cycle) => cycle.injected),
  spray(q.milliseconds('pulse_near_ms', 'pulse near'), ({ pulse }) => pulse[0]!),
  spray(q.milliseconds('pulse_above_ms', 'pulse above'), ({ pulse }) => pulse.at(-1)!),
];

/** Everything that is told of a point with injectors. */
export const SPRAYED: readonly Column<PointOutcome>[] = [...GAS, ...SPRAY, ...STATE];

/** One row a placement and speed. */
export function placementsTable({ outcomes }: PlacementStudy): Table {
  type Row = { placement: string; outcome: PointOutcome };
  const rows = Object.entries(outcomes).flatMap(([placement, points]) =>
    points.map((outcome): Row => ({ placement, outcome })),
  );
  const columns: Column<Row>[] = [
    words('placement', 'placement', ({ placement }) => placement),
    column(q.SPEED, ({ outcome }) => outcome.speed),
    ...within(SPRAYED, ({ outcome }: Row) => outcome),
  ];
  return tableOf('Every placement', columns, rows);
}

/** The placements beside one another: one row a speed. */
export function speedsTable({ speeds, outcomes, choice }: PlacementStudy): Table {
  const { near, above, both } = outcomes;
  /** A figure of one placement under a head of its own. */
  const at = (
    quantity: q.Quantity,
    head: string,
    place: 'near' | 'above' | 'both',
    figure: (point: PointOutcome) => number | undefined,
  ) =>
    column<number>({ ...quantity, key: `${quantity.key}_${place}`, head, name: head }, (i) =>
      figure(outcomes[place][i]!),
    );
  const gain = (key: string, head: string, points: readonly PointOutcome[]) =>
    column<number>(q.fillingChange(key, head), (i) => difference(points[i]!, near[i]!));
  const remark = (i: number) => [near[i]!, above[i]!, both[i]!].map(remarkOf).find(Boolean) ?? '';
  const of = (figure: keyof SprayCycle) => (point: PointOutcome) =>
    sprayOf(point)?.[figure] as number | undefined;
  return tableOf(
    'Every speed',
    [
      column<number>(q.SPEED, (i) => speeds[i]),
      at(q.EFFICIENCY, 'VE near', 'near', efficiencyOf),
      at(q.EFFICIENCY, 'VE above', 'above', efficiencyOf),
      at(q.EFFICIENCY, 'VE both', 'both', efficiencyOf),
      gain('gain_above', 'gain above', above),
      gain('gain_both', 'gain both', both),
      at(q.EVAPORATED, 'vapour near', 'near', of('evaporatedUpstream')),
      at(q.EVAPORATED, 'vapour above', 'above', of('evaporatedUpstream')),
      at(q.CHARGE_TEMPERATURE, 'T near', 'near', chargeTemperatureOf),
      at(q.CHARGE_TEMPERATURE, 'T above', 'above', chargeTemperatureOf),
      at(q.FILM_MASS, 'film', 'above', of('filmMass')),
      at(q.STAND_OFF, 'stand-off', 'above', of('standOff')),
      at(q.LOST, 'lost', 'above', of('lost')),
      column<number>(q.OUTER_SHARE, (i) => choice.share[i]),
      words<number>('remark', '', remark, REMARK),
    ],
    [...speeds.keys()],
  );
}

/** What the outer injector does to filling, one effect at a time. */
export function splitTable({ speeds, split }: PlacementStudy): Table {
  const effect = (key: string, head: string, values: readonly (number | undefined)[]) =>
    column<number>(q.fillingChange(key, head), (i) => values[i]);
  return tableOf(
    'Effects of the outer injector',
    [
      column<number>(q.SPEED, (i) => speeds[i]),
      effect('cooling', 'cooling', split.cooling),
      effect('displacement', 'vapour takes room', split.displacement),
      effect('wave_shift', 'wave shift', split.waveShift),
      effect('total', 'all together', split.total),
    ],
    [...speeds.keys()],
  );
}

/** Vapour given off by the outer injector's fuel along the intake at the highest speed. */
export function alongTable({ outcomes }: PlacementStudy): Table {
  const { distance = [], share = [] } = sprayOf(outcomes.above.at(-1)!)?.along ?? {};
  const sums = cumulative(share);
  return tableOf(
    'Evaporated on the way',
    [
      column<number>(q.DISTANCE_TO_VALVE, (i) => distance[i]),
      column<number>({ ...q.EVAPORATED, key: 'fraction_upstream' }, (i) => sums[i]),
    ],
    [...distance.keys()],
  );
}

export const SPEEDS_NOTES = [
  'VE: volumetric efficiency; gains in per cent of a full cylinder. Vapour: given off before the ' +
    'valve, of the fuel injected. T: at intake closing. Film, stand-off (drops blown out of the mouth) ' +
    'and lost (fuel that does not come back): all fuel from above. Share: what to give from above.',
];

/** Mixture error at which a step counts as covered [-]. */
export const COVERED = 0.05;

/** What lands on walls at part load, and how long the mixture is lean after a step. */
export function partLoadTable({ partLoad }: PlacementStudy): Table {
  return tableOf<PartLoad>(
    'After a step of the throttle',
    [
      words('placement', 'placement', ({ placement }) => placement),
      column(q.EFFICIENCY, ({ outcome }) => efficiencyOf(outcome)),
      column({ ...q.FILM_SHARE, key: 'film_fraction' }, ({ share }) => share),
      column(q.milliseconds('film_time_constant_ms', 'time constant', 0), ({ time }) => time),
      column(q.ratio('delivered_at_once', 'at once'), (point) => deliveredAfterStep(point, 0)),
      column(q.milliseconds('lean_for_ms', 'lean for', 0), (point) => leanTime(point, COVERED)),
    ],
    partLoad.points,
  );
}

/** How long each injector would be open alone, against what it can do. */
export function pulsesTable({ pulses }: PlacementStudy): Table {
  return tableOf<PulseFigures>(
    'Every injector alone',
    [
      words('name', 'injector', ({ name }) => name),
      column(q.milliseconds('full_load_pulse_ms', 'full load'), ({ fullPulse }) => fullPulse),
      column(q.DUTY, ({ fullDuty }) => fullDuty),
      column({ ...q.DUTY, key: 'most_duty', head: 'at most', name: 'at most' }, () => MOST_DUTY),
      column(q.milliseconds('idle_pulse_ms', 'idle', 2), ({ idlePulse }) => idlePulse),
      column(q.milliseconds('smallest_pulse_ms', 'at least', 2), (pulse) => pulse.smallestPulse),
      words('serves_full_load', '', (pulse) => pulse.servesFull, { only: 'files' }),
      words('serves_idle', '', (pulse) => pulse.servesIdle, { only: 'files' }),
      words('verdict', 'alone', verdict, { only: 'people' }),
    ],
    pulses,
  );
}

export function verdict({ servesFull, servesIdle }: PulseFigures): string {
  if (servesFull && servesIdle) return 'it could do both';
  if (servesFull) return 'large enough for full load, too large for idle';
  if (servesIdle) return 'fine enough for idle, too small for full load alone';
  return 'it can do neither alone';
}
