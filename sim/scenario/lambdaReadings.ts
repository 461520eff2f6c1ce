/**
 * Mixture cylinder by cylinder as plain CSV, one row a cylinder and load: lambda as a probe shows it, or the
 * gases of a five-gas bench. What is doubtful of engine and probes beforehand stands in remarks:
 *
 *   # probe: 1 %
 *   speed_rpm,plate_deg,cylinder,lambda
 *   900,9,1,1.043
 *
 * `probe` numbers the probe where it is not the cylinder's own, `visit` what is read twice at one load.
 * csvFile.ts says how such a file may be written.
 */
import type { LambdaReading, LambdaState, MixtureDoubts } from '../decision/mixtureShares.ts';
import { type FuelAtoms, lambdaOfGas } from '../mixture/exhaustGas.ts';
import { headOf } from './csvColumn.ts';
import { type CsvFile, type Report, readCsvFile } from './csvFile.ts';
import {
  type CylinderRow,
  cylinderRows,
  doubtsOf,
  loadsOf,
  type ReadBodies,
} from './cylinderRows.ts';
import { LAMBDA_COLUMNS, type LambdaColumnName } from './lambdaColumns.ts';

export interface LambdaReadings {
  states: LambdaState[];
  readings: LambdaReading[];
  doubts: MixtureDoubts;
  /** Numbers of the probes as the file has them. */
  probes: number[];
  /** Whether lambda was worked out from gases. */
  fromGases: boolean;
}

/** What the readings must belong to. */
export interface ReadEngine extends ReadBodies {
  fuel: FuelAtoms;
}

const KIND = {
  source: 'the readings',
  short: 'readings',
  example: 'speed_rpm,plate_deg,cylinder,lambda',
};

/** One standard deviation each; common practice, no source. */
const DOUBTS = {
  plate: { dimension: 'angle', usual: 0.2, limits: ['0.001 deg', '5 deg'] },
  injector: { dimension: 'ratio', usual: 0.02, limits: ['0.01 %', '30 %'] },
  probe: { dimension: 'ratio', usual: 0.01, limits: ['0.01 %', '20 %'] },
  repeatability: { dimension: 'ratio', usual: 0.005, limits: ['0.01 %', '20 %'] },
} as const;

const NEEDED = [
  { name: 'speed', words: 'speed with its unit', example: 'speed_rpm' },
  { name: 'plate', words: 'plate angle with its unit', example: 'plate_deg' },
  { name: 'cylinder', words: 'cylinder', example: 'cylinder' },
] as const;
const NEEDED_LAMBDA = [{ name: 'lambda', words: 'lambda', example: 'lambda' }] as const;
const NEEDED_GASES = [
  { name: 'CO', words: 'CO with its unit', example: 'CO_percent' },
  { name: 'CO2', words: 'CO2 with its unit', example: 'CO2_percent' },
  { name: 'O2', words: 'O2 with its unit', example: 'O2_percent' },
] as const;

/**
 * Reads mixture readings of an engine.
 *
 * @param name the file's name, for messages
 * @throws ScenarioError with every problem found, in the order of the file
 */
export function readLambdaReadings(text: string, name: string, engine: ReadEngine): LambdaReadings {
  return readCsvFile(text, name, KIND, LAMBDA_COLUMNS, (file, report) =>
    readingsOf(file, engine, report),
  );
}

function readingsOf(file: CsvFile, engine: ReadEngine, report: Report): LambdaReadings | undefined {
  const doubts = doubtsOf(file, DOUBTS, report);
  const fromGases = hasGases(file);
  const needed = [...NEEDED, ...(fromGases ? NEEDED_GASES : NEEDED_LAMBDA)];
  const rows = cylinderRows(file, LAMBDA_COLUMNS, needed, report);
  if (!rows) return undefined;
  const { states, rows: sorted } = loadsOf(rows, engine, report);
  if (rows.length === 0) {
    report(file.head.line, '', 'there are no readings', 'write one row a cylinder and load');
  }
  const readings = sorted.flatMap(({ row, state, cylinder }) => {
    const lambda = lambdaOf(row, fromGases, engine, report);
    if (lambda === undefined) return [];
    return [{ state, cylinder, lambda, probe: row.values.probe ?? cylinder + 1 }];
  });
  const probes = [...new Set(readings.map(({ probe }) => probe))].sort((a, b) => a - b);
  return {
    states,
    readings: readings.map((one) => ({ ...one, probe: probes.indexOf(one.probe) })),
    doubts,
    probes,
    fromGases,
  };
}

/** Gases count where the head names one of them and no lambda. */
function hasGases({ head }: CsvFile): boolean {
  const { columnOf, unitless } = LAMBDA_COLUMNS;
  const names = head.cells.map((cell) => columnOf(cell)?.name ?? unitless(cell));
  return !names.includes('lambda') && NEEDED_GASES.some(({ name }) => names.includes(name));
}

function lambdaOf(
  { line, values }: CylinderRow<LambdaColumnName>,
  fromGases: boolean,
  { fuel }: ReadEngine,
  report: Report,
): number | undefined {
  if (!fromGases) return values.lambda;
  const { CO, CO2, O2, HC = 0, NO = 0 } = values;
  if (CO === undefined || CO2 === undefined || O2 === undefined) return undefined;
  const lambda = lambdaOfGas({ CO, CO2, O2, HC, NO }, fuel);
  const [low, high] = LAMBDA_COLUMNS.limitsOf('lambda');
  if (lambda >= low && lambda <= high) return lambda;
  report(
    line,
    headOf({ name: 'CO2', unit: '%' }),
    `these gases make a lambda of ${lambda.toPrecision(3)}`,
    'was the gas dry, the hose tight, the bench zeroed?',
    `lambda ${low} to ${high}`,
  );
  return undefined;
}
