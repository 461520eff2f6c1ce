/** Readings of one cylinder a row, at one or several loads: what every such file has in common. */
import { throttleOf } from '../loss/throttles.ts';
import type { ThrottleSpecification } from '../specification.ts';
import { type ColumnSet, type CsvColumn, cellValue, headOf } from './csvColumn.ts';
import { type CsvFile, checkWidths, type Report } from './csvFile.ts';
import { readQuantity } from './quantity.ts';

/** What a file says in one row, by column, inside the program. */
export interface CylinderRow<Name extends string> {
  line: number;
  values: Partial<Record<Name, number>>;
}

/** A load: speed [rpm], plate angle [deg], which visit of it, and whether bleeds were shut. */
export interface ReadState {
  speed: number;
  angle: number;
  visit: number;
  bleedShut?: boolean;
}

/** Most loads that a file may hold; an afternoon gives a few. */
const MOST_ROWS = 2000;

/**
 * The rows of a table whose columns are known.
 *
 * @param needed columns without which nothing can be said, each with an example of its head
 * @returns undefined where a needed column is missing
 */
export function cylinderRows<Name extends string>(
  file: CsvFile,
  { columnOf, near, spellings, unitless }: ColumnSet<Name>,
  needed: readonly { name: Name; words: string; example: string }[],
  report: Report,
): CylinderRow<Name>[] | undefined {
  const { head, body } = file;
  const known = head.cells.map(columnOf);
  const names = known.map((column) => column?.name);
  for (const [at, name] of names.entries()) {
    if (name === undefined || names.indexOf(name) === at) continue;
    report(head.line, '', `two columns of ${name}`, 'keep one');
  }
  const missing = needed.filter(({ name }) => !names.includes(name));
  for (const { name, words, example } of missing) {
    const unknown = head.cells.filter((_, at) => !known[at]);
    const meant = near(unknown, name);
    const bare = unknown.find((cell) => unitless(cell) === name);
    const remedy = bare
      ? `write its unit into the head, for example "${meant ?? example}"`
      : `name it for example ${example}`;
    report(
      head.line,
      '',
      `no column of ${words}; found: ${head.cells.join(', ')}`,
      meant && !bare ? `did you mean "${meant}"?` : remedy,
      `known: ${spellings.join(', ')}`,
    );
  }
  if (missing.length > 0) return undefined;
  checkWidths(file, report);
  if (body.length > MOST_ROWS) {
    const limit = `at most ${MOST_ROWS}`;
    report(head.line, '', `the file has ${body.length} rows`, 'keep means of readings', limit);
  }
  return body
    .slice(0, MOST_ROWS)
    .map(({ line, cells }) => ({ line, values: valuesOf(known, cells, line, report) }));
}

function valuesOf<Name extends string>(
  known: readonly (CsvColumn<Name> | undefined)[],
  cells: readonly string[],
  line: number,
  report: Report,
): Partial<Record<Name, number>> {
  const values: Partial<Record<Name, number>> = {};
  for (const [at, column] of known.entries()) {
    if (!column) continue;
    const read = cellValue(cells[at] ?? '', column);
    if (typeof read === 'number') values[column.name] = read;
    else report(line, headOf(column), read.problem, read.remedy, read.limit);
  }
  return values;
}

/** What readings of bodies must belong to. */
export interface ReadBodies {
  cylinders: number;
  throttle: Pick<ThrottleSpecification, 'kind' | 'closedAngle'>;
}

/** Rows by the load that they were read at, and their cylinder. */
export interface Loads<Name extends string> {
  states: ReadState[];
  rows: { row: CylinderRow<Name>; state: number; cylinder: number }[];
}

/**
 * Sorts rows into loads; every cylinder stands once in each.
 *
 * @param engine that they must belong to
 */
