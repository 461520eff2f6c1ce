/** What one plate that is off does, in words, as a table, as a picture and as a document. */
import { expansionAngle } from '../../linkage/expansion.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { rpm } from '../../report/figures.ts';
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { leverNotes } from '../lever.ts';
import { BALANCE_CAUTIONS } from './cautions.ts';
import {
  type BodyEffect,
  type FaultRow,
  OFFSETS,
  type SpreadLoad,
  type SpreadRow,
  type SpreadStudy,
} from './spread.ts';

/** Rod and levers of a linkage [m]. */
export interface Rod {
  spacing: number;
  lever: number;
}

/** Error that is told of first [deg]. */
const TOLD = OFFSETS[1];
/** A head from cold to warm [K]; common practice, no source. */
const WARMING = 70;
const DEGREES = 180 / Math.PI;

const AIR = q.signedShare('air_change', 'air', 'air of that cylinder');
const HOTTER = {
  ...q.TEMPERATURE,
  ...{ key: 'exhaust_hotter_K', head: 'exhaust', name: 'its exhaust over theirs', signed: true },
};
const signed = (value: number) => q.told(AIR, value);
const at = ({ speed, angle }: SpreadLoad) => `${rpm(speed)}, plate at ${q.told(q.PLATE, angle)}`;

export function spreadSentences({ rows, faults, cylinders }: SpreadStudy, rod?: Rod): string[] {
  const known = rows.filter((row) => row.error === TOLD && row.air !== undefined);
  const idle = known.find(({ load }) => load.name === 'idle');
  return [
    `One plate of ${cylinders} that stands ${TOLD} deg wrong changes the air of its cylinder by ` +
      `${known.map(({ load, air }) => `${signed(air!)} at ${load.name} (${at(load)})`).join(', ')}.`,
    idle
      ? `At idle, with the fuel of the others and the mixture right for all together, that cylinder runs at lambda ` +
        `${q.told(q.LAMBDA, idle.lambda!)} and the others at ${q.told(q.LAMBDA, idle.others!)}` +
        `${idle.hotter === undefined ? '' : `, its exhaust ${q.told(HOTTER, idle.hotter)} from theirs`}.`
      : '',
    faultWords(faults),
    rod ? rodWords(rod, cylinders) : '',
  ];
}

/** Each fault at the load where it changes most. */
function faultWords(faults: readonly FaultRow[]): string {
  const names = [...new Set(faults.map(({ fault }) => fault.name))];
  const told = names.flatMap((name) => {
    const known = faults.filter(({ fault, air }) => fault.name === name && air !== undefined);
    if (known.length === 0) return [];
    const most = known.reduce((a, b) => (Math.abs(b.air!) > Math.abs(a.air!) ? b : a));
    return [`${name}: ${signed(most.air!)} of air at ${most.load.name}`];
  });
  return told.length === 0
    ? ''
    : `Other faults of one body where they do most: ${told.join('; ')}.`;
}

/** Bodies linked one after another from the first. */
function rodWords({ spacing, lever }: Rod, cylinders: number): string {
  const far = expansionAngle((cylinders - 1) * spacing, lever, WARMING) * DEGREES;
  return (
    `A steel rod between aluminium bodies: ${WARMING} degrees warmer, the last plate is ${q.told(q.PLATE, far)} off ` +
    'against the first, twice that if the rod stays cold. Balance warm, or link from the middle.'
  );
}

export function spreadTable({ rows }: SpreadStudy): Table {
  const error = { ...q.PLATE, key: 'plate_error_deg', head: 'off by', name: 'off by' };
  return tableOf<SpreadRow>(
    'One plate that is off',
    [...LOAD_COLUMNS, column(error, (row) => row.error), ...EFFECT_COLUMNS],
    rows,
  );
}

export function faultsTable({ faults }: SpreadStudy): Table {
  return tableOf<FaultRow>(
    'One body with a fault',
    [words('fault', 'fault', ({ fault }) => fault.name), ...LOAD_COLUMNS, ...EFFECT_COLUMNS],
    faults,
  );
}

