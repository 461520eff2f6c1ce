/** Columns of mixture readings. */
import { type CsvColumn, columnSet } from './csvColumn.ts';

export type LambdaColumnName =
  | 'speed'
  | 'plate'
  | 'cylinder'
  | 'probe'
  | 'visit'
  | 'lambda'
  | 'CO'
  | 'CO2'
  | 'O2'
  | 'HC'
  | 'NO';

type Column = CsvColumn<LambdaColumnName>;

function column(
  name: LambdaColumnName,
  unit: string,
  limits: Column['limits'],
  scale = 1,
  whole = false,
): Column {
  return { name, unit, limits, inside: (x) => scale * x, whole };
}

const [PERCENT, MILLIONTH] = [1e-2, 1e-6];

const COLUMNS: readonly Column[] = [
  column('speed', 'rpm', [50, 30_000]),
  column('plate', 'deg', [0, 90]),
  column('cylinder', '', [1, 16], 1, true),
  column('probe', '', [1, 99], 1, true),
  column('visit', '', [1, 99], 1, true),
  // Beyond these no spark-ignition engine runs on: common practice, no source.
  column('lambda', '', [0.5, 2]),
  column('CO', '%', [0, 0.2], PERCENT),
  column('CO2', '%', [0.01, 0.17], PERCENT),
  column('O2', '%', [0, 0.21], PERCENT),
  column('HC', 'ppm', [0, 0.05], MILLIONTH),
  column('NO', 'ppm', [0, 0.01], MILLIONTH),
];

/** Spellings of units, letters, digits and per cent only, lower case. */
const UNIT_NAMES: Record<string, string> = {
  rpm: 'rpm',
  '1min': 'rpm',
  deg: 'deg',
  '%': '%',
  percent: '%',
  vol: '%',
  '%vol': '%',
  ppm: 'ppm',
};

const NAMES: Record<LambdaColumnName, readonly string[]> = {
  speed: ['speed', 'enginespeed', 'revs', ''],
  plate: ['plate', 'plateangle', 'throttle', 'throttleangle'],
  cylinder: ['cylinder', 'cyl'],
  probe: ['probe', 'sensor'],
  visit: ['visit', 'run'],
  lambda: ['lambda'],
  CO: ['co'],
  CO2: ['co2'],
  O2: ['o2'],
  HC: ['hc'],
  NO: ['no', 'nox'],
};

export const LAMBDA_COLUMNS = columnSet(COLUMNS, NAMES, UNIT_NAMES);
