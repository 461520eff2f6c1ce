import type { Computer } from '../index.ts';

/** A stream that may be a terminal. */
export type Output = NodeJS.WritableStream & { isTTY?: boolean; columns?: number };

/** Where a command speaks: results on one stream, everything else on the other. */
export interface Terminal {
  /** Whether results are one JSON document instead of text. */
  json: boolean;
  /** Whether nothing but results and errors is told. */
  quiet?: boolean;
  out: Output;
  err: Output;
  /** What computes points; worker threads of its own where it is absent. */
  workers?: Computer;
}

/** Lines of a result; nothing where JSON was asked for. */
export function print(terminal: Terminal, lines: readonly string[]): void {
  if (!terminal.json) terminal.out.write(`${harmless(lines.join('\n'))}\n`);
}

/** The one JSON document; nothing where text was asked for. */
export function printJson(terminal: Terminal, document: unknown): void {
  if (terminal.json) terminal.out.write(harmless(jsonText(document)));
}

/** A remark beside the result. */
export function remark(terminal: Terminal, line: string): void {
  if (!terminal.quiet) complain(terminal, line);
}

/** An error. */
export function complain(terminal: Terminal, line: string): void {
  terminal.err.write(`${harmless(line)}\n`);
}

/** A JSON document as it is printed and as it is written. */
export function jsonText(document: unknown): string {
  return `${JSON.stringify(document)}\n`;
}

/** What commands a terminal or turns the order of what is read, line ends apart. */
const COMMANDS = /(?!\n)\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Titles and names come from files of others: what is no text in them is shown by its number. */
function harmless(text: string): string {
  return text.replace(COMMANDS, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** Room for a line on stdout [characters]; undefined where that is no terminal. */
export function widthOf({ out }: Terminal): number | undefined {
  return out.isTTY && out.columns ? Math.max(NARROWEST, out.columns) : undefined;
}

/** Terminals narrower than this wrap lines themselves. */
const NARROWEST = 40;
