/** What is computed: at which speeds, with which lengths or other values. */
import { section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Axis } from '../range.ts';
import type { Reading } from '../reading.ts';
import { longestTrumpet } from './fit.ts';
import { checkGrid, gridSection, gridValues } from './grid.ts';
import { checkTrumpetLength, shortestTrumpet } from './trumpet.ts';
import { checkVary, variedKeys, varySection } from './vary.ts';

/** Most points of one sweep. */
const MOST_POINTS = 5000;

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
  vary: varySection,
});

export function checkStudy(reading: Reading): void {
  checkGrid(reading, 'speeds');
  checkGrid(reading, 'sweep.lengths');
  checkSweptLengths(reading);
  checkPoints(reading);
  checkVary(reading);
  checkRoom(reading);
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
  const varied = variedKeys(reading).reduce((count, axis) => count * axis.values.length, 1);
  if (varied * speeds > MOST_POINTS) {
    reading.problem(
      'sweep.vary',
      `${varied} variants at ${speeds} speeds make ${varied * speeds} points`,
      'take fewer values',
      `at most ${MOST_POINTS} points`,
    );
  }
  if (lengths * speeds <= MOST_POINTS) return;
  reading.problem(
    'sweep.lengths',
    `${lengths} lengths at ${speeds} speeds make ${lengths * speeds} points`,
    'take wider steps; the best length is refined between them',
    `at most ${MOST_POINTS} points`,
  );
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

/** What a sweep is to try. */
export interface SweepRange {
  /** Trumpet lengths [m], rim plane to body face, rising. */
  lengths: number[];
  /** Keys to vary in place of the length; absent where there are none. */
  vary?: Axis[];
}

export function resolveSweep(reading: Reading): SweepRange {
  const vary = variedKeys(reading);
  return { lengths: fittingLengths(reading), ...(vary.length > 0 && { vary }) };
}

/** The lengths that fit; where some do not, the longest that does comes last, to the millimetre. */
function fittingLengths(reading: Reading): number[] {
  const asked = gridValues(reading, 'sweep.lengths');
  const longest = longestTrumpet(reading);
  const fitting = asked.filter((length) => length <= longest);
  if (fitting.length === asked.length) return asked;
  const last = Math.floor(longest * 1e3 + 1e-6) / 1e3;
  reading.warn(
    'sweep.lengths',
    `${asked.length - fitting.length} of the lengths do not fit and are left out; the longest that fits is ${quantityToText(last, 'length')}`,
  );
  return last > (fitting.at(-1) ?? 0) ? [...fitting, last] : fitting;
}

/** The shortest length asked for must fit. */
function checkRoom(reading: Reading): void {
  const shortest = Math.min(...gridValues(reading, 'sweep.lengths'));
  const longest = longestTrumpet(reading);
  if (!(shortest > longest)) return;
  reading.problem(
    'fit',
    'none of the lengths to try fits',
    'try shorter lengths, or check room, clearance and longest',
    `the longest that fits is ${quantityToText(longest, 'length')}`,
  );
}
