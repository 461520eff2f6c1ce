/** A scenario as it was understood, in words. */
import { LENGTH_DRAWING, LENGTH_MEANING } from '../../report/lengthMeaning.ts';
import { READABLE, type Report } from '../../report/report.ts';
import { defaultsTable } from '../../report/sections.ts';
import { wrapped } from '../../report/textTable.ts';
import type { Fact } from '../../scenario/facts.ts';
import type { Scenario } from '../../scenario/resolve.ts';

export function checkReport(scenario: Scenario): Report {
  const { spreads, defaultsUsed } = scenario;
  const doubtful = spreads.map(({ path }) => path).join(', ');
  return {
    about: 'Understood',
    scenario,
    answer: [],
    flags: [],
    sections: [
      ...scenario.facts.map(({ heading, facts }) => ({ heading, lines: facts.flatMap(factLines) })),
      {
        heading: 'What the lengths mean',
        lines: [...wrapped(LENGTH_MEANING), '', ...LENGTH_DRAWING.split('\n')],
      },
      {
        sentences:
          doubtful === '' ? [] : [`Given with doubt, computed at the middle: ${doubtful}.`],
      },
      ...(defaultsUsed.length === 0
        ? []
        : [{ heading: 'Defaults used', tables: [defaultsTable(scenario)] }]),
    ],
    outcomes: [],
  };
}

/** Room for the label of a fact. */
const LABEL = 24;

/** Label and text beside one another; the text goes on below itself. */
function factLines({ label, text }: Fact): string[] {
  const lines = wrapped(text, READABLE - LABEL - 1);
  return lines.map((line, i) => `${(i === 0 ? label : '').padEnd(LABEL)} ${line}`);
}