export function loadsOf<Name extends string>(
  rows: readonly CylinderRow<Name | 'speed' | 'plate' | 'cylinder' | 'visit' | 'bleeds'>[],
  { cylinders, throttle }: ReadBodies,
  report: Report,
): Loads<Name> {
  const states: ReadState[] = [];
  const seen: Map<number, number>[] = [];
  const sorted = rows.flatMap((row) => {
    const { speed = Number.NaN, plate = Number.NaN, cylinder = Number.NaN } = row.values;
    const { visit = 1, bleeds = 1 } = row.values;
    if (!(speed > 0 && plate >= 0 && cylinder > 0)) return [];
    const { closedAngle } = throttle;
    if (plate <= closedAngle) {
      const { noun } = throttleOf(throttle);
      const remedy = `give the angle as the scenario does, 90 deg wide open; this ${noun} seals at ${closedAngle} deg`;
      report(row.line, 'plate_deg', `the ${noun} is shut`, remedy, `more than ${closedAngle} deg`);
      return [];
    }
    if (cylinder > cylinders) {
      const remedy = 'count cylinders from 1; is this the engine of the scenario?';
      report(row.line, 'cylinder', `there is no cylinder ${cylinder}`, remedy, `1 to ${cylinders}`);
      return [];
    }
    const shut = bleeds === 0 && { bleedShut: true };
    const state = placeOf(states, { speed, angle: plate, visit, ...shut });
    seen[state] ??= new Map();
    const earlier = seen[state].get(cylinder);
    if (earlier !== undefined) {
      const remedy = 'keep one, or number what was read twice in a column visit';
      const message = `cylinder ${cylinder} stands twice at this load, first in line ${earlier}`;
      report(row.line, 'cylinder', message, remedy);
    }
    seen[state].set(cylinder, row.line);
    return [{ row: row as CylinderRow<Name>, state, cylinder: cylinder - 1 }];
  });
  const refused = rows.filter(({ line }) => !sorted.some(({ row }) => row.line === line));
  checkWhole(states, seen, { cylinders, refused }, report);
  return { states, rows: sorted };
}

function placeOf(states: ReadState[], state: ReadState): number {
  const key = (one: ReadState) => `${one.speed} ${one.angle} ${one.visit} ${one.bleedShut}`;
  const found = states.findIndex((one) => key(one) === key(state));
  return found >= 0 ? found : states.push(state) - 1;
}

/** A row that was refused may be what a load lacks: that is told once. */
function checkWhole(
  states: readonly ReadState[],
  seen: readonly Map<number, number>[],
  {
    cylinders,
    refused,
  }: { cylinders: number; refused: readonly CylinderRow<'speed' | 'cylinder'>[] },
  report: Report,
): void {
  for (const [j, { speed, angle }] of states.entries()) {
    const mayBe = (cylinder: number, { values }: (typeof refused)[number]) =>
      (values.cylinder ?? cylinder) === cylinder && (values.speed ?? speed) === speed;
    const absent = Array.from({ length: cylinders }, (_, i) => i + 1).filter(
      (cylinder) => !seen[j]!.has(cylinder) && !refused.some((row) => mayBe(cylinder, row)),
    );
    if (absent.length === 0) continue;
    report(
      Math.min(...seen[j]!.values()),
      'cylinder',
      `at ${speed} rpm and ${angle} deg ${seen[j]!.size} of ${cylinders} cylinders were read; ` +
        `missing: ${absent.join(', ')}`,
      'read every cylinder at every load, or take this load out',
      `cylinders 1 to ${cylinders}`,
    );
  }
}

/** Doubts that remarks may state: `# probe: 1 %`. */
export type DoubtKinds<Key extends string> = Record<
  Key,
  { dimension: 'angle' | 'ratio' | 'length'; usual: number; limits: readonly [string, string] }
>;

/** Each doubt as the file states it, or the usual one. */
export function doubtsOf<Key extends string>(
  { remarks }: CsvFile,
  kinds: DoubtKinds<Key>,
  report: Report,
): Record<Key, number> {
  const doubts = Object.fromEntries(
    Object.entries<DoubtKinds<Key>[Key]>(kinds).map(([key, { usual }]) => [key, usual]),
  ) as Record<Key, number>;
  for (const { line, key, text } of remarks) {
    if (!Object.hasOwn(kinds, key)) continue;
    const { dimension, limits } = kinds[key as Key];
    const [read, low, high] = [text, ...limits].map((words) => readQuantity(words, dimension));
    const limit = `${limits[0]} to ${limits[1]}`;
    if ('problem' in read!) report(line, key, read.problem, read.remedy, limit);
    else if (read!.value < amountOf(low) || read!.value > amountOf(high)) {
      report(line, key, `${text} is out of range`, 'keep within the limit', limit);
    } else doubts[key as Key] = read!.value;
  }
  return doubts;
}

function amountOf(read: ReturnType<typeof readQuantity> | undefined): number {
  return read && 'value' in read ? read.value : Number.NaN;
}
