/**
 * YAML text as plain data with the place of every value. What a scenario needs is taken and no
 * more: one document, no aliases, no tags, bounded size and depth.
 */
import {
  Composer,
  type CST,
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Pair,
  Parser,
  visit,
  type YAMLMap,
} from 'yaml';
import { ScenarioError, type ScenarioIssue } from '../errors.ts';

/** Longest file that is read [characters]. */
export const LONGEST_TEXT = 1 << 18;

/** Deepest nesting that is read. */
export const DEEPEST = 20;

/** Most keys and values that are read; two full lift tables and every list take half of it. */
export const MOST_TOKENS = 10_000;

export interface YamlSource {
  file: string;
  tree: unknown;
  /** Line and column, counted from 1, of what stands at the path; of its nearest parent if none does. */
  place(path: readonly PropertyKey[]): Place;
  /** Line and column of the key that ends the path. */
  placeOfKey(path: readonly PropertyKey[]): Place;
}

export interface Place {
  line: number;
  column: number;
}

type PlaceAt = (offset: number) => Place;

/**
 * Reads YAML.
 *
 * @throws ScenarioError where the text is no single plain YAML document within the bounds
 */
export function yamlSource(text: string, file: string): YamlSource {
  const fail: Fail = (message, remedy, limit, place = { line: 1, column: 1 }) =>
    new ScenarioError([
      { file, ...place, path: '', value: undefined, message, remedy, ...(limit && { limit }) },
    ]);
  if (text.length > LONGEST_TEXT) {
    const limit = `at most ${LONGEST_TEXT} characters`;
    throw fail(`the file has ${text.length} characters`, 'is this a scenario file?', limit);
  }
  const lines = new LineCounter();
  const placeAt: PlaceAt = (offset) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  checkBounds(tokens, fail, placeAt);
  const documents = [...new Composer({ stringKeys: true }).compose(tokens, true, text.length)];
  const issues = documents.flatMap((one) => grammarIssues(one, file, placeAt));
  if (issues.length > 0) throw new ScenarioError(issues);
  const document = documents[0]!;
  return {
    file,
    tree: plainTree(documents, fail, placeAt),
    place: (path) => placeAt(offsetOf(document, path, 'value')),
    placeOfKey: (path) => placeAt(offsetOf(document, path, 'key')),
  };
}

type Fail = (message: string, remedy: string, limit?: string, place?: Place) => ScenarioError;

/** Bounds that must hold before anything recursive or quadratic sees the text. */
function checkBounds(tokens: readonly CST.Token[], fail: Fail, placeAt: PlaceAt): void {
  const { tooDeep, count } = survey(tokens);
  if (tooDeep !== undefined) {
    const remedy = 'a scenario needs no more than six; check indentation and brackets';
    const limit = `at most ${DEEPEST} levels`;
    throw fail('the file is nested too deeply', remedy, limit, placeAt(tooDeep));
  }
  if (count > MOST_TOKENS) {
    const limit = `at most ${MOST_TOKENS}`;
    throw fail(`the file has ${count} keys and values`, 'is this a scenario file?', limit);
  }
}

/** The one document as plain data. */
function plainTree(documents: readonly Document.Parsed[], fail: Fail, placeAt: PlaceAt): unknown {
  const second = documents[1];
  if (second !== undefined) {
    const remedy = 'keep one scenario a file and remove the line ---';
    throw fail('the file holds several documents', remedy, 'one', placeAt(second.range[0]));
  }
  const tree: unknown = documents[0]!.toJS({ maxAliasCount: 0 });
  if (tree === null || typeof tree !== 'object' || Array.isArray(tree)) {
    const found = tree === null ? 'nothing' : Array.isArray(tree) ? 'a list' : 'bare text';
    const remedy = 'begin with title:, then engine:, intake: and so on; copy one from scenarios/';
    throw fail(`the file holds ${found} instead of named sections`, remedy);
  }
  return tree;
}

