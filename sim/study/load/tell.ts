/** A table of load in words: how good it is, what it rests on, what the day does to it. */
import { valuesWanted } from '../../decision/loadGrid.ts';
import { rpm, share } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import { PLATE, RULE_ERROR, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import { isFailure } from '../../sweep/runner.ts';
import { pointCautions } from '../cautions.ts';
import { spreadCautions } from '../cylinders.ts';
import { leverNotes } from '../lever.ts';
import { POINT_NOTES } from '../points.ts';
import { SIZES } from './ask.ts';
import { IDLE_AIR_FLOW, LIMIT, type LoadStudy } from './compute.ts';
import { correctionTables, exponentTables, rulesTable } from './correctionTables.ts';
import { SURE } from './density.ts';
import { loadPlot } from './figure.ts';
import { idleOf } from './idle.ts';
import { signalAt } from './signals.ts';
import {
  airTable,
  cellsTable,
  checksTable,
  fillingTable,
  pulseTable,
  soleInjector,
} from './tables.ts';

/** @param asLine whether the option that asks for a longer table is named, for who types a command */
export function loadSentences(study: LoadStudy, asLine = false): string[] {
  return [
    sizeWords(study),
    lineWords(study, asLine),
    idleWords(study),
    signalWords(study),
    ruleWords(study),
  ];
}

const angle = (degrees: number) => told(PLATE, degrees);

function sizeWords({ angles, speeds }: LoadStudy): string {
  return (
    `Filling at ${counted(angles.length, 'plate angle')} from ${angle(angles[0]!)} to ${angle(angles.at(-1)!)} ` +
    `and ${counted(speeds.length, 'speed')} from ${rpm(speeds[0]!)} to ${rpm(speeds.at(-1)!)}, chosen where the air bends.`
  );
}

function lineWords(study: LoadStudy, asLine: boolean): string {
  const { angles, speeds, angleSteps, speedSteps, checks } = study;
  const worst = (steps: LoadStudy['angleSteps']) =>
    steps.reduce((most, one) => (one.error > most.error ? one : most));
  const [a, s] = [worst(angleSteps), worst(speedSteps)];
  const between = (xs: readonly number[], at: number, words: (x: number) => string) =>
    `between ${words(xs[at]!)} and ${words(xs[at + 1]!)}`;
  const far = checks.reduce((most, { error }) => Math.max(most, Math.abs(error)), 0);
  const held = Math.max(a.error, s.error) <= LIMIT;
  const estimate = held
    ? `Straight lines between rows and columns are estimated to err by at most ${share(LIMIT, 0)} of the air.`
    : `Straight lines are not within ${share(LIMIT, 0)} of the air everywhere: estimated ${share(a.error)} ` +
      `${between(angles, a.at, angle)}, ${share(s.error)} ${between(speeds, s.at, rpm)}. ` +
      sizeWanted(study, asLine);
  return `${estimate}${doubtWords(study)} At the ${counted(checks.length, 'place')} where lines should be worst they are off by up to ${share(far)}, computed.`;
}

/** Cells that are themselves no surer than lines should be. */
function doubtWords({ density }: LoadStudy): string {
  const cells = density.cells.flat();
  const unsure = cells.filter(({ doubt }) => doubt > SURE);
  if (unsure.length === 0) return '';
  const far = unsure.reduce((most, one) => (one.doubt > most.doubt ? one : most));
  return (
    ` Of ${counted(cells.length, 'cell')} ${unsure.length} are themselves in doubt by ${share(SURE, 0)} or more from mesh and settling, up to ` +
    `${share(far.doubt)} at ${angle(far.angle)} and ${rpm(far.speed)}: no line between them is surer.`
  );
}

/** The table that straight lines would want, where one of that size may be asked for. */
function sizeWanted(study: LoadStudy, asLine: boolean): string {
  const { angles, speeds, angleSteps, speedSteps } = study;
  const wanted = (steps: LoadStudy['angleSteps'], have: number) =>
    Math.min(Math.max(valuesWanted(steps, LIMIT), have), SIZES.most);
  const rows = wanted(angleSteps, angles.length);
  const columns = wanted(speedSteps, Math.max(speeds.length, study.speedsWanted));
  const option = asLine ? ` (--most ${rows}x${columns})` : '';
  return `For that a table wants at least ${rows} angles by ${columns} speeds${option}.`;
}

/** Where each reading tells load, at the lowest, middle and highest speed. */
function signalWords(study: LoadStudy): string {
  const { angles, speeds } = study;
  const stretch = (j: number, reading: 'pressure' | 'angle') => {
    const seen = angles.filter((_, i) => {
      const tells = signalAt(study, i, j)?.tells;
      return tells === reading || tells === 'both';
    });
    return seen.length === 0 ? 'nowhere' : `from ${angle(seen[0]!)} to ${angle(seen.at(-1)!)}`;
  };
  const words = [0, speeds.length >> 1, speeds.length - 1].map(
    (j) =>
      `at ${rpm(speeds[j]!)} the pressure behind the plate ${stretch(j, 'pressure')}, the angle ${stretch(j, 'angle')}`,
  );
  return `What tells load, 1 % of air being more than a step of its sensor: ${words.join('; ')}.`;
}

/** What the engine idles on by computed torque and friction. */
function idleWords(study: LoadStudy): string {
  const { speeds } = study;
  const idle = idleOf(study);
  const { low, high } = IDLE_AIR_FLOW;
  const fact = `warm engines idle on ${low} to ${high} at 650 to 900 rpm (U.S. DOE Fact #861, 2015)`;
  if (!idle) {
    return `At ${rpm(speeds[0]!)} no plate of the table has torque and friction in balance; ${fact}.`;
  }
  return (
    `At ${rpm(speeds[0]!)} torque and friction balance with the plate at ${angle(idle.angle)} and ` +
    `${idle.flow.toFixed(2)} g/s of air a litre; ${fact}.`
  );
}

function ruleWords({ density: { rules, cells } }: LoadStudy): string {
  const [best] = rules;
  if (!best) return '';
  const { at, day, worst, name } = best;
  const exponents = `p^${best.pressure.toFixed(2)} T^-${best.temperature.toFixed(2)}`;
  return (
    `For another day's air the best single rule is ${name === 'mean exponents' ? `${exponents} (mean of the cells)` : name}: off by ` +
    `${told(RULE_ERROR, worst)} at worst, at ${angle(at.angle)} and ${rpm(at.speed)} for ${day.name}.${betweenWords(cells)}`
  );
}

function betweenWords(cells: LoadStudy['density']['cells']): string {
  const rows = cells.filter((row) => !row.some(({ between }) => between)).length;
  if (rows === cells.length) return '';
  return ` Exponents are computed in ${rows} of ${cells.length} rows, between them by straight lines.`;
}

const NOTES: readonly string[] = [
  'a and b of air as p^a T^-b: from settled cells on with a tenth less pressure, and with air 20 K warmer, on cells of twice the length; "between": straight between the rows above and below.',
  'Told by: pressure where 1 % of air moves the mean pressure behind the plate by more than 0.1 kPa, angle where it moves the plate by more than a ten-bit step of 0.09 deg; common practice, no source.',
  ...POINT_NOTES,
];

export const LOAD_CAUTIONS: readonly string[] = [
  'A computed table is a place to start from. Set fuel and spark on a dyno with a probe in the exhaust, from rich to lean; a lean cylinder at load burns pistons and valves within seconds.',
  'Near the stop the air hangs on the gap round the plate, on bleeds and on how plates stand to one another; nothing there is known to 1 %. Balance the bodies first.',
  'Torque at small openings has 50 % burned where full load has it, so spark as early as burn in so much residual gas wants; with less advance it is lower.',
];

function unsettled({ outcomes }: LoadStudy): string[] {
  const points = outcomes.flat();
  const restless = points.filter((one) => !isFailure(one) && !one.settled).length;
  if (restless === 0) return [];
  return [
    `${counted(restless, 'cell')} of ${points.length} did not settle: small charges swing from cycle to cycle by some per cent. ` +
      'They are marked in the table.',
  ];
}

export function loadReport(study: LoadStudy): Report {
  const { scenario } = study.question;
  const pulses = pulseTable(study);
  const failed = study.outcomes.map((row, i) => ({
    name: angle(study.angles[i]!),
    outcomes: row.filter(isFailure),
  }));
  return {
    about: 'Load',
    scenario,
    answer: loadSentences(study, true),
    flags: [
      ...leverNotes(scenario.engine),
      ...unsettled(study),
      ...pointCautions(failed),
      ...spreadCautions(study.outcomes.flat()),
    ],
    sections: [
      { plots: [loadPlot(study)] },
      { tables: [fillingTable(study)] },
      { tables: [airTable(study), ...(pulses ? [pulses] : [])], notes: injectorNotes(study) },
      {
        tables: [
          checksTable(study),
          ...exponentTables(study),
          rulesTable(study),
          ...correctionTables(study),
        ],
      },
      { tables: [cellsTable(study)], notes: NOTES, only: 'html' },
      { heading: 'Mind', items: LOAD_CAUTIONS },
    ],
    outcomes: study.outcomes.flat(),
  };
}

function injectorNotes(study: LoadStudy): string[] {
  if (soleInjector(study)) return [];
  return study.question.scenario.injectors
    ? [
        'No injector times: the file has several injectors a cylinder, and who gives how much is the staging.',
      ]
    : ['No injector times: the file names no injector (injectors, with flow and deadTime).'];
}
