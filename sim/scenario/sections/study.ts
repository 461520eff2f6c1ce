/** What is computed: at which speeds, with which lengths or other values. */
import { section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { Axis } from '../range.ts';
import type { ScenarioView } from '../schema.ts';
import { longestTrumpet } from './fit.ts';
import { checkGrid, gridSection, gridValues } from './grid.ts';
import { checkTrumpetLength, shortestTrumpet } from './trumpet.ts';
import { checkVary, variedKeys, varySection } from './vary.ts';

/** Most points of one sweep of lengths, and of one of variants. */
const MOST_POINTS = 5000;

/** Mean piston speed above which few engines hold [m/s]; common practice, no source. */
const FAST_PISTON = 28;

export const speedsSection = gridSection('Engine speeds to compute. A range is refined.', 'speed', {
  coarsest: 'Widest distance between speeds; about a fifteenth of the range where left out.',
  limits: ['500 rpm', '25000 rpm'],
  usual: ['1000 rpm', '20000 rpm'],
  step: ['10 rpm', '10000 rpm'],
  form: { group: 'Where you need it', labels: ['Lowest speed', 'Highest speed', 'Speeds apart'] },
});

export const sweepSection = section('What is varied to find the best.', {
  lengths: gridSection('Trumpet lengths to try, rim plane to body face.', 'length', {
    limits: ['5 mm', '2 m'],
    usual: ['20 mm', '1 m'],
    step: ['0.5 mm', '1 m'],
    form: { group: 'Lengths to try', labels: ['Shortest', 'Longest', 'Step'] },
  }),
  vary: varySection,
});

export function checkStudy(view: ScenarioView): void {
  checkGrid(view.speeds);
  checkGrid(view.sweep.lengths);
  checkSweptLengths(view);
  checkPoints(view);
  checkVary(view);
  checkRoom(view);
  checkPistonSpeed(view);
}

function checkSweptLengths({ sweep: { lengths }, intake: { trumpet } }: ScenarioView): void {
  const short = lengths.at.rows.find(({ given }) => given! < shortestTrumpet(trumpet));
  checkTrumpetLength(trumpet, short ?? lengths.from);
  const tried = gridValues(lengths);
  const fitted = trumpet.length.given!;
  const span = Math.max(...tried) / Math.min(...tried) > 1.5 ? [1 / 2, 2] : [1 / 4, 4];
  if (fitted < Math.min(...tried) * span[0]! || fitted > Math.max(...tried) * span[1]!) {
    const shown = [Math.min(...tried), Math.max(...tried)].map((x) => quantityToText(x, 'length'));
    trumpet.length.warn(`the trumpets fitted now lie far from the ${shown.join(' to ')} to try`);
  }
}

function checkPoints(view: ScenarioView): void {
  const { lengths, vary } = view.sweep;
  const tried = gridValues(lengths).length;
  const speeds = gridValues(view.speeds).length;
  const variants = variedKeys(view).reduce((count, axis) => count * axis.values.length, 1);
  if (variants * speeds > MOST_POINTS) {
    vary.problem(
      `${variants} variants at ${speeds} speeds make ${variants * speeds} points`,
      'take fewer values',
      `at most ${MOST_POINTS} points`,
    );
  }
  if (tried * speeds <= MOST_POINTS) return;
  lengths.here.problem(
    `${tried} lengths at ${speeds} speeds make ${tried * speeds} points`,
    'take wider steps; the best length is refined between them',
    `at most ${MOST_POINTS} points`,
  );
}

function checkPistonSpeed({ engine: { stroke }, speeds }: ScenarioView): void {
  const fastest = (2 * stroke.given! * Math.max(...gridValues(speeds))) / 60;
  if (!(fastest > FAST_PISTON)) return;
  const shown = `the mean piston speed reaches ${fastest.toFixed(1)} m/s`;
  speeds.here.warn(`${shown}; above ${FAST_PISTON} m/s few engines hold`);
}

/** What a sweep is to try. */
export interface SweepRange {
  /** Trumpet lengths [m], rim plane to body face, rising. */
  lengths: number[];
  /** Keys to vary in place of the length; absent where there are none. */
  vary?: Axis[];
}

export function resolveSweep(view: ScenarioView): SweepRange {
  const vary = variedKeys(view);
  return { lengths: fittingLengths(view), ...(vary.length > 0 && { vary }) };
}

/** The lengths that fit; where some do not, the longest that does comes last, to the millimetre. */
function fittingLengths(view: ScenarioView): number[] {
  const { lengths } = view.sweep;
  const asked = [...gridValues(lengths)];
  const longest = longestTrumpet(view);
  const fitting = asked.filter((length) => length <= longest);
  if (fitting.length === asked.length) return asked;
  const last = Math.floor(longest * 1e3 + 1e-6) / 1e3;
  lengths.here.warn(
    `${asked.length - fitting.length} of the lengths do not fit and are left out; the longest that fits is ${quantityToText(last, 'length')}`,
  );
  return last > (fitting.at(-1) ?? 0) ? [...fitting, last] : fitting;
}

/** The shortest length asked for must fit. */
function checkRoom(view: ScenarioView): void {
  const shortest = Math.min(...gridValues(view.sweep.lengths));
  const longest = longestTrumpet(view);
  if (!(shortest > longest)) return;
  view.fit.here.problem(
    'none of the lengths to try fits',
    'try shorter lengths, or check room, clearance and longest',
    `the longest that fits is ${quantityToText(longest, 'length')}`,
  );
}
