/** Columns of readings off throttle bodies. */
import { type CsvColumn, columnSet } from './csvColumn.ts';
import { convert } from './dimension.ts';

export type BodyColumnName =
  | 'speed'
  | 'plate'
  | 'cylinder'
  | 'gauge'
  | 'visit'
  | 'bleeds'
  | 'flow'
  | 'vacuum';

type Column = CsvColumn<BodyColumnName>;

function column(
  name: BodyColumnName,
  unit: string,
  limits: Column['limits'],
  inside: Column['inside'] = (x) => x,
  whole = false,
): Column {
  return { name, unit, limits, inside, whole };
}

/** Of one body: from what leaks past a shut plate to what the largest draws; common practice, no source. */
const MASS_FLOWS = [1e-5, 1] as const;
const VOLUME_FLOWS = [1e-5, 1] as const;
/** A vacuum that a gauge shows at all, and one beyond which there is no air left [Pa]. */
const VACUUMS = [100, 101_000] as const;

const flow = (unit: string, limits: Column['limits'], from: string, to: string) =>
  column('flow', unit, limits, (x) => convert(x, from, to));
const vacuum = (unit: string, from: string) =>
  column('vacuum', unit, VACUUMS, (x) => convert(x, from, 'Pa'));

const COLUMNS: readonly Column[] = [
  column('speed', 'rpm', [50, 30_000]),
  column('plate', 'deg', [0, 90]),
  column('cylinder', '', [1, 16], undefined, true),
  column('gauge', '', [1, 99], undefined, true),
  column('visit', '', [1, 99], undefined, true),
  column('bleeds', '', [0, 1], undefined, true),
  flow('kg/h', MASS_FLOWS, 'kg/hour', 'kg/s'),
  flow('g/s', MASS_FLOWS, 'g/s', 'kg/s'),
  flow('l/min', VOLUME_FLOWS, 'L/minute', 'm^3/s'),
  flow('m3/h', VOLUME_FLOWS, 'm^3/hour', 'm^3/s'),
  vacuum('kPa', 'kPa'),
  vacuum('mbar', 'mbar'),
  vacuum('mmHg', 'mmHg'),
  vacuum('inHg', 'inHg'),
];

/** Spellings of units, letters, digits and per cent only, lower case. */
const UNIT_NAMES: Record<string, string> = {
  rpm: 'rpm',
  '1min': 'rpm',
  deg: 'deg',
  kgh: 'kg/h',
  kgperh: 'kg/h',
  gs: 'g/s',
  gpers: 'g/s',
  lmin: 'l/min',
  lpermin: 'l/min',
  m3h: 'm3/h',
  m3perh: 'm3/h',
  kpa: 'kPa',
  mbar: 'mbar',
  mmhg: 'mmHg',
  inhg: 'inHg',
};

const NAMES: Record<BodyColumnName, readonly string[]> = {
  speed: ['speed', 'enginespeed', 'revs', ''],
  plate: ['plate', 'plateangle', 'throttle', 'throttleangle'],
  cylinder: ['cylinder', 'cyl', 'body'],
  gauge: ['gauge'],
  visit: ['visit', 'run'],
  bleeds: ['bleeds'],
  flow: ['flow', 'airflow', 'air'],
  vacuum: ['vacuum', 'depression'],
};

export const BODY_COLUMNS = columnSet(COLUMNS, NAMES, UNIT_NAMES);
