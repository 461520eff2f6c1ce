/** What the command line prints: each a list of lines. */
import type { LengthCurve, LengthStudy } from '../decision/lengthStudy.ts';
import type { Score } from '../decision/target.ts';
import type { Trace } from '../engine/trace.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { isFailure } from '../sweep/runner.ts';
import {
  brief,
  change,
  counted,
  efficiency,
  fixed,
  millimetres,
  NO_FIGURE,
  percent,
  rpm,
  scoreFigure,
  scoreName,
} from './figures.ts';
import { LENGTH_DRAWING, LENGTH_MEANING } from './lengthMeaning.ts';
import { type LengthRow, lengthTable, rowRemark } from './lengthTable.ts';
import { scenarioFacts } from './scenarioFacts.ts';
import { curveSentences, decisionSentences } from './summary.ts';
import { textTable, wrapped } from './textTable.ts';

/** A scenario as it was understood. */
export function checkText(scenario: Scenario): string[] {
  const sections = scenarioFacts(scenario).flatMap(({ heading, facts }) => [
    heading,
    ...facts.map(({ label, text }) => `  ${label.padEnd(15)} ${text}`),
    '',
  ]);
  return [
    scenario.title,
    '',
    ...sections,
    'What the lengths mean',
    ...wrapped(LENGTH_MEANING).map((line) => `  ${line}`),
    '',
    ...LENGTH_DRAWING.split('\n').map((line) => `  ${line}`.trimEnd()),
    '',
    ...doubts(scenario),
    ...defaults(scenario),
    ...warnings(scenario),
  ];
}

/** The decision, then one row a length. */
export function sweepText(study: LengthStudy, scenario: Scenario): string[] {
  return [
    scenario.title,
    '',
    ...decisionSentences(study).flatMap((sentence) => wrapped(sentence, 92, '  ')),
    '',
    LENGTH_MEANING_SHORT,
    '',
    ...lengthRows(lengthTable(study), study.target.score),
    '',
    ...warnings(scenario),
  ];
}

/** One length, one row a speed. */
export function curveText(curve: LengthCurve, scenario: Scenario): string[] {
  const { speeds, target } = scenario;
  return [
    scenario.title,
    '',
    ...curveSentences(curve, speeds, target).flatMap((sentence) => wrapped(sentence, 92, '  ')),
    '',
    ...curveRows(curve),
    '',
    ...warnings(scenario),
  ];
}

/** What a trace holds. */
export function traceText(trace: Trace, length: number, scenario: Scenario): string[] {
  const { point, stations, crankAngle } = trace;
  const span = (values: readonly number[], scale: number, decimals: number) =>
    `${fixed(Math.min(...values) * scale, decimals)} to ${fixed(Math.max(...values) * scale, decimals)}`;
  return [
    scenario.title,
    '',
    `One cycle at ${rpm(point.speed)} with trumpets of ${millimetres(length)}: ${counted(crankAngle.length, 'row')}.`,
    `Volumetric efficiency ${efficiency(point.volumetricEfficiency)}, ${settledText(point.settled, point.cycles)}.`,
    'Velocity and mass flow count positive the way the gas should go.',
    '',
    ...textTable(
      ['station', 'pressure [kPa]', 'velocity [m/s]', 'mass flow [g/s]', 'temperature [K]'],
      stations.map((station) => [
        station.name,
        span(station.pressure, 1e-3, 1),
        span(station.velocity, 1, 0),
        span(station.massFlow, 1e3, 0),
        span(station.temperature, 1, 0),
      ]),
      [0],
    ),
    '',
  ];
}

const LENGTH_MEANING_SHORT =
  'Lengths run from the rim plane of the mouth to the throttle body face, bellmouth included.';

function settledText(settled: boolean, cycles: number): string {
  return settled
    ? `settled after ${counted(cycles, 'cycle')}`
    : `NOT settled after ${counted(cycles, 'cycle')}: no answer yet`;
}

function lengthRows(rows: readonly LengthRow[], score?: Score): string[] {
  return textTable(
    ['length', scoreName(score), 'gain', 'worst loss outside', ''],
    rows.map((row) => [
      millimetres(row.length),
      scoreFigure(row.bandMean, score),
      row.baseline ? NO_FIGURE : change(row.gainPercent),
      row.worstLossSpeed === undefined
        ? NO_FIGURE
        : `${percent(row.worstLossPercent)} at ${rpm(row.worstLossSpeed)}`,
      rowRemark(row),
    ]),
    [4],
  );
}

function curveRows({ outcomes }: LengthCurve): string[] {
  const heads = [
    'speed',
    'VE',
    'p closing',
    'T closing',
    'residual',
    'back flow',
    'torque',
    'cycles',
    '',
  ];
  const units = ['[rpm]', '[-]', '[kPa]', '[K]', '[%]', '[%]', '[Nm]', '', ''];
  const rows = outcomes.map((outcome) =>
    isFailure(outcome)
      ? [brief(outcome.speed, 6), ...new Array<string>(7).fill(NO_FIGURE), 'failed']
      : [
          brief(outcome.speed, 6),
          efficiency(outcome.volumetricEfficiency),
          fixed(outcome.pressureAtClosing / 1e3, 1),
          fixed(outcome.chargeTemperature, 0),
          fixed(100 * outcome.residualFraction, 1),
          fixed(100 * outcome.backflow, 1),
          fixed(outcome.indicatedTorque, 0),
          String(outcome.cycles),
          outcome.settled ? '' : 'not settled',
        ],
  );
  return [
    ...textTable(heads, [units, ...rows], [8]),
    '',
    'VE: volumetric efficiency against ambient air. p, T closing: in the cylinder at intake closing.',
    'Back flow: out of the cylinder into the port. Torque: indicated, before friction; to compare only.',
  ];
}

function defaults({ defaultsUsed }: Scenario): string[] {
  if (defaultsUsed.length === 0) return [];
  const rows = defaultsUsed.map(({ path, value, why }) => [path, value, why]);
  return [
    'Defaults used',
    ...textTable(['key', 'value', 'why'], rows, [0, 1, 2]).map((line) => `  ${line}`),
    '',
  ];
}

function doubts({ spreads }: Scenario): string[] {
  if (spreads.length === 0) return [];
  const names = spreads.map(({ path }) => path).join(', ');
  return [...wrapped(`Given with doubt, computed at the middle: ${names}.`), ''];
}

function warnings({ warnings: list }: Scenario): string[] {
  if (list.length === 0) return [];
  return [
    'Warnings',
    ...list.flatMap(({ path, message }) =>
      wrapped(`${path}: ${message}`, 90, '  ').map((line) => `  ${line}`),
    ),
    '',
  ];
}
