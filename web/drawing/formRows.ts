/** The fields of a form: those whose figure the text holds, lists row by row, told by what they are sketched with. */
import type { FigureField } from '../../sim/index.ts';
import { sketchFor, sketchOf } from '../sketches/index.ts';
import type { Sketch } from '../sketches/sketch.ts';
import type { Figures } from '../state/figures.ts';

/** A field with what the text holds. */
export interface Asked extends FigureField {
  figure: string;
}

export function askedOf(fields: readonly FigureField[], figures: Figures): Asked[] {
  return fields
    .map((field, i) => ({ field, list: listOf(field), i }))
    .flatMap(({ field, list, i }, _, all) => {
      if (list === undefined) return [field];
      // The fields of a list stand together: its first field brings all rows.
      if (all[i - 1]?.list === list) return [];
      const columns = fields.filter((one) => listOf(one) === list);
      return Array.from({ length: figures.rows(list) }, (_, row) => rowOf(columns, row)).flat();
    })
    .flatMap((field) => {
      const figure = figures.at(field.path);
      return figure === undefined ? [] : [{ ...field, figure }];
    });
}

/** `target.floors` of `target.floors.*.speed`. */
const listOf = ({ path }: FigureField) => /^(.*?)\.\*/.exec(path)?.[1];

const rowOf = (columns: readonly FigureField[], row: number) =>
  columns.map(({ path, label }) => ({
    path: path.replace('*', String(row)),
    label: row === 0 ? label : `${label}, ${row + 1}`,
  }));

/** Fields one after the other that share a sketch; none where it has a line for none of them. */
export interface Sketched<F> {
  sketch: Sketch | undefined;
  fields: F[];
}

export function bySketch<F extends { path: string }>(fields: readonly F[]): Sketched<F>[] {
  const runs: Sketched<F>[] = [];
  for (const field of fields) {
    const sketch = sketchFor(field.path);
    const last = runs.at(-1);
    if (last && last.sketch === sketch) last.fields.push(field);
    else runs.push({ sketch, fields: [field] });
  }
  return runs.map(({ sketch, fields }) => ({
    sketch: fields.some(({ path }) => sketchOf(path)) ? sketch : undefined,
    fields,
  }));
}

/** A key in words: `intake: throttle, shaft position`. */
export function keyWords(path: string): string {
  const [first = '', ...rest] = path
    .split('.')
    .map((name) =>
      /^\d+$/.test(name)
        ? String(Number(name) + 1)
        : name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
    );
  return rest.length === 0 ? first : `${first}: ${rest.join(', ')}`;
}

/** What a text says besides the figures in groups of their own, by its first name. */
export interface OtherSection {
  name: string;
  fields: Asked[];
  /** Tables, which are written in the file. */
  lists: { path: string; label: string; rows: number }[];
}

/** Lists of more rows than this are tables. */
const FEW = 6;

/** @param known paths of the figures that stand in groups of their own */
export function otherFigures(
  tree: unknown,
  known: ReadonlySet<string>,
  figures: Figures,
): OtherSection[] {
  if (!(tree instanceof Object)) return [];
  return Object.entries(tree).flatMap(([name, node]) => {
    const section: OtherSection = { name, fields: [], lists: [] };
    gather(node, name, known, figures, section);
    return section.fields.length + section.lists.length > 0 ? [section] : [];
  });
}

function gather(
  node: unknown,
  path: string,
  known: ReadonlySet<string>,
  figures: Figures,
  into: OtherSection,
): void {
  if (Array.isArray(node) && (node.length > FEW || !(node[0] instanceof Object))) {
    if (!known.has(`${path}.0`))
      into.lists.push({ path, label: keyWords(path), rows: node.length });
  } else if (node instanceof Object) {
    for (const [name, child] of Object.entries(node))
      gather(child, `${path}.${name}`, known, figures, into);
  } else if (!known.has(path) && !path.startsWith('$')) {
    const figure = figures.at(path);
    if (figure !== undefined) into.fields.push({ path, label: keyWords(path), figure });
  }
}
