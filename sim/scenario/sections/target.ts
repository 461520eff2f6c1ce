/** What the engine is to be best at: bands of speed, floors, and the figure that counts. */
import { gearChangeBands } from '../../decision/gearChange.ts';
import type { Floor, Score, Target, WeightedBand } from '../../decision/target.ts';
import { choice, maybe, quantity, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { gridValues } from './grid.ts';
import { checkRising } from './rows.ts';

const TARGET = 'target';
const SPEED = { limits: ['500 rpm', '25000 rpm'] } as const;
const END = { ...SPEED, optional: true } as const;

const weightsSection = section('One weight; between rows it runs straight.', {
  speed: quantity('speed', 'Engine speed.', SPEED),
  weight: quantity('ratio', 'How much this speed counts.', { limits: ['0', '100'] }),
})
  .array()
  .min(2)
  .max(100)
  .meta({ description: 'How much each speed of the band counts; without it all alike.' })
  .optional();

const bandsSection = section('One band of several.', {
  from: quantity('speed', 'Lower end of the band.', SPEED),
  to: quantity('speed', 'Upper end of the band.', SPEED),
  weight: maybe('ratio', 'How much the mean of this band counts beside the others.', {
    limits: ['0.001', '100'],
    absent: { value: '1', why: 'all bands alike' },
  }),
})
  .array()
  .min(1)
  .max(20)
  .meta({ description: 'Several bands, in place of from and to.' })
  .optional();

const gearChangeSection = section(
  'The bands that a gearbox leaves, in place of from and to: each reaches from where a gear is entered, changing up at the limit, to the limit.',
  {
    limit: quantity('speed', 'Speed at which gears are changed up.', SPEED),
    ratios: quantity('ratio', 'Ratio of one gear.', { example: '2.1', limits: ['0.1', '30'] })
      .array()
      .min(2)
      .max(12)
      .meta({ description: 'Ratios of the gears used, first to last, falling.' }),
  },
).optional();

const floorsSection = section('One floor; give at least one of the three limits.', {
  speed: quantity('speed', 'Engine speed at which it holds.', SPEED),
  leastEfficiency: maybe('ratio', 'Least volumetric efficiency, where that is the score.', {
    limits: ['0.05', '5'],
    optional: true,
  }),
  leastTorque: maybe('torque', 'Least indicated torque, where that is the score.', {
    limits: ['1 Nm', '20000 Nm'],
    optional: true,
  }),
  mostLoss: maybe('ratio', 'Greatest loss against the trumpets fitted now.', {
    example: '3 %',
    limits: ['0', '0.9'],
    optional: true,
  }),
})
  .array()
  .min(1)
  .max(20)
  .meta({ description: 'Speeds that must not suffer.' })
  .optional();

export const targetSection = section(
  'What the engine is to be best at. Give one band by from and to; or several under bands; or the gearbox under gearChange.',
  {
    from: maybe('speed', 'Lower end of the band.', END),
    to: maybe('speed', 'Upper end of the band.', END),
    weights: weightsSection,
    bands: bandsSection,
    gearChange: gearChangeSection,
    floors: floorsSection,
    score: choice(['volumetric-efficiency', 'indicated-torque'], 'The figure that counts.', {
      value: 'volumetric-efficiency',
      why: 'what a trumpet changes first; torque adds the mixture and the burn',
    }),
  },
);

export function checkTarget(reading: Reading): void {
  checkOneWay(reading);
  if (reading.has(`${TARGET}.from`)) checkBand(reading, TARGET);
  for (let row = 0; row < reading.rows(`${TARGET}.bands`); row++) {
    checkBand(reading, `${TARGET}.bands.${row}`);
  }
  checkGearChange(reading);
  checkWeights(reading);
  checkFloors(reading);
}

/** One band, bands or gearbox; not two of them and not none. */
function checkOneWay(reading: Reading): void {
  if (!reading.hasSection(TARGET)) return;
  const remedy = 'give from and to, or bands, or gearChange';
  const single = ['from', 'to'].filter((key) => reading.has(`${TARGET}.${key}`));
  const others = ['bands', 'gearChange'].filter((key) => reading.has(`${TARGET}.${key}`));
  if (single.length + others.length === 0) {
    reading.problem(TARGET, 'the band is missing', remedy);
  } else if (single.length === 1 && others.length === 0) {
    const absent = single[0] === 'from' ? 'to' : 'from';
    reading.problem(TARGET, `${absent} is missing`, remedy);
  } else if (others.length > (single.length > 0 ? 0 : 1)) {
    reading.problem(
      `${TARGET}.${others.at(-1)}`,
      'the band is given twice',
      `${remedy}, one of them`,
    );
  } else if (others.length > 0 && reading.has(`${TARGET}.weights`)) {
    const instead = 'leave weights away, or give one band by from and to';
    reading.problem(`${TARGET}.weights`, 'weights by speed belong to a single band', instead);
  }
}

function checkBand(reading: Reading, path: string): void {
  const from = reading.given(`${path}.from`);
  const to = reading.given(`${path}.to`);
  if (from !== undefined && to !== undefined && from >= to) {
    reading.problem(`${path}.to`, 'the band is empty', 'give the lower speed under from');
  }
  checkInside(reading, `${path}.from`, from);
  checkInside(reading, `${path}.to`, to);
  checkEnough(reading, path, from, to);
}

/** A speed of the target must lie among those computed. */
function checkInside(reading: Reading, path: string, value: number | undefined): void {
  const speeds = gridValues(reading, 'speeds');
  if (speeds.length === 0 || value === undefined) return;
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  if (value >= low && value <= high) return;
  reading.problem(
    path,
    `${Number(value.toPrecision(6))} rpm lies outside the speeds computed`,
    'widen speeds or narrow the band',
    `${low} rpm to ${high} rpm`,
  );
}

function checkEnough(reading: Reading, path: string, from?: number, to?: number): void {
  const speeds = gridValues(reading, 'speeds');
  if (speeds.length === 0 || from === undefined || to === undefined || from >= to) return;
  const inside = speeds.filter((speed) => speed >= from && speed <= to).length;
  if (inside >= 2) return;
  reading.problem(
    path,
    `only ${inside} of the speeds computed lie in the band`,
    'take a smaller step under speeds, or widen the band',
    'at least 2 speeds',
  );
}

function checkGearChange(reading: Reading): void {
  const path = `${TARGET}.gearChange`;
  const limit = reading.given(`${path}.limit`);
  const ratios = reading.column(`${path}.ratios`);
  checkInside(reading, `${path}.limit`, limit);
  const row = ratios.findIndex((ratio, i) => i > 0 && !(ratio < ratios[i - 1]!));
  if (row > 0 && Number.isFinite(ratios[row])) {
    const remedy = 'sort the ratios from first gear to last';
    reading.problem(`${path}.ratios.${row}`, 'the ratios do not fall from gear to gear', remedy);
  } else if (limit !== undefined && ratios.length >= 2 && ratios.every(Number.isFinite)) {
    for (const band of gearChangeBands(limit, ratios)) {
      checkInside(reading, path, band.from);
      checkEnough(reading, path, band.from, band.to);
    }
  }
}

function checkWeights(reading: Reading): void {
  const path = `${TARGET}.weights`;
  checkRising(reading, path, 'speed', reading.column(path, 'speed'));
  const weights = reading.column(path, 'weight');
  if (weights.length === 0 || !weights.every((weight) => weight === 0)) return;
  reading.problem(path, 'all weights are 0', 'give at least one speed a weight above 0');
}

function checkFloors(reading: Reading): void {
  const torque = reading.text(`${TARGET}.score`) === 'indicated-torque';
  for (let row = 0; row < reading.rows(`${TARGET}.floors`); row++) {
    const path = `${TARGET}.floors.${row}`;
    checkInside(reading, `${path}.speed`, reading.given(`${path}.speed`));
    const limits = ['leastEfficiency', 'leastTorque', 'mostLoss'];
    if (!limits.some((key) => reading.has(`${path}.${key}`))) {
      reading.problem(path, 'the floor has no limit', `give one of ${limits.join(', ')}`);
    }
    const other = torque ? 'leastEfficiency' : 'leastTorque';
    if (!reading.has(`${path}.${other}`)) continue;
    const remedy = `give ${torque ? 'leastTorque' : 'leastEfficiency'} or mostLoss, or change score`;
    reading.problem(`${path}.${other}`, 'the floor is not of the figure that counts', remedy);
  }
}

export function resolveTarget(reading: Reading): Target {
  const score = reading.choose(`${TARGET}.score`) as Score;
  const bands = resolveBands(reading);
  const floors = resolveFloors(reading);
  return {
    from: Math.min(...bands.map((band) => band.from)),
    to: Math.max(...bands.map((band) => band.to)),
    ...resolveWeights(reading),
    ...(!reading.has(`${TARGET}.from`) && { bands }),
    ...(floors.length > 0 && { floors }),
    ...(score !== 'volumetric-efficiency' && { score }),
  };
}

function resolveBands(reading: Reading): WeightedBand[] {
  const limit = reading.given(`${TARGET}.gearChange.limit`);
  if (limit !== undefined) {
    return gearChangeBands(limit, reading.column(`${TARGET}.gearChange.ratios`));
  }
  const rows = reading.rows(`${TARGET}.bands`);
  const bandAt = (path: string) => ({
    from: reading.given(`${path}.from`)!,
    to: reading.given(`${path}.to`)!,
  });
  if (rows === 0) return [bandAt(TARGET)];
  return Array.from({ length: rows }, (_, row) => {
    const path = `${TARGET}.bands.${row}`;
    return { ...bandAt(path), weight: reading.take(`${path}.weight`) };
  });
}

function resolveWeights(reading: Reading): Pick<Target, 'weights'> {
  const speed = reading.column(`${TARGET}.weights`, 'speed');
  const weight = reading.column(`${TARGET}.weights`, 'weight');
  if (speed.length === 0) return {};
  return { weights: speed.map((at, row) => ({ speed: at, weight: weight[row]! })) };
}

function resolveFloors(reading: Reading): Floor[] {
  return Array.from({ length: reading.rows(`${TARGET}.floors`) }, (_, row) => {
    const path = `${TARGET}.floors.${row}`;
    const least = reading.given(`${path}.leastEfficiency`) ?? reading.given(`${path}.leastTorque`);
    const loss = reading.given(`${path}.mostLoss`);
    return {
      speed: reading.given(`${path}.speed`)!,
      ...(least !== undefined && { least }),
      ...(loss !== undefined && { mostLossPercent: Number((100 * loss).toPrecision(12)) }),
    };
  });
}
