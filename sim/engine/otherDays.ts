/**
 * Air on other days, from the settled state of this one. Gas that is so much thinner and warmer already goes on
 * until it repeats: from the state as it stands warm air would take a trumpet's fill of cycles to come to the plate.
 * This day goes on beside them, and counts where it then comes to: what a state lacks yet of its end all have in common.
 */
import type { Slots } from '../boundary/node.ts';
import { OpenAir, Volume } from '../boundary/reservoir.ts';
import { Duct } from '../duct/duct.ts';
import type { NonPhysicalStateError } from '../errors.ts';
import type { EngineSpecification } from '../specification.ts';
import * as AT from '../step/layout.ts';
import { meanCycle } from './cycle.ts';
import type { Driver, End } from './driver.ts';
import { type EngineModel, engineModel, type Solved } from './plan.ts';
import { sample } from './takeOver.ts';

export interface OtherDay {
  /** Pressure over that of this day [-]. */
  pressure: number;
  /** How much warmer [K]. */
  warmer: number;
}

/** The engine on another day, outside and where its mouths breathe alike. */
export function onDay(
  engine: EngineSpecification,
  { pressure, warmer }: OtherDay,
): EngineSpecification {
  const moved = <Air extends { pressure: number; temperature: number }>(air: Air): Air => ({
    ...air,
    pressure: pressure * air.pressure,
    temperature: air.temperature + warmer,
  });
  const intake = { ...engine.intake, feed: moved(engine.intake.feed) };
  return { ...engine, ambient: moved(engine.ambient), intake };
}

/** How speeds of a model are brought to rest. */
export interface DaysRun {
  speeds: readonly number[];
  solved: Solved | undefined;
  drive: Driver;
  /** How near each other two cycles come [-]. */
  limit: number;
  hastened: boolean;
}

/** Cycles at most: they begin near their end. Our own choice, no source. */
const MOST = 20;

const THIS_DAY: OtherDay = { pressure: 1, warmer: 0 };

/** Mass of air that a cylinder traps over that of this day, [speed][day]; NaN where either fails. */
export function airOnDays(
  here: EngineModel,
  ends: readonly (End | NonPhysicalStateError)[],
  days: readonly OtherDay[],
  run: DaysRun,
): number[][] {
  const [now, ...airs] = [THIS_DAY, ...days].map((day) => airOn(day, here, ends, run));
  return ends.map((_, i) => airs.map((air) => air[i]! / now![i]!));
}

/** Mass of air of each speed on a day [kg]. */
function airOn(
  day: OtherDay,
  here: EngineModel,
  ends: readonly (End | NonPhysicalStateError)[],
  { speeds, solved, drive, limit, hastened }: DaysRun,
): number[] {
  const there = engineModel(onDay(here.spec, day), solved);
  const known = ends.flatMap((end, i) => (end instanceof Error ? [] : [{ end, i }]));
  const starts = known.map(({ end, i }) => {
    here.network.load(end.column);
    carry(there, here, day);
    const column = there.network.layout.column.slice();
    return { speed: speeds[i]!, column, fuelled: true, sprays: end.sprays };
  });
  const airs = ends.map(() => Number.NaN);
  drive(there, starts, { limit, most: MOST, held: false, hastened }).forEach((end, n) => {
    if (!(end instanceof Error)) airs[known[n]!.i] = trapped(there, end);
  });
  return airs;
}

const trapped = (model: EngineModel, { state }: End) => meanCycle(model, state.lines).trapped.air;

/** Fills the model of another day with the state of this, thinner throughout and warmer where gas is fresh. */
function carry(there: EngineModel, here: EngineModel, day: OtherDay): void {
  const { temperature } = here.spec.intake.feed;
  const { network } = there;
  const parts = [...network.layout.place.keys()];
  const others = [...here.network.layout.place.keys()];
  const sums = new Set<unknown>(network.ducts.map((duct) => duct.sums));
  const records = new Set<unknown>(there.collectors.map(({ record }) => record));
  parts.forEach((part, i) => {
    const from = others[i]!;
    if (part instanceof OpenAir || sums.has(part)) return;
    if (!(part instanceof Duct)) part.slots.set(from.slots);
    if (part instanceof Volume) thin(part, day.pressure);
    if (records.has(part)) thinRecord(part, day.pressure);
    if (part instanceof Duct) {
      sample(part, from as Duct, network.gas, (gas) => ({
        ...gas,
        pressure: day.pressure * gas.pressure,
        temperature: gas.temperature * (1 + ((1 - gas.burned) * day.warmer) / temperature),
      }));
    }
  });
}

/** What a volume and its crevices hold, at its temperature. */
function thin({ slots }: Volume, share: number): void {
  const places = [AT.Q_P, ...from(AT.V_MASS, 4), ...from(AT.V_RATE, 4)];
  const ofCylinder = [AT.C_CLOSE_P, ...from(AT.C_HELD, 3)];
  const all = slots.length > AT.VOLUME_SLOTS ? [...places, ...ofCylinder] : places;
  for (const place of all) slots[place]! *= share;
}

/** Gas that a joint recalls; left as it was it would push into the thinner exhaust for a trumpet's fill of cycles. */
function thinRecord({ slots }: Slots, share: number): void {
  const gases = [AT.REC_LAST, ...from(0, AT.BINS + 1).map((bin) => AT.REC_BINS + bin * AT.A_SIZE)];
  for (const gas of gases) for (const of of [AT.A_RHO, AT.A_P]) slots[gas + of]! *= share;
}

const from = (place: number, count: number) => Array.from({ length: count }, (_, k) => place + k);
