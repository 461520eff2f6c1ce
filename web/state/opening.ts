/**
 * Files that the reader opens. One that cannot be read, or is too large to be a scenario, changes nothing:
 * the page keeps what it shows and says what is wrong and where.
 */
import { signal } from '@preact/signals';
import type { ScenarioIssue } from '../../sim/index.ts';
import { setAside } from './kept.ts';
import { open, read, type Source, source } from './scenario.ts';

/** Longest file that is looked into at all [bytes]; the readers of files say the rest. */
export const LONGEST = 1 << 20;

/** A file that was not taken. */
export interface Refused {
  file: string;
  /** What is wrong with it as a whole; empty where issues say it. */
  reason: string;
  issues: readonly ScenarioIssue[];
  /** Its text, to be mended here; absent where it was not read. */
  text?: string;
}

export const refused = signal<Refused | undefined>(undefined);

/** Why a file is not even looked into; empty where it may be. */
export function tooLarge({ size }: Pick<File, 'size'>): string {
  return size > LONGEST ? `it has ${megabytes(size)}, limit ${megabytes(LONGEST)}` : '';
}

const megabytes = (bytes: number) => `${Math.ceil(bytes / (1 << 20))} MB`;

export async function openFile(file: File): Promise<void> {
  const reason = tooLarge(file);
  if (reason) refused.value = { file: file.name, reason, issues: [] };
  else take({ file: file.name, text: await file.text() });
}

/** Takes a scenario where it can be read; what it takes the place of is set aside. */
export function take(next: Source): void {
  const now = read(next);
  if (now.ok) accept(next);
  else refused.value = { file: next.file, reason: '', issues: now.issues, text: next.text };
}

/** Puts the refused text on the page all the same, so that it can be mended. */
export function mendRefused(): void {
  const { file, text } = refused.peek() ?? {};
  if (file !== undefined && text !== undefined) accept({ file, text });
}

function accept(next: Source): void {
  if (next.text !== source.peek().text) setAside();
  refused.value = undefined;
  open(next);
}
