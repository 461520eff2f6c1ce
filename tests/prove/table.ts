/** The proof set out: as text, as Markdown, as a JSON document. */
import { textTable } from '../../sim/report/textTable.ts';
import { PROGRAM } from '../../sim/version.ts';
import type { By, Outcome, Tolerance } from './check.ts';

/** Digits shown: fewer than the solver repeats from machine to machine. */
const DIGITS = 5;

const HEADS = ['what', 'published', 'ours', 'difference', 'tolerance', 'verdict'] as const;

/** Lines of a terminal: one table, a line a check. */
export function proofText(outcomes: readonly Outcome[]): string[] {
  const heads = ['group', ...HEADS, 'source'];
  const rows = outcomes.map((outcome) => [outcome.group, ...cells(outcome), outcome.source]);
  return [...textTable(heads, rows, [0, 1, 6, 7]), '', summary(outcomes), waysText(outcomes)];
}

/** The fast checks as a page of the documentation. */
export function proofMarkdown(outcomes: readonly Outcome[]): string {
  const groups = [...new Set(outcomes.map(({ group }) => group))];
  const rowsOf = (group: string) => outcomes.filter((outcome) => outcome.group === group);
  const count = (group: string) =>
    `| [${group}](#${anchor(group)}) | ${rowsOf(group).length} | ${held(rowsOf(group))} |`;
  return [
    '# Proof',
    '',
    `${summary(outcomes)} ${waysText(outcomes)}`,
    '',
    'Published values beside what this program computes. Written by `trumpetry prove`; do not edit.',
    'What each figure means for a builder is in [limits.md](limits.md), the equations are in',
    '[theory.md](theory.md). How a source was come by is said in brackets. What takes minutes is in',
    '[studies.md](studies.md).',
    '',
    '| group | checks | hold |',
    '|---|--:|--:|',
    ...groups.map(count),
    ...groups.flatMap((group) => groupLines(group, rowsOf(group))),
    '',
  ].join('\n');
}

/** What takes minutes as a page: slow checks, and studies that are programs of their own. */
export function studiesMarkdown(
  outcomes: readonly Outcome[],
  studies: readonly { what: string; script: string; holds: boolean }[],
): string {
  return [
    '# Slow checks and studies',
    '',
    'Written by `npm run prove`; do not edit.',
    ...groupLines('Slow checks', outcomes),
    '',
    '## Studies',
    '',
    'Each script prints its own table.',
    '',
    '| study | script | verdict |',
    '|---|---|---|',
    ...studies.map(
      ({ what, script, holds }) =>
        `| ${what} | [${script}](../${script}) | ${holds ? 'holds' : 'FAILS'} |`,
    ),
    '',
  ].join('\n');
}

/** One table, its sources by number below it. */
function groupLines(group: string, outcomes: readonly Outcome[]): string[] {
  const sources = [...new Set(outcomes.map(({ source }) => source))];
  const row = (outcome: Outcome) => [
    ...cells(outcome),
    String(sources.indexOf(outcome.source) + 1),
  ];
  return [
    '',
    `## ${group}`,
    '',
    `| ${[...HEADS, 'source'].join(' | ')} |`,
    '|---|--:|--:|--:|--:|---|--:|',
    ...outcomes.map((outcome) => `| ${row(outcome).map(escaped).join(' | ')} |`),
    '',
    ...sources.map((source, i) => `${i + 1}. ${source}`),
  ];
}

/** The same for scripts. */
export function proofDocument(outcomes: readonly Outcome[]) {
  return {
    schema: { name: 'trumpetry-proof', version: 1 },
    program: { ...PROGRAM },
    checks: outcomes.length,
    failed: outcomes.length - held(outcomes),
    by: ways(outcomes),
    rows: outcomes.map(({ ours, difference, ...row }) => ({
      ...row,
      ours: shortened(ours),
      difference: shortened(difference),
    })),
  };
}

function ways(outcomes: readonly Outcome[]): Record<By, number> {
  const count = (by: By) => outcomes.filter((outcome) => outcome.by === by).length;
  return { solver: count('solver'), formula: count('formula'), copy: count('copy') };
}

/** What kind of proof they are. */
function waysText(outcomes: readonly Outcome[]): string {
  const { solver, formula, copy } = ways(outcomes);
  return `${solver} are worked out by the gas-dynamic solver, ${formula} by formulas, ${copy} show no more than that a number or table was copied well; none is a measurement of a running engine.`;
}

function summary(outcomes: readonly Outcome[]): string {
  const [all, good] = [outcomes.length, held(outcomes)];
  return good === all ? `All ${all} checks hold.` : `${all - good} of ${all} checks FAIL.`;
}

const held = (outcomes: readonly Outcome[]) => outcomes.filter(({ holds }) => holds).length;

function cells({ what, published, ours, difference, tolerance, holds }: Outcome): string[] {
  return [
    what,
    typeof published === 'number'
      ? figure(published, 9)
      : published.map((x) => figure(x)).join(' to '),
    figure(ours),
    Math.abs(difference) < 1e-12 ? '0' : difference.toExponential(1),
    typeof published === 'number' ? toleranceText(tolerance) : bandText(tolerance),
    holds ? 'holds' : 'FAILS',
  ];
}

/** A band is kept to, or its ends are rounded by more than shows. */
function bandText(tolerance: Tolerance): string {
  const slack = 'absolute' in tolerance ? tolerance.absolute : tolerance.relative;
  return slack < 1e-6 ? 'within' : `${toleranceText(tolerance)} beyond`;
}

function toleranceText(tolerance: Tolerance): string {
  if ('absolute' in tolerance) return figure(tolerance.absolute, 2);
  const percent = 100 * tolerance.relative;
  return percent < 0.01
    ? `${tolerance.relative.toExponential(0)} of it`
    : `${figure(percent, 2)} %`;
}

/** A figure without idle zeros. */
function figure(x: number, digits = DIGITS): string {
  if (!Number.isFinite(x)) return 'none';
  if (Math.abs(x) < 1e-12) return '0';
  const small = Math.abs(x) < 1e-3;
  return small
    ? x.toExponential(Math.min(digits, DIGITS) - 1)
    : String(Number(x.toPrecision(digits)));
}

const shortened = (x: number) => (Number.isFinite(x) ? Number(x.toPrecision(8)) : null);
const escaped = (text: string) => text.replaceAll('|', '\\|');
const anchor = (group: string) => group.toLowerCase().replaceAll(' ', '-');
