/** A scenario as it was understood, as a JSON document. */
import { documentHead } from '../../report/document.ts';
import { LENGTH_MEANING } from '../../report/lengthMeaning.ts';
import { filed, LENGTH } from '../../report/quantities.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { targetDocument } from '../tradeOffs.ts';

export function checkDocument(scenario: Scenario) {
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
    warnings,
  };
}
