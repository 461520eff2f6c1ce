/** What every JSON document carries. */
import { scenarioHash } from '../scenario/hash.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { PROGRAM } from '../version.ts';

export interface DocumentHead {
  /** Name and version of the document's form. */
  schema: { name: string; version: number };
  program: { name: string; version: string };
  scenario: { title: string; hash: string };
}

export function documentHead(name: string, scenario: Scenario): DocumentHead {
  return {
    schema: { name: `trumpetry-${name}`, version: 1 },
    program: { ...PROGRAM },
    scenario: { title: scenario.title, hash: scenarioHash(scenario) },
  };
}
