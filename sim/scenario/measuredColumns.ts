/** Columns of a run off the dyno. */
import { type CsvColumn, columnSet } from './csvColumn.ts';
import { convert } from './dimension.ts';

type Name = 'speed' | 'torque' | 'power' | 'volumetric_efficiency';

export type Column = CsvColumn<Name>;

const COLUMNS: readonly Column[] = [
  column('speed', 'rpm', [50, 30_000], (x) => x),
  column('torque', 'Nm', [0, 5000], (x) => x),
  column('torque', 'lbft', [0, 5000], (x) => convert(x, 'lbf ft', 'N m')),
  column('power', 'kW', [0, 5e6], (x) => 1e3 * x),
  column('power', 'hp', [0, 5e6], (x) => convert(x, 'hp', 'W')),
  // Metric horsepower: 75 kilogram-force metres a second (DIN 66036, from memory).
  column('power', 'PS', [0, 5e6], (x) => convert(75 * x, 'kgf m / s', 'W')),
  column('volumetric_efficiency', '', [0.05, 2.5], (x) => x),
  column('volumetric_efficiency', '%', [0.05, 2.5], (x) => x / 100),
];

function column(
  name: Name,
  unit: string,
  limits: Column['limits'],
  inside: Column['inside'],
): Column {
  return { name, unit, limits, inside };
}

/** Spellings of units, letters, digits and per cent only, lower case. */
const UNIT_NAMES: Record<string, string> = {
  rpm: 'rpm',
  '1min': 'rpm',
  nm: 'Nm',
  lbft: 'lbft',
  lbsft: 'lbft',
  ftlb: 'lbft',
  lbfft: 'lbft',
  ftlbf: 'lbft',
  ftlbs: 'lbft',
  kw: 'kW',
  hp: 'hp',
  bhp: 'hp',
  ps: 'PS',
  '%': '%',
  percent: '%',
};

/** Spellings of names; where there is none, the unit says it. */
const NAMES: Record<Name, readonly string[]> = {
  speed: ['speed', 'enginespeed', 'engine', 'revs', 'n', ''],
  torque: ['torque', 'braketorque', 'enginetorque', 'tq', 'trq', ''],
  power: ['power', 'brakepower', 'enginepower', 'pwr', ''],
  volumetric_efficiency: ['volumetricefficiency', 've'],
};

export const MEASURED_COLUMNS = columnSet(COLUMNS, NAMES, UNIT_NAMES);
