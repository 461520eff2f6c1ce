/** What the engine is to be best at: bands of speed, floors, and the figure that counts. */
import { gearChangeBands } from '../../decision/gearChange.ts';
import type { Floor, Target, WeightedBand } from '../../decision/target.ts';
import { choice, list, maybe, oneOf, optional, quantity, section } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { type LeafPlace, numbers, type Place, type ViewOf } from '../view.ts';
import { gridValues } from './grid.ts';

const SPEED = { limits: ['500 rpm', '25000 rpm'] } as const;
const asked = (label: string) => ({
  ...SPEED,
  form: { group: 'Where you need it', label } as const,
});

const weight = section('One weight; between rows it runs straight.', {
  speed: quantity('speed', 'Engine speed.', SPEED),
  weight: quantity('ratio', 'How much this speed counts.', { limits: ['0', '100'] }),
});

const band = section('One band of several.', {
  from: quantity('speed', 'Lower end of the band.', SPEED),
  to: quantity('speed', 'Upper end of the band.', SPEED),
  weight: maybe('ratio', 'How much the mean of this band counts beside the others.', {
    limits: ['0.001', '100'],
    absent: { value: '1', why: 'all bands alike' },
  }),
});

const gearChangeSection = section(
  'The bands that a gearbox leaves, in place of from and to: each reaches from where a gear is entered, changing up at the limit, to the limit.',
  {
    limit: quantity('speed', 'Speed at which gears are changed up.', SPEED),
    ratios: list(
      quantity('ratio', 'Ratio of one gear.', { example: '2.1', limits: ['0.1', '30'] }),
      'Ratios of the gears used, first to last, falling.',
      { least: 2, most: 12 },
    ),
  },
);

const floor = section('One floor; give at least one of the three limits.', {
  speed: quantity('speed', 'Engine speed at which it holds.', asked('Floor at')),
  leastEfficiency: maybe('ratio', 'Least volumetric efficiency, where that is the score.', {
    limits: ['0.05', '5'],
    form: { group: 'Where you need it', label: 'Least filling there' },
  }),
  leastTorque: maybe('torque', 'Least indicated torque, where that is the score.', {
    limits: ['1 Nm', '20000 Nm'],
    form: { group: 'Where you need it', label: 'Least torque there' },
  }),
  mostLoss: maybe('ratio', 'Greatest loss against the trumpets fitted now.', {
    example: '3 %',
    limits: ['0', '0.9'],
    form: { group: 'Where you need it', label: 'Most loss there' },
  }),
});

export const targetSection = section(
  'What the engine is to be best at. Give one band by from and to; or several under bands; or the gearbox under gearChange.',
  {
    from: maybe('speed', 'Lower end of the band.', asked('Band from')),
    to: maybe('speed', 'Upper end of the band.', asked('Band to')),
    weights: optional(
      list(weight, 'How much each speed of the band counts; without it all alike.', {
        least: 2,
        most: 100,
        rising: 'speed',
      }),
    ),
    bands: optional(list(band, 'Several bands, in place of from and to.', { most: 20 })),
    gearChange: optional(gearChangeSection),
    floors: optional(list(floor, 'Speeds that must not suffer.', { most: 20 })),
    score: choice(['volumetric-efficiency', 'indicated-torque'], 'The figure that counts.', {
      value: 'volumetric-efficiency',
      why: 'what a trumpet changes first; torque adds the mixture and the burn',
    }),
  },
  oneOf(
    'the band',
    [['from', 'to'], ['bands'], ['gearChange']],
    'give from and to, or bands, or gearChange, one of them',
  ),
);

type TargetView = ViewOf<typeof targetSection>;

export function checkTarget(view: ScenarioView): void {
  const { target } = view;
  const speeds = gridValues(view.speeds);
  if (target.from.present) checkBand(target, speeds);
  for (const row of target.bands.rows) checkBand(row, speeds);
  checkGearChange(target, speeds);
  checkWeights(target);
  checkFloors(target, speeds);
}

interface BandView {
  here: Place;
  from: LeafPlace;
  to: LeafPlace;
}

function checkBand({ here, from, to }: BandView, speeds: readonly number[]): void {
  if (from.given! >= to.given!) to.problem('the band is empty', 'give the lower speed under from');
  checkInside(from, speeds);
  checkInside(to, speeds);
  checkEnough(here, speeds, from.given, to.given);
}

/** A speed of the target must lie among those computed. */
function checkInside(at: LeafPlace, speeds: readonly number[]): void {
  if (at.given !== undefined) checkValueInside(at, speeds, at.given);
}

