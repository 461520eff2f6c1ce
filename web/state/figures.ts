/**
 * The figures of the form, read from the scenario's text and written back into it. Only the
 * figure itself is replaced, so that remarks and layout of the file stay as they are.
 */
import { type Document, isScalar, isSeq, parseDocument } from 'yaml';

/** The figures of a text; it is parsed once for all of them. */
export interface Figures {
  /** What stands at a path. */
  at(path: string): string | undefined;
  /** How many rows the list at a path has. */
  rows(path: string): number;
  /** All of it as plain data; undefined where it cannot be read. */
  tree: unknown;
}

export function figuresOf(text: string): Figures {
  const document = parsed(text);
  return {
    tree: document?.toJS(),
    at(path) {
      const node = document && nodeAt(document, path);
      return node && unquoted(text.slice(node.from, node.to));
    },
    rows(path) {
      const node = document?.getIn(path.split('.'), true);
      return isSeq(node) ? node.items.length : 0;
    },
  };
}

const unquoted = (text: string) => text.replace(/^(["'])(.*)\1$/, '$2');

/** The text with another figure at the path; the same text where none stands there. */
export function withFigure(text: string, path: string, figure: string): string {
  const document = parsed(text);
  const node = document && nodeAt(document, path);
  if (!node) return text;
  const whole = inUnitOf(figure, unquoted(text.slice(node.from, node.to)));
  const plain = /^[\w.][\w .+°%/-]*$/.test(whole) ? whole : JSON.stringify(whole);
  return text.slice(0, node.from) + plain + text.slice(node.to);
}

/** A bare number takes the unit, and the dead centre, of the figure that it takes the place of. */
function inUnitOf(figure: string, before: string): string {
  if (!/^[+-]?\d+\.?\d*$/.test(figure)) return figure;
  const unit = /^[+-]?[\d./ -]*\d\.?\s*([a-z°%"][^+±]*)/i.exec(before)?.[1]?.trim();
  return unit ? `${figure} ${unit}` : figure;
}

function parsed(text: string): Document.Parsed | undefined {
  const document = parseDocument(text, { logLevel: 'silent' });
  return document.errors.length > 0 ? undefined : document;
}

function nodeAt(document: Document.Parsed, path: string): { from: number; to: number } | undefined {
  const node = document.getIn(path.split('.'), true);
  if (!isScalar(node) || !node.range || node.value === null) return undefined;
  return { from: node.range[0], to: node.range[1] };
}
