/** Typed errors: data first, words made once. */

/** One thing wrong in a scenario file. */
export interface ScenarioIssue {
  /** Name of the file as the caller gave it. */
  file: string;
  /** Line, counted from 1. */
  line: number;
  /** Column, counted from 1. */
  column: number;
  /** Keys from the root, joined by dots; empty for the file as a whole. */
  path: string;
  /** What the file says there; undefined where nothing stands. */
  value: unknown;
  /** The limit that the value breaks, in words. */
  limit?: string;
  /** What to do about it. */
  remedy: string;
  /** What is wrong, in words. */
  message: string;
}

/** Most issues that the text of an error spells out; all are in its data. */
const MOST_SHOWN = 40;

/** An input file is wrong; carries every issue found, in the order of the file. */
export class ScenarioError extends Error {
  override readonly name = 'ScenarioError';
  readonly issues: readonly ScenarioIssue[];
  /** What kind of file it is, in words. */
  readonly source: string;

  constructor(issues: readonly ScenarioIssue[], source = 'the scenario file') {
    const shown = issues.slice(0, MOST_SHOWN).map(issueText);
    const more = issues.length - shown.length;
    super([...shown, ...(more > 0 ? [`and ${more} more`] : [])].join('\n'));
    this.issues = issues;
    this.source = source;
  }
}

/** One issue as text: place and problem, then limit and remedy on lines of their own. */
export function issueText(issue: ScenarioIssue): string {
  const { file, line, column, path, message, limit, remedy } = issue;
  const head = `${file}:${line}:${column} ${path === '' ? '' : `${path}: `}${message}`;
  const limitLine = limit === undefined ? '' : `\n    limit: ${limit}`;
  return `${head}${limitLine}\n    remedy: ${remedy}`;
}

/** Where and when the gas left physics behind. */
export interface NonPhysicalState {
  /** Duct or cylinder. */
  duct: string;
  /** Cell, counted from 1 at the duct's start, and number of cells. */
  cell: number;
  cells: number;
  /** Density [kg/m^3] and pressure [Pa] found there. */
  density: number;
  pressure: number;
  /** Simulated time [s] and crank angle [deg], where known. */
  time?: number;
  crankAngle?: number;
}

/** A density or pressure that is not positive and finite: the computation has failed. */
export class NonPhysicalStateError extends Error {
  override readonly name = 'NonPhysicalStateError';
  readonly state: NonPhysicalState;

  constructor(state: NonPhysicalState) {
    super(nonPhysicalText(state));
    this.state = state;
  }
}

function nonPhysicalText(state: NonPhysicalState): string {
  const { duct, cell, cells, density, pressure, time, crankAngle } = state;
  const when =
    time === undefined
      ? ''
      : ` at t = ${(time * 1e3).toFixed(3)} ms (crank ${(crankAngle ?? Number.NaN).toFixed(1)} deg)`;
  const what = `density ${density.toPrecision(4)} kg/m3, pressure ${pressure.toPrecision(5)} Pa`;
  return (
    `non-physical state in "${duct}" cell ${cell} of ${cells}${when}: ${what}; ` +
    'lower numerics.courant, refine the mesh, or check the dimensions there'
  );
}

/** The question, not the scenario, is wrong. */
export class InputError extends Error {
  override readonly name = 'InputError';
}

/** The input was right, the computation failed; the message says where. */
export class ComputationError extends Error {
  override readonly name = 'ComputationError';
}
