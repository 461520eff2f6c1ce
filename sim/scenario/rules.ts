/** What the tree of keys itself asks beyond single values: one way of several, and rows that rise. */
import { type EitherOr, ownKeys, type Section } from './key.ts';
import { below } from './keyPath.ts';
import { type LeafPlace, ListPlace, type Place } from './view.ts';

export function checkRules(places: readonly Place[]): void {
  for (const place of places) {
    if (place.key.kind === 'section' && place.key.rules.length > 0) {
      checkSection(place as Place<Section>);
    }
    if (place instanceof ListPlace) checkRising(place);
  }
}

function checkSection(place: Place<Section>): void {
  if (!(place.data instanceof Object) || Array.isArray(place.data)) return;
  for (const rule of place.key.rules) checkEitherOr(place, rule);
}

/** The first way that is known by a key of its own counts; keys of other ways are too many. */
function checkEitherOr(place: Place<Section>, rule: EitherOr): void {
  const { what, ways, remedy, none } = rule;
  const has = (key: string) => below(place.data, key) !== undefined;
  const begun = ways.findIndex((_, way) => ownKeys(rule, way).some(has));
  const way = begun < 0 ? ways.findIndex((keys) => keys.some(has)) : begun;
  if (way < 0) {
    if (!none) place.problem(`${what} is missing`, remedy);
    return;
  }
  const kept = ways[way]!;
  const others = new Set(ways.flat().filter((key) => has(key) && !kept.includes(key)));
  for (const key of others) place.problemAt(key, `${what} is given twice`, remedy);
  if (others.size > 0) return;
  for (const key of kept.filter((one) => !has(one))) place.problem(`${key} is missing`, remedy);
}

/** A column whose numbers must rise; the first row that does not is reported. */
function checkRising({ key, rows }: ListPlace): void {
  const { rising } = key;
  if (rising === undefined) return;
  const cells = rows.map((row) => (rising === '' ? row : below(row, rising)) as LeafPlace);
  const bad = cells.find((cell, i) => i > 0 && cell.given! <= cells[i - 1]!.given!);
  const what = rising === '' ? 'the value' : rising;
  bad?.problem(`${what} does not rise from row to row`, 'sort the rows and leave none twice');
}
