/** A scenario as it was understood, key by key, in one kind of units whatever the file's own. */
import { CYCLE } from '../crankAngle.ts';
import { sweptVolume } from '../cylinder/crank.ts';
import { manifolds } from '../engine/manifolds.ts';
import { behind } from '../firings.ts';
import type { EngineSpecification } from '../specification.ts';
import { convert, DIMENSIONS, type DimensionName } from './dimension.ts';
import type { Leaf } from './key.ts';
import type { Scenario } from './resolve.ts';
import type { ScenarioView } from './schema.ts';
import { type AnyView, ChoicePlace, LeafPlace, ListPlace, Place, TextPlace } from './view.ts';

export interface Fact {
  label: string;
  text: string;
}

export interface FactSection {
  heading: string;
  facts: Fact[];
}

/** Most rows of a table of two columns, and values of a list, that are told one by one. */
const MOST_ROWS = 4;
const MOST_VALUES = 8;

/** Everything that goes into the computation; `scenario` lists the defaults that stand for sections. */
export function factsOf(view: ScenarioView, scenario: Omit<Scenario, 'facts'>): FactSection[] {
  const whole = new Map(scenario.defaultsUsed.map(({ path, value }) => [path, value]));
  return Object.entries(view).flatMap(([name, section]) => {
    if (section instanceof Place) return [];
    const facts = sectionFacts(section as never, '', whole).concat(derived(name, scenario));
    return facts.length > 0 ? [{ heading: capital(words(name)), facts }] : [];
  });
}

/** What follows from several keys and shows a slip in one of them. */
function derived(name: string, { engine, speeds, sweep }: Omit<Scenario, 'facts'>): Fact[] {
  if (name === 'exhaust') return firedInto(engine);
  const { cylinder } = engine;
  const swept = sweptVolume(cylinder) * cylinder.count * 1e6;
  if (name === 'engine')
    return [{ label: 'swept volume', text: `${swept.toFixed(0)} cc together` }];
  const { length } = name === 'speeds' ? speeds : name === 'sweep' ? sweep.lengths : [];
  return length > 0 ? [{ label: 'to compute', text: `${length} of them` }] : [];
}

/** How far apart the cylinders of each tail fire, the last to the first; nothing where the file has them even. */
function firedInto(engine: EngineSpecification): Fact[] {
  if (!engine.firing || !engine.exhaust.tail) return [];
  const tails = manifolds(engine).map((manifold) => {
    const turns = manifold.flat().toSorted((a, b) => a.angle - b.angle);
    const apart = turns.map((one, i) => behind(turns[i + 1] ?? turns[0]!, one) || CYCLE);
    const degrees = apart.map((angle) => Number(angle.toFixed(2))).join(', ');
    return `${turns.map(({ number }) => number).join('-')} ${degrees} deg apart`;
  });
  return [{ label: 'fire into each tail', text: tails.join('; ') }];
}

type Seen = Extract<AnyView, { here: Place }>;

/** A section's own values in one line, or one line each at the top; then what lies below it. */
function sectionFacts({ here, ...keys }: Seen, label: string, whole: Map<string, string>): Fact[] {
  const children = Object.entries(keys) as [string, AnyView][];
  const said = children.flatMap(([name, child]) => {
    const text = child instanceof Place ? valueText(child) : undefined;
    return text === undefined ? [] : [{ label: words(name), text }];
  });
  const line = said.map((one) => `${one.label} ${one.text}`).join(', ');
  const own = label === '' ? said : line === '' ? [] : [{ label, text: line }];
  const below = children.flatMap(([name, child]) => {
    const deeper = `${label} ${words(name)}`.trim();
    return child instanceof Place
      ? rowFacts(child, deeper, whole)
      : sectionFacts(child, deeper, whole);
  });
  const instead = own.length + below.length === 0 ? whole.get(here.path) : undefined;
  return instead ? [{ label: label || words(here.path), text: instead }] : [...own, ...below];
}

