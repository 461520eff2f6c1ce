/**
 * Flow at the mouths or vacuum in the ports, body by body, as plain CSV: one row a body and load. What is
 * doubtful beforehand, and what screws do, stands in remarks:
 *
 *   # gauge: 1 %
 *   # lever: 22 mm
 *   # bleedBore: 2.5 mm
 *   speed_rpm,plate_deg,cylinder,vacuum_kPa
 *   1000,9,1,32.1
 *
 * `bleeds` is 0 where all bleeds were screwed shut for the reading, else 1; `gauge` numbers the gauge where one
 * did not read all, `visit` what is read twice at one load. csvFile.ts says
 * how such a file may be written.
 */
import type { BodyFigure, BodyReading } from '../decision/bodyErrors.ts';
import { BODY_COLUMNS } from './bodyColumns.ts';
import { type CsvFile, type Report, readCsvFile } from './csvFile.ts';
import {
  cylinderRows,
  doubtsOf,
  loadsOf,
  type ReadBodies,
  type ReadState,
} from './cylinderRows.ts';

/** What screws are like. */
export interface Screws {
  /** From the shaft to where the stop screw meets its lever [m]. */
  lever: number;
  /** Of the stop screw [m]. */
  pitch: number;
  /** Turns of a bleed screw from shut to wide open [-]. */
  bleedTurns: number;
  /** Bore of the bleeds [m], 0 to take those of the scenario; how far they are open about [0..1]. */
  bleedBore: number;
  bleedOpen: number;
  /** The body whose plate stays as it is, from 1; 0 for none. */
  master: number;
}

export interface BodyReadings {
  figure: BodyFigure;
  states: ReadState[];
  readings: BodyReading[];
  /** Numbers of the gauges as the file has them. */
  gauges: number[];
  /** One standard deviation each: plates [deg], bleeds [of a whole bleed], gauges, a reading [-]. */
  doubts: { plate: number; bleed: number; gauge: number; repeatability: number };
  screws: Screws;
}

const KIND = {
  source: 'the readings',
  short: 'readings',
  example: 'speed_rpm,plate_deg,cylinder,vacuum_kPa',
};

/** One standard deviation each; common practice, no source. */
const DOUBTS = {
  plate: { dimension: 'angle', usual: 0.2, limits: ['0.001 deg', '5 deg'] },
  bleed: { dimension: 'ratio', usual: 0.2, limits: ['1 %', '100 %'] },
  gauge: { dimension: 'ratio', usual: 0.01, limits: ['0.01 %', '20 %'] },
  repeatability: { dimension: 'ratio', usual: 0.01, limits: ['0.01 %', '20 %'] },
} as const;

/** A small body's screws: M4, three turns of a bleed; common practice, no source. */
const SCREWS = {
  lever: { dimension: 'length', usual: 0.02, limits: ['3 mm', '200 mm'] },
  pitch: { dimension: 'length', usual: 0.0007, limits: ['0.2 mm', '3 mm'] },
  bleedTurns: { dimension: 'ratio', usual: 3, limits: ['0.25', '30'] },
  bleedBore: { dimension: 'length', usual: 0, limits: ['0.2 mm', '15 mm'] },
  bleedOpen: { dimension: 'ratio', usual: 0.5, limits: ['0', '1'] },
  master: { dimension: 'ratio', usual: 0, limits: ['1', '16'] },
} as const;

const NEEDED = [
  { name: 'speed', words: 'speed with its unit', example: 'speed_rpm' },
  { name: 'plate', words: 'plate angle with its unit', example: 'plate_deg' },
  { name: 'cylinder', words: 'cylinder', example: 'cylinder' },
] as const;
const NEEDED_FLOW = [
  { name: 'flow', words: 'flow with its unit', example: 'flow_kg_per_h' },
] as const;
const NEEDED_VACUUM = [
  {
    name: 'vacuum',
    words: 'vacuum with its unit, or of flow with its unit',
    example: 'vacuum_kPa',
  },
] as const;

/**
 * Reads the bodies of an engine.
 *
 * @param name the file's name, for messages
 * @throws ScenarioError with every problem found, in the order of the file
 */
export function readBodyReadings(text: string, name: string, engine: ReadBodies): BodyReadings {
  return readCsvFile(text, name, KIND, BODY_COLUMNS, (file, report) =>
    readingsOf(file, engine, report),
  );
}

function readingsOf(file: CsvFile, engine: ReadBodies, report: Report): BodyReadings | undefined {
  const doubts = doubtsOf(file, DOUBTS, report);
  const screws = doubtsOf(file, SCREWS, report);
  checkMaster(file, screws, engine.cylinders, report);
  const figure = figureOf(file, report);
  const needed = [...NEEDED, ...(figure === 'flow' ? NEEDED_FLOW : NEEDED_VACUUM)];
  const rows = cylinderRows(file, BODY_COLUMNS, needed, report);
  if (!rows) return undefined;
  if (rows.length === 0) {
    report(file.head.line, '', 'there are no readings', 'write one row a body and load');
  }
  const { states, rows: sorted } = loadsOf(rows, engine, report);
  const readings = sorted.flatMap(({ row, state, cylinder }) => {
    const value = row.values[figure];
    return value === undefined
      ? []
      : [{ state, body: cylinder, value, gauge: row.values.gauge ?? 1 }];
  });
  const gauges = [...new Set(readings.map(({ gauge }) => gauge))].sort((a, b) => a - b);
  return {
    ...{ figure, states, gauges, doubts, screws },
    readings: readings.map((one) => ({ ...one, gauge: gauges.indexOf(one.gauge) })),
  };
}

function figureOf({ head }: CsvFile, report: Report): BodyFigure {
  const names = head.cells.map((cell) => BODY_COLUMNS.columnOf(cell)?.name);
  const told = names.includes('flow') || names.includes('vacuum');
  if (!told && head.cells.some((cell) => BODY_COLUMNS.unitless(cell) === 'flow')) return 'flow';
  if (names.includes('flow') && names.includes('vacuum')) {
    report(head.line, '', 'both flow and vacuum stand here', 'keep one, or make two files');
  }
  return names.includes('flow') ? 'flow' : 'vacuum';
}

function checkMaster(
  { remarks, head }: CsvFile,
  { master }: Screws,
  cylinders: number,
  report: Report,
): void {
  if (Number.isInteger(master) && master <= cylinders) return;
  const line = remarks.find(({ key }) => key === 'master')?.line ?? head.line;
  const limit = `1 to ${cylinders}`;
  report(line, 'master', `there is no body ${master}`, 'name the body whose stop stays', limit);
}
