/** A scenario as it was understood, as a JSON document. */

import type { Scenario } from '../scenario/resolve.ts';
import type { DefaultUsed, ScenarioWarning } from '../scenario/view.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';
import { LENGTH_MEANING } from './lengthMeaning.ts';
import { type FactSection, scenarioFacts } from './scenarioFacts.ts';
import { type TargetColumns, targetColumns } from './tradeOffColumns.ts';

export interface CheckDocument extends DocumentHead {
  length_meaning: string;
  baseline_length_mm: number | null;
  lengths_mm: (number | null)[];
  speeds_rpm: number[];
  target: TargetColumns;
  /** Figures with their units, as text. */
  facts: FactSection[];
  defaults_used: DefaultUsed[];
  warnings: ScenarioWarning[];
}

export function checkDocument(scenario: Scenario, stamp: ScenarioStamp): CheckDocument {
  const { engine, sweep, speeds, target, defaultsUsed, warnings } = scenario;
  return {
    ...documentHead('check', 1, stamp),
    length_meaning: LENGTH_MEANING,
    baseline_length_mm: plain(engine.intake.trumpet.length * 1e3),
    lengths_mm: sweep.lengths.map((length) => plain(length * 1e3)),
    speeds_rpm: speeds,
    target: targetColumns(target),
    facts: scenarioFacts(scenario),
    defaults_used: defaultsUsed,
    warnings,
  };
}
