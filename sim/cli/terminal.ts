import type { Computer } from '../index.ts';

/** A stream that may be a terminal. */
export type Output = NodeJS.WritableStream & { isTTY?: boolean; columns?: number };

/** Where a command speaks: results on one stream, everything else on the other. */
export interface Terminal {
  /** Whether results are one JSON document instead of text. */
  json: boolean;
  out: Output;
  err: Output;
  /** What computes points; worker threads of its own where it is absent. */
  workers?: Computer;
}

/** Lines of a result; nothing where JSON was asked for. */
export function print(terminal: Terminal, lines: readonly string[]): void {
  if (!terminal.json) terminal.out.write(`${lines.join('\n')}\n`);
}

/** The one JSON document; nothing where text was asked for. */
export function printJson(terminal: Terminal, document: unknown): void {
  if (terminal.json) terminal.out.write(jsonText(document));
}

/** A remark beside the result. */
export function remark(terminal: Terminal, line: string): void {
  terminal.err.write(`${line}\n`);
}

/** A JSON document as it is printed and as it is written. */
export function jsonText(document: unknown): string {
  return `${JSON.stringify(document)}\n`;
}

/** Room for a line on stdout [characters]; undefined where that is no terminal. */
export function widthOf({ out }: Terminal): number | undefined {
  return out.isTTY && out.columns ? Math.max(NARROWEST, out.columns) : undefined;
}

/** Terminals narrower than this wrap lines themselves. */
const NARROWEST = 40;
