/** What a study has found, told once: as text for a terminal and as HTML to keep. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import type { Scenario } from '../scenario/resolve.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import { htmlPage } from './htmlPage.ts';
import { html, type Markup } from './markup.ts';
import type { Plot } from './plot.ts';
import * as section from './sections.ts';
import { svgPlot } from './svgPlot.ts';
import { asHtml, type Table } from './table.ts';
import { asText, WIDTH, wrapped } from './textTable.ts';
import { throttleNamed } from './throttleNames.ts';

/** A part of a report; whatever is there is told in this order. */
export interface Section {
  heading?: string;
  sentences?: readonly string[];
  plots?: readonly Plot[];
  /** Drawings; HTML alone has them. */
  pictures?: readonly { caption: string; picture: Markup }[];
  tables?: readonly Table[];
  /** Said below the tables. */
  notes?: readonly string[];
  items?: readonly string[];
  /** Lines of text that stand as they are, such as a drawing. */
  lines?: readonly string[];
  /** Whether it goes on the one page of a report that prints on a sheet. */
  onSheet?: boolean;
  /** Where the section stands; everywhere where absent. */
  only?: 'text' | 'html';
}

export interface Report {
  /** What it is about, for the title of a page. */
  about: string;
  scenario: Scenario;
  /** The answer first; empty sentences are left out. */
  answer: readonly string[];
  /** What stands against taking it as it is. */
  flags: readonly string[];
  sections: readonly Section[];
  /** Whether it prints on one page: the answer, what stands against it, and sections for the sheet. */
  sheet?: boolean;
  /** Trumpet length whose meaning is drawn [m]. */
  length?: number;
  /** Every point that the report rests on; none where it asks the solver nothing. */
  outcomes: readonly PointOutcome[];
}

/** Paragraphs are no wider than reads well. */
export const READABLE = 92;

/** Lines of text that fit a width; plots are left out. */
export function reportText(report: Report, width = WIDTH): string[] {
  const { scenario, answer, flags, sections } = inItsWords(report);
  const told = sections.filter(({ only = 'text' }) => only === 'text');
  return [
    scenario.title,
    '',
    ...spaced(paragraphs([...answer, ...flags], width)),
    ...told.flatMap((one) => sectionText(one, width, scenario.lengthUnit)),
    ...section.warningLines(scenario, Math.min(width, READABLE)),
  ];
}

function sectionText(
  { heading, sentences = [], tables = [], notes = [], items = [], lines: own = [] }: Section,
  width: number,
  unit: LengthUnit,
): string[] {
  const indent = heading === undefined ? '' : '  ';
  const room = width - indent.length;
  const blocks = [
    paragraphs(sentences, room),
    ...tables.map((table) => asText(table, room, unit)),
    own,
    paragraphs(notes, room),
    items.flatMap((item) => wrapped(`- ${item}`, Math.min(room, READABLE), '  ')),
  ];
  const lines = blocks.flatMap(spaced).map((line) => (indent + line).trimEnd());
  return lines.length === 0 ? [] : [...(heading === undefined ? [] : [heading]), ...lines];
}

/** Lines with a blank one below, where there are any. */
const spaced = (lines: readonly string[]) => (lines.length > 0 ? [...lines, ''] : []);

function paragraphs(sentences: readonly string[], width: number): string[] {
  const told = sentences.filter((sentence) => sentence !== '');
  return told.flatMap((sentence) => wrapped(sentence, Math.min(width, READABLE), '  '));
}

/** The same as one HTML file that reads offline. */
export function reportHtml(report: Report): string {
  const { about, scenario, answer, flags, sections, sheet = false } = inItsWords(report);
  const told = sections.filter(({ only = 'html' }) => only === 'html');
  const printed = told.filter(({ onSheet = !sheet }) => onSheet);
  const rest = told.filter((one) => !printed.includes(one));
  const markup = (one: Section) => sectionMarkup(one, scenario.lengthUnit);
  const body = html`<h1>${scenario.title}</h1>
${section.answerSection(answer, flags)}
${printed.map(markup)}
${sheet ? html`<div class="screen">\n${rest.map(markup)}\n${standing(report)}\n</div>` : standing(report)}`;
  return htmlPage(`${about}: ${scenario.title}`, body, scenario, sheet);
}

function inItsWords(report: Report): Report {
  const { answer, flags, sections, scenario } = report;
  return {
    ...report,
    ...throttleNamed({ answer, flags, sections }, scenario.engine.intake.throttle),
  };
}

/** What every report ends with. */
function standing({ scenario, length, outcomes }: Report): Markup {
  const computed = outcomes.length > 0;
  return html`${length === undefined ? html`` : section.meaningSection(scenario, length)}
${section.cautionSection()}
${computed ? section.knownSection() : html``}
${section.scenarioSection(scenario)}
${computed ? section.auditSection(outcomes) : html``}`;
}

function sectionMarkup(one: Section, unit: LengthUnit): Markup {
  const {
    heading,
    sentences = [],
    plots = [],
    pictures = [],
    tables = [],
    notes = [],
    items = [],
  } = one;
  const title = (text: string) =>
    heading === undefined ? html`<h2>${text}</h2>` : html`<h3>${text}</h3>`;
  return html`${heading === undefined ? [] : [html`<h2>${heading}</h2>`]}
${sentences.map((sentence) => html`<p>${sentence}</p>`)}
${pictures.map(({ caption, picture }) => section.figureSection(caption, picture))}
${plots.map((plot) => section.figureSection(plot.caption, svgPlot(plot)))}
${tables.map((table) => html`${title(table.label)}\n${asHtml(table, unit)}`)}
${notes.map((note) => html`<p class="note">${note}</p>`)}
${items.length === 0 ? [] : [section.list(items)]}`;
}
