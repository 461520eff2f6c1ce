/** What a command prints of points by chance, and figures to hold it against. */
import { expect } from 'vitest';
import type { TradeOff } from '../../sim/decision/tradeOff.ts';
import type { PointResult } from '../../sim/engine/point.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { readVariedKey } from '../../sim/scenario/readValue.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { askedTrace } from '../../sim/study/trace/ask.ts';
import { isFailure, type PointOutcome } from '../../sim/sweep/runner.ts';
import type { Demo } from '../scenario.ts';
import { answerOf, type Call, callsOf } from './calls.ts';
import { chanceWorkers } from './chance.ts';
import { cheapText } from './cheap.ts';
import { brakeFigures, TRADE_OFF } from './figures.ts';
import { ANYTHING, type Shown, tenDigits } from './tables.ts';

/** Keys of a document that are no columns. */
export const HEAD = ['schema', 'program', 'scenario', 'speeds_rpm', 'length_mm', 'audit'];
const BRAKE = ['brake_torque_Nm', 'brake_power_kW', 'brake_torque_lbf_ft', 'brake_power_hp'];
export const FLAGS = ['settled', 'failures'];

/** A terminal on which no cell wraps. */
const WIDE = 400;

const callNamed = (demo: Demo, name: string) =>
  callsOf(demo).find((call) => call.name === name) as Call;

export async function printed(demo: Demo, name: string) {
  const call = callNamed(demo, name);
  const { stdout, files } = await answerOf(demo, call, () => chanceWorkers, false, WIDE);
  const ending = (end: string) =>
    Object.entries(files).find(([file]) => file.endsWith(end))?.[1] ?? '';
  const scenario = readScenario(cheapText(demo, call.said), demo);
  const stations = call.words[call.words.indexOf('--stations') + 1];
  return {
    scenario,
    others: files,
    ...(call.words.includes('--stations') && {
      stations: askedTrace({ options: { stations }, scenario, file: '', text: '', read: String })
        .stations,
    }),
    text: stdout,
    csv: ending('.csv'),
    html: ending('.html'),
    document: JSON.parse(ending('.json')),
  };
}

/** The keys that a call varies. */
export function axesOf(demo: Demo, name: string) {
  const { words } = callNamed(demo, name);
  const axes = words
    .filter((_, i) => words[i - 1] === '--vary')
    .map((text) => {
      const axis = readVariedKey(text);
      if ('problem' in axis) throw new Error(axis.problem);
      return axis;
    });
  // A condition beside a choice stands first.
  const isCondition = ({ path }: { path: string }) => /^ambient\.|^fuel\.lambda$/.test(path);
  return axes.sort((a, b) => Number(isCondition(b)) - Number(isCondition(a)));
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
  engine?: EngineSpecification,
): void {
  for (const [key, column] of Object.entries(columns)) {
    if (others.includes(key)) continue;
    if (engine && BRAKE.includes(key)) {
      const brakes = points.map((point) => brakeFigures(point, engine) as Record<string, number>);
      expect(column, key).toEqual(brakes.map((brake) => tenDigits(brake[key]!)));
      continue;
    }
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

/** The cells of a length or variant in words. */
export function tradeOffFigures(
  tradeOff: TradeOff,
  length: number,
  own: boolean,
): Record<string, Shown> {
  const { bandMean, gainPercent, worstLossPercent, worstLossSpeed, least } = tradeOff;
  const { bandLossPercent, bandLossSpeed } = tradeOff;
  return {
    length,
    'trumpet length': length,
    'mean VE in band': bandMean,
    'mean torque in band': bandMean,
    gain: own ? undefined : gainPercent,
    'gain in the band': own ? undefined : gainPercent,
    'worst loss': worstLossPercent,
    'worst loss outside': worstLossPercent,
    at: worstLossSpeed,
    'at speed': worstLossSpeed,
    'loss in band': bandLossPercent,
    'worst loss in band': bandLossPercent,
    'there at': bandLossSpeed,
    'there at speed': bandLossSpeed,
    least,
    'least in band': least,
    remark: ANYTHING,
    '': ANYTHING,
  };
}