const LOAD_COLUMNS = [
  words<BodyEffect>('load', 'load', ({ load }) => load.name),
  column<BodyEffect>(q.SPEED, ({ load }) => load.speed),
  column<BodyEffect>(q.PLATE, ({ load }) => load.angle),
];
const EFFECT_COLUMNS = [
  column<BodyEffect>(AIR, ({ air }) => air),
  column<BodyEffect>(
    q.signedShare('torque_change', 'torque', 'its torque, fuel following'),
    ({ torque }) => torque,
  ),
  column<BodyEffect>({ ...q.LAMBDA, head: 'its lambda' }, ({ lambda }) => lambda),
  column<BodyEffect>(
    { ...q.LAMBDA, key: 'lambda_of_others', head: 'others' },
    ({ others }) => others,
  ),
  column<BodyEffect>(q.SPREAD_COST, ({ cost }) => cost),
  column<BodyEffect>(HOTTER, ({ hotter }) => hotter),
];

export function spreadPlot({ rows, loads }: SpreadStudy): Plot {
  const error = { ...q.PLATE, name: 'plate off by' };
  const looks: Record<SpreadLoad['name'], PlotLook> = {
    idle: 'cut',
    'part load': 'now',
    'wide open': 'third',
  };
  return {
    id: 'air-over-plate-error',
    caption: 'Air of a cylinder over the error of its plate',
    description:
      'Change of air of one cylinder over the error of its plate at three loads. The figures stand in the table below.',
    ...axes(error, AIR),
    series: loads.map((load) => {
      const own = rows.filter((row) => row.load === load);
      return {
        name: load.name,
        look: looks[load.name],
        xs: [0, ...own.map((row) => row.error)],
        ys: plotted(AIR, [0, ...own.map(({ air }) => air)]),
      };
    }),
  };
}

export const outcomesOf = ({ loads }: SpreadStudy) =>
  loads.flatMap(({ outcomes, faults }) => [...outcomes, ...faults.map(({ outcome }) => outcome)]);

export function spreadDocument(study: SpreadStudy, scenario: Scenario) {
  return {
    ...documentHead('balance-spread', scenario),
    rows: asObjects(spreadTable(study)),
    faults: asObjects(faultsTable(study)),
    audit: auditOf(outcomesOf(study)),
  };
}

export function spreadReport(study: SpreadStudy, scenario: Scenario, rod?: Rod): Report {
  const named = study.loads.map(({ name, outcomes }) => ({ name, outcomes }));
  return {
    about: 'One body that differs',
    scenario,
    answer: [...spreadSentences(study, rod), READ_THEM],
    flags: [...leverNotes(scenario.engine), ...pointCautions(named)],
    sections: [
      { plots: [spreadPlot(study)] },
      { tables: [spreadTable(study), faultsTable(study)], notes: notes(study) },
      { heading: 'Mind', items: BALANCE_CAUTIONS },
    ],
    outcomes: outcomesOf(study),
  };
}

const READ_THEM =
  'Read flow or vacuum body by body and give it by --readings: which screws, which way, how far.';

const WORN =
  'Worn shaft: air past both bearings, of which half lies behind the plate, let through like a drilled hole: the most it can be. ';

const notes = ({ faults }: SpreadStudy): string[] => [
  ...NOTES,
  `${faults.some(({ fault }) => fault.name.includes('shaft')) ? WORN : ''}Bleed screw: the drilling of the file, or 2.5 mm shut, three turns from shut to open. Play, turns and length are common practice, no source.`,
];

const NOTES: readonly string[] = [
  'Air and torque of that cylinder by the solver at three plate angles, its fuel following the air. Lambdas: fuel as for the others, all together at the mixture of the file. Mixture cost: by the torque curve of one published engine.',
  'Idle: the plate at which a cylinder draws the air that a litre of warm stock engine does at idle, 0.95 g/s at 750 rpm (U.S. DOE, Fact 861), the same a cycle at 1000 rpm. Wide open the plate falls short by the error.',
  'Exhaust: mean temperature of the gas that leaves the valve, weighted by flow, each cylinder at its lambda; solved at 0, 0.2 and 0.5 deg, a parabola between. Burn goes by residual gas and not by mixture, so lean cylinders run hotter than said.',
];