/** Rows of a table: one by one, or the reach of each column. */
function rowFacts(list: Place, label: string, whole: Map<string, string>): Fact[] {
  if (!(list instanceof ListPlace) || list.key.row.kind !== 'section') return [];
  const rows = list.rows as unknown as Seen[];
  const columns = Object.keys(list.key.row.keys);
  if (rows.length <= MOST_ROWS || columns.length > 2) {
    return rows.flatMap((row, i) => sectionFacts(row, `${label} ${i + 1}`, whole));
  }
  const reaches = columns.map((name) => {
    const cells = rows.map((row) => row[name]).filter((cell) => cell instanceof LeafPlace);
    return `${words(name)} ${reach(cells)}`;
  });
  return [{ label, text: `${rows.length} rows, ${reaches.join(', ')}` }];
}

/** What stands at a key or was taken there; undefined where there is nothing. */
function valueText(place: Place): string | undefined {
  if (place instanceof LeafPlace) return asWritten(place, leafText(place));
  if (place instanceof ChoicePlace) return place.given ?? place.taken;
  if (place instanceof TextPlace) return place.given;
  if (!(place instanceof ListPlace)) return undefined;
  if (place.key.row.kind === 'text') {
    const rows = place.rows as unknown as TextPlace[];
    return rows.length > 0 ? rows.map(({ given }) => given).join(', ') : undefined;
  }
  if (place.key.row.kind !== 'leaf') return undefined;
  const cells = place.rows as unknown as LeafPlace[];
  if (cells.length === 0) return undefined;
  return cells.length <= MOST_VALUES ? cells.map(leafText).join(', ') : reach(cells);
}

function reach(cells: readonly LeafPlace[]): string {
  const rising = cells.toSorted((a, b) => a.given! - b.given!);
  return `${leafText(rising[0]!)} to ${leafText(rising.at(-1)!)}`;
}

/** The file's own words beside what was understood, where they differ. */
function asWritten({ quantity }: LeafPlace, text: string | undefined): string | undefined {
  return quantity && quantity.text !== text ? `${text} (${quantity.text})` : text;
}

function leafText({ key, quantity, given, taken }: LeafPlace): string | undefined {
  const value = given ?? taken;
  if (value === undefined) return undefined;
  const { spread = 0, gauge = false } = quantity ?? {};
  const half = spread > 0 ? ` +- ${shown(spread, key.dimension, true)}` : '';
  return `${placed(value, key)}${gauge ? ' gauge' : ''}${half}`;
}

/** Crank angles from the nearer dead centre. */
function placed(value: number, { dimension, deadCentres }: Leaf): string {
  if (!deadCentres) return shown(value, dimension);
  const { top, bottom } = deadCentres;
  const [dead, name] =
    Math.abs(value - top) <= Math.abs(value - bottom) ? [top, 'TDC'] : [bottom, 'BDC'];
  return `${shown(Math.abs(value - dead), dimension)} ${value < dead ? 'B' : 'A'}${name}`;
}

/** Units that figures are told in, where they are not those of the program; as a file writes them. */
const UNITS: Partial<Record<DimensionName, string>> = {
  length: 'mm',
  volume: 'cm3',
  pressure: 'mbar',
  temperature: 'degC',
  flow: 'cfm',
  massFlow: 'g/s',
  time: 'ms',
  torque: 'Nm',
  stiffness: 'N/mm',
};

function shown(value: number, dimension: DimensionName, difference = false): string {
  const { inside, units } = DIMENSIONS[dimension];
  const name = difference && dimension === 'temperature' ? 'K' : (UNITS[dimension] ?? inside);
  const to = (units as Record<string, string>)[name] ?? inside;
  const number = inside === '' ? value : convert(value, inside, to);
  return `${Number(number.toPrecision(5))} ${name}`.trim();
}

/** `compressionRatio` -> `compression ratio`. */
const words = (name: string) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