/** Errors and warnings of the YAML reader, and every alias. */
function grammarIssues(document: Document.Parsed, file: string, placeAt: PlaceAt): ScenarioIssue[] {
  const at = { file, path: '', value: undefined };
  const issues = [...document.errors, ...document.warnings].map((error) => ({
    ...at,
    ...placeAt(error.pos[0]),
    message: grammarMessage(error.code, error.message),
    remedy: REMEDIES[error.code] ?? 'see the demo scenarios for the form of a file',
  }));
  visit(document, {
    Alias: (_, alias) => {
      const message = `*${alias.source} repeats another place of the file`;
      const remedy = 'write the value out; a scenario file takes no aliases';
      issues.push({ ...at, ...placeAt(alias.range?.[0] ?? 0), message, remedy });
    },
  });
  return issues;
}

/** Remedies by the code of the YAML reader. */
const REMEDIES: Record<string, string> = {
  DUPLICATE_KEY: 'keep one of the two lines',
  TAB_AS_INDENT: 'indent with blanks, not with tabs',
  BAD_INDENT: 'indent the keys of one section alike, with blanks',
  MISSING_CHAR: 'write a colon and a blank after each key, and close every bracket and quote',
  MULTILINE_IMPLICIT_KEY: 'write a colon and a blank after each key',
  BLOCK_AS_IMPLICIT_KEY: 'put one key on a line, or quote text that holds a colon',
  TAG_RESOLVE_FAILED: 'remove the tag; a scenario file takes plain values only',
  UNEXPECTED_TOKEN: 'quote text that holds special characters; is this a text file?',
};

function grammarMessage(code: string, message: string): string {
  if (code === 'DUPLICATE_KEY') return 'the same key stands here twice in one section';
  return message.split('\n')[0]!.replace(/ at line \d+, column \d+:?$/, '');
}

/** Counts tokens, and finds one beyond the depth allowed. Walks without recursion. */
function survey(tokens: readonly CST.Token[]): { tooDeep?: number; count: number } {
  const open = tokens.map((token) => ({ token, depth: 0 }));
  let count = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { token, depth } = next;
    if (depth > DEEPEST) return { tooDeep: token.offset, count };
    count++;
    for (const child of childrenOf(token)) open.push({ token: child, depth: depth + 1 });
  }
  return { count };
}

/** Values and keys below a token; a document does not count as a level. */
function childrenOf(token: CST.Token): CST.Token[] {
  if (token.type === 'document') return token.value ? [token.value] : [];
  if (!('items' in token)) return [];
  return token.items.flatMap((item) => [item.key, item.value].filter((child) => child != null));
}

/** Where the deepest existing part of the path stands. */
function offsetOf(
  document: Document.Parsed,
  path: readonly PropertyKey[],
  wanted: 'key' | 'value',
): number {
  let node: unknown = document.contents;
  let offset = startOf(node) ?? 0;
  for (const [level, step] of path.entries()) {
    const last = level === path.length - 1;
    const pair = isMap(node) ? pairsOf(node).get(String(step)) : undefined;
    const child: unknown = pair ? pair.value : isSeq(node) ? node.items[Number(step)] : undefined;
    const start = pair && (!last || wanted === 'key' || !startOf(child)) ? pair.key : child;
    const found = startOf(start);
    if (found === undefined) return offset;
    offset = found;
    node = child;
  }
  return offset;
}

/** Pairs of a map by the text of their key; made once a map. */
function pairsOf(map: YAMLMap): Map<string, Pair> {
  const known = PAIRS.get(map) ?? new Map(map.items.map((pair) => [keyText(pair), pair]));
  PAIRS.set(map, known);
  return known;
}

const PAIRS = new WeakMap<YAMLMap, Map<string, Pair>>();

const keyText = ({ key }: Pair) => (isScalar(key) ? String(key.value) : '');

function startOf(node: unknown): number | undefined {
  return (node as { range?: [number, number, number] } | null | undefined)?.range?.[0];
}
