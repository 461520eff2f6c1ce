/** A scenario as it was understood, as a JSON document. */
import { documentHead } from '../../report/document.ts';
import { LENGTH_MEANING } from '../../report/lengthMeaning.ts';
import { filed, LENGTH, MOVES } from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { targetDocument } from '../tradeOffs.ts';
import type { Effect } from './effects.ts';

/** Defaults by what they move, most first. */
export function effectsTable(effects: readonly Effect[]): Table {
  return tableOf<Effect>(
    'Defaults by what they move',
    [
      words('key', 'key', ({ path }) => path),
      words('doubt', 'doubt', ({ text }) => text),
      words('why', 'why', ({ why }) => why),
      column(MOVES, ({ moves }) => moves),
    ],
    effects,
  );
}

export function checkDocument(scenario: Scenario, effects?: readonly Effect[]) {
  const { engine, sweep, speeds, target, defaultsUsed, warnings } = scenario;
  return {
    ...documentHead('check', scenario),
    length_meaning: LENGTH_MEANING,
    baseline_length_mm: filed(LENGTH, engine.intake.trumpet.length),
    lengths_mm: sweep.lengths.map((length) => filed(LENGTH, length)),
    speeds_rpm: speeds,
    target: targetDocument(target),
    facts: scenario.facts,
    defaults_used: defaultsUsed,
    ...(effects && { defaults_by_effect: asObjects(effectsTable(effects)) }),
    warnings,
  };
}
