/** What went wrong, as a JSON document, so that a script need not read prose. */
import type { ScenarioIssue } from '../errors.ts';
import { PROGRAM } from '../version.ts';

export interface ErrorDocument {
  schema: { name: string; version: number };
  program: { name: string; version: string };
  error: {
    /** `input`: the file or the command is wrong; `computation`: it was right but failed. */
    kind: 'input' | 'computation';
    message: string;
    /** Of a scenario file: every problem with its place. */
    issues: Omit<ScenarioIssue, 'value'>[];
  };
}

export function errorDocument(
  kind: ErrorDocument['error']['kind'],
  message: string,
  issues: readonly ScenarioIssue[] = [],
): ErrorDocument {
  return {
    schema: { name: 'trumpetry-error', version: 1 },
    program: { ...PROGRAM },
    error: { kind, message, issues: issues.map(({ value: _, ...issue }) => issue) },
  };
}