function checkValueInside(at: Place, speeds: readonly number[], value: number): void {
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  if (speeds.length === 0 || (value >= low && value <= high)) return;
  at.problem(
    `${Number(value.toPrecision(6))} rpm lies outside the speeds computed`,
    'widen speeds or narrow the band',
    `${low} rpm to ${high} rpm`,
  );
}

function checkEnough(at: Place, speeds: readonly number[], from?: number, to?: number): void {
  if (speeds.length === 0 || from === undefined || to === undefined || from >= to) return;
  const inside = speeds.filter((speed) => speed >= from && speed <= to).length;
  if (inside >= 2) return;
  at.problem(
    `only ${inside} of the speeds computed lie in the band`,
    'take a smaller step under speeds, or widen the band',
    'at least 2 speeds',
  );
}

function checkGearChange({ gearChange }: TargetView, speeds: readonly number[]): void {
  const { here, limit, ratios } = gearChange;
  checkInside(limit, speeds);
  const gears = numbers(ratios.rows);
  const row = gears.findIndex((ratio, i) => i > 0 && !(ratio < gears[i - 1]!));
  if (row > 0 && Number.isFinite(gears[row])) {
    const remedy = 'sort the ratios from first gear to last';
    ratios.rows[row]!.problem('the ratios do not fall from gear to gear', remedy);
  } else if (limit.given !== undefined && gears.length >= 2 && gears.every(Number.isFinite)) {
    for (const { from, to } of gearChangeBands(limit.given, gears)) {
      checkValueInside(here, speeds, from);
      checkEnough(here, speeds, from, to);
    }
  }
}

function checkWeights({ weights, bands, gearChange }: TargetView): void {
  if (weights.present && (bands.present || gearChange.here.present)) {
    const instead = 'leave weights away, or give one band by from and to';
    weights.problem('weights by speed belong to a single band', instead);
  }
  const { rows } = weights;
  if (rows.length === 0 || !rows.every((row) => row.weight.given === 0)) return;
  weights.problem('all weights are 0', 'give at least one speed a weight above 0');
}

function checkFloors({ floors, score }: TargetView, speeds: readonly number[]): void {
  for (const { here, speed, leastEfficiency, leastTorque, mostLoss } of floors.rows) {
    checkInside(speed, speeds);
    if (![leastEfficiency, leastTorque, mostLoss].some((limit) => limit.present)) {
      const remedy = 'give one of leastEfficiency, leastTorque, mostLoss';
      here.problem('the floor has no limit', remedy);
    }
    const torque = score.given === 'indicated-torque';
    const [right, other] = torque
      ? (['leastTorque', leastEfficiency] as const)
      : (['leastEfficiency', leastTorque] as const);
    if (!other.present) continue;
    const remedy = `give ${right} or mostLoss, or change score`;
    other.problem('the floor is not of the figure that counts', remedy);
  }
}

export function resolveTarget({ target }: ScenarioView): Target {
  const score = target.score.take();
  const bands = resolveBands(target);
  const floors = resolveFloors(target);
  return {
    from: Math.min(...bands.map(({ from }) => from)),
    to: Math.max(...bands.map(({ to }) => to)),
    ...resolveWeights(target),
    ...(!target.from.present && { bands }),
    ...(floors.length > 0 && { floors }),
    ...(score !== 'volumetric-efficiency' && { score }),
  };
}

function resolveBands({ from, to, bands, gearChange }: TargetView): WeightedBand[] {
  const limit = gearChange.limit.given;
  if (limit !== undefined) return gearChangeBands(limit, numbers(gearChange.ratios.rows));
  if (bands.rows.length === 0) return [{ from: from.given!, to: to.given! }];
  return bands.rows.map((row) => ({
    from: row.from.take(),
    to: row.to.take(),
    weight: row.weight.take(),
  }));
}

function resolveWeights({ weights: { rows } }: TargetView): Pick<Target, 'weights'> {
  if (rows.length === 0) return {};
  return {
    weights: rows.map(({ speed, weight }) => ({ speed: speed.take(), weight: weight.take() })),
  };
}

function resolveFloors({ floors }: TargetView): Floor[] {
  return floors.rows.map(({ speed, leastEfficiency, leastTorque, mostLoss }) => {
    const least = leastEfficiency.given ?? leastTorque.given;
    const loss = mostLoss.given;
    return {
      speed: speed.take(),
      ...(least !== undefined && { least }),
      ...(loss !== undefined && { mostLossPercent: Number((100 * loss).toPrecision(12)) }),
    };
  });
}
