/** What a command prints of points by chance, and figures to hold it against. */
import { expect } from 'vitest';
import { askedStations, askedVary } from '../../sim/cli/asked.ts';
import type { TradeOff } from '../../sim/decision/tradeOff.ts';
import type { PointResult } from '../../sim/engine/point.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { isFailure, type PointOutcome } from '../../sim/sweep/runner.ts';
import type { Demo } from '../scenario.ts';
import { answerOf, type Call, callsOf } from './calls.ts';
import { chanceWorkers } from './chance.ts';
import { cheapText } from './cheap.ts';
import { TRADE_OFF } from './figures.ts';
import { ANYTHING, type Shown, tenDigits } from './tables.ts';

/** Keys of a document that are no columns. */
export const HEAD = ['schema', 'program', 'scenario', 'speeds_rpm', 'length_mm', 'audit'];
export const FLAGS = ['settled', 'failures'];

const callNamed = (demo: Demo, name: string) =>
  callsOf(demo).find((call) => call.name === name) as Call;

export async function printed(demo: Demo, name: string) {
  const call = callNamed(demo, name);
  const { stdout, files } = await answerOf(demo, call, () => chanceWorkers);
  const ending = (end: string) =>
    Object.entries(files).find(([file]) => file.endsWith(end))?.[1] ?? '';
  const scenario = readScenario(cheapText(demo, call.said), demo);
  const stations = call.words[call.words.indexOf('--stations') + 1];
  return {
    scenario,
    others: files,
    ...(call.words.includes('--stations') && { stations: askedStations(stations) }),
    text: stdout,
    csv: ending('.csv'),
    html: ending('.html'),
    document: JSON.parse(ending('.json')),
  };
}

/** The keys that a call varies. */
export function axesOf(demo: Demo, name: string) {
  const { words } = callNamed(demo, name);
  return askedVary(words.filter((_, i) => words[i - 1] === '--vary'))!;
}

export function sound(outcome: PointOutcome): PointResult {
  if (isFailure(outcome)) throw new Error(outcome.failure);
  return outcome;
}

/** Each column of a document is that figure of its points. */
export function expectColumns(
  columns: Record<string, unknown>,
  points: readonly PointResult[],
  figures: Record<string, (point: PointResult) => number>,
  others: readonly string[],
): void {
  for (const [key, column] of Object.entries(columns)) {
    if (others.includes(key)) continue;
    expect(Object.keys(figures), 'a column without a figure').toContain(key);
    expect(column, key).toEqual(points.map((point) => tenDigits(figures[key]!(point))));
  }
}

export function expectTradeOff(
  columns: Record<string, unknown>,
  tradeOff: TradeOff,
  others: readonly string[],
) {
  for (const [key, value] of Object.entries(columns)) {
    if (others.includes(key)) continue;
    expect(Object.keys(TRADE_OFF), 'a column without a figure').toContain(key);
    expect(value, key).toEqual(TRADE_OFF[key]!(tradeOff));
  }
}

/** The cells of a length or variant in words; loss and speed stand in one cell or in two. */
export function tradeOffFigures(
  { bandMean, gainPercent, worstLossPercent, worstLossSpeed, least }: TradeOff,
  length: number,
  own: boolean,
  twoCells: boolean,
): Record<string, Shown> {
  const lossless = worstLossSpeed === undefined;
  return {
    length: 1e3 * length,
    'mean VE in band': bandMean,
    'mean torque in band': bandMean,
    gain: own ? undefined : gainPercent,
    'worst loss outside': lossless
      ? undefined
      : twoCells
        ? worstLossPercent
        : [worstLossPercent, worstLossSpeed],
    at: worstLossSpeed,
    'least in band': least,
    remark: ANYTHING,
    '': ANYTHING,
  };
}
