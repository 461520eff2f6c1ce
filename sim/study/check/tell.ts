/** A scenario as it was understood, in words. */
import { LENGTH_DRAWING, LENGTH_MEANING } from '../../report/lengthMeaning.ts';
import type { Report, Section } from '../../report/report.ts';
import { defaultsTable } from '../../report/sections.ts';
import { type Table, tableOf, words } from '../../report/table.ts';
import type { Fact, FactSection } from '../../scenario/facts.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { Effect } from './effects.ts';
import { effectsTable } from './tables.ts';

export function checkReport(scenario: Scenario, effects?: readonly Effect[]): Report {
  const { spreads, defaultsUsed } = scenario;
  const doubtful = spreads.map(({ path }) => path).join(', ');
  return {
    about: 'Understood',
    scenario,
    answer: [],
    flags: [],
    sections: [
      ...scenario.facts.map((section) => ({
        heading: section.heading,
        tables: [factTable(section)],
      })),
      {
        heading: 'What the lengths mean',
        sentences: [LENGTH_MEANING],
        lines: LENGTH_DRAWING.split('\n'),
      },
      {
        sentences:
          doubtful === '' ? [] : [`Given with doubt, computed at the middle: ${doubtful}.`],
      },
      ...(defaultsUsed.length === 0
        ? []
        : [{ heading: 'Defaults used', tables: [defaultsTable(scenario)] }]),
      ...(effects ? [effectsSection(effects)] : []),
    ],
    outcomes: [],
  };
}

function effectsSection(effects: readonly Effect[]): Section {
  return {
    heading: 'Defaults by what they move',
    sentences: [
      'Change of volumetric efficiency where the default is off by the half-width, in the mean of both ' +
        'and the middle of the band, on a coarse mesh. Measure what stands first.',
    ],
    tables: [effectsTable(effects)],
  };
}

/** Room for the label of a fact. */
const LABEL = 24;

/** Labels and texts beside one another, without heads. */
function factTable({ heading, facts }: FactSection): Table {
  return tableOf<Fact>(
    heading,
    [words('label', '', ({ label }) => label.padEnd(LABEL)), words('text', '', ({ text }) => text)],
    facts,
  );
}
