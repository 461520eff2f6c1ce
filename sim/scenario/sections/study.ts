/** What is asked: at which speeds, with which lengths, and which band matters. */
import { quantity, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { checkGrid, gridSection, gridValues } from './grid.ts';
import { checkRising } from './rows.ts';
import { checkTrumpetLength, shortestTrumpet } from './trumpet.ts';

/** Most points of one sweep. */
const MOST_POINTS = 400;

/** Mean piston speed above which few engines hold [m/s]; common practice, no source. */
const FAST_PISTON = 28;

const SPEED = { limits: ['500 rpm', '25000 rpm'] } as const;

export const speedsSection = gridSection('Engine speeds to compute.', 'speed', {
  ...SPEED,
  usual: ['1000 rpm', '20000 rpm'],
  step: ['10 rpm', '10000 rpm'],
});

export const sweepSection = section('What is varied to find the best.', {
  lengths: gridSection('Trumpet lengths to try, rim plane to body face.', 'length', {
    limits: ['5 mm', '2 m'],
    usual: ['20 mm', '1 m'],
    step: ['0.5 mm', '1 m'],
  }),
});

export const targetSection = section('The band of speed in which the engine is to be best.', {
  from: quantity('speed', 'Lower end of the band.', SPEED),
  to: quantity('speed', 'Upper end of the band.', SPEED),
  weights: section('One weight; between rows it runs straight.', {
    speed: quantity('speed', 'Engine speed.', SPEED),
    weight: quantity('ratio', 'How much this speed counts.', { limits: ['0', '100'] }),
  })
    .array()
    .min(2)
    .max(100)
    .meta({ description: 'How much each speed of the band counts; without it all alike.' })
    .optional(),
});

/** The band that matters. */
export interface Target {
  /** Ends of the band [rpm]. */
  from: number;
  to: number;
  /** Weight against speed [rpm], straight between rows; absent where all speeds count alike. */
  weights?: { speed: number; weight: number }[];
}

export function checkStudy(reading: Reading): void {
  checkGrid(reading, 'speeds');
  checkGrid(reading, 'sweep.lengths');
  checkSweptLengths(reading);
  checkPoints(reading);
  checkBand(reading);
  checkWeights(reading);
  checkPistonSpeed(reading);
}

function checkSweptLengths(reading: Reading): void {
  const path = 'sweep.lengths';
  const short = reading.column(`${path}.at`).findIndex((at) => at < shortestTrumpet(reading));
  checkTrumpetLength(reading, short < 0 ? `${path}.from` : `${path}.at.${short}`);
}

function checkPoints(reading: Reading): void {
  const lengths = gridValues(reading, 'sweep.lengths').length;
  const speeds = gridValues(reading, 'speeds').length;
  if (lengths * speeds <= MOST_POINTS) return;
  reading.problem(
    'sweep.lengths',
    `${lengths} lengths at ${speeds} speeds make ${lengths * speeds} points`,
    'take wider steps; the best length is refined between them',
    `at most ${MOST_POINTS} points`,
  );
}

function checkBand(reading: Reading): void {
  const from = reading.given('target.from');
  const to = reading.given('target.to');
  if (from !== undefined && to !== undefined && from >= to) {
    reading.problem('target.to', 'the band is empty', 'give the lower speed under from');
  }
  const speeds = gridValues(reading, 'speeds');
  if (speeds.length === 0) return;
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  for (const [key, value] of [
    ['from', from],
    ['to', to],
  ] as const) {
    if (value === undefined || (value >= low && value <= high)) continue;
    reading.problem(
      `target.${key}`,
      `${value} rpm lies outside the speeds computed`,
      'widen speeds or narrow the band',
      `${low} rpm to ${high} rpm`,
    );
  }
  if (from === undefined || to === undefined || from >= to) return;
  const inside = speeds.filter((speed) => speed >= from && speed <= to).length;
  if (inside >= 2) return;
  reading.problem(
    'target',
    `only ${inside} of the speeds computed lie in the band`,
    'take a smaller step under speeds, or widen the band',
    'at least 2 speeds',
  );
}

function checkWeights(reading: Reading): void {
  const path = 'target.weights';
  checkRising(reading, path, 'speed', reading.column(path, 'speed'));
  const weights = reading.column(path, 'weight');
  if (weights.length === 0 || !weights.every((weight) => weight === 0)) return;
  reading.problem(path, 'all weights are 0', 'give at least one speed a weight above 0');
}

function checkPistonSpeed(reading: Reading): void {
  const stroke = reading.given('engine.stroke');
  const speeds = gridValues(reading, 'speeds').filter(Number.isFinite);
  if (stroke === undefined || speeds.length === 0) return;
  const fastest = (2 * stroke * Math.max(...speeds)) / 60;
  if (fastest <= FAST_PISTON) return;
  const shown = `the mean piston speed reaches ${fastest.toFixed(1)} m/s`;
  reading.warn('speeds', `${shown}; above ${FAST_PISTON} m/s few engines hold`);
}

export function resolveTarget(reading: Reading): Target {
  const speed = reading.column('target.weights', 'speed');
  const weight = reading.column('target.weights', 'weight');
  const weights = speed.map((at, row) => ({ speed: at, weight: weight[row]! }));
  return {
    from: reading.take('target.from'),
    to: reading.take('target.to'),
    ...(weights.length > 0 && { weights }),
  };
}
