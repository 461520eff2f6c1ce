/**
 * The figures of the form, read from the scenario's text and written back into it. Only the
 * figure itself is replaced, so that remarks and layout of the file stay as they are.
 */
import { type Document, isScalar, parseDocument } from 'yaml';

/** The figures of a text by their paths; the text is parsed once for all of them. */
export function figuresOf(text: string): (path: string) => string | undefined {
  const document = parsed(text);
  return (path) => {
    const node = document && nodeAt(document, path);
    return node && text.slice(node.from, node.to).replace(/^(["'])(.*)\1$/, '$2');
  };
}

/** The text with another figure at the path; the same text where none stands there. */
export function withFigure(text: string, path: string, figure: string): string {
  const document = parsed(text);
  const node = document && nodeAt(document, path);
  if (!node) return text;
  const plain = /^[\w.][\w .+°%/-]*$/.test(figure) ? figure : JSON.stringify(figure);
  return text.slice(0, node.from) + plain + text.slice(node.to);
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
