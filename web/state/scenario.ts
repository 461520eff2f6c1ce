/** The scenario's text, and what it says. The text is the one truth; form controls edit it. */
import { computed, signal } from '@preact/signals';
import {
  readScenario,
  type Scenario,
  ScenarioError,
  type ScenarioIssue,
  scenarioHash,
} from '../../sim/index.ts';
import { demos } from './demos.ts';

export interface Source {
  /** Name of the file, for messages and for saving. */
  file: string;
  text: string;
}

export type Reading =
  | { ok: true; scenario: Scenario; hash: string }
  | { ok: false; issues: readonly ScenarioIssue[] };

export const source = signal<Source>({ file: demos[0]!.file, text: demos[0]!.text });

/** What the text says now, right or wrong. */
export const reading = computed<Reading>(() => read(source.value));

export function read({ file, text }: Source): Reading {
  try {
    const scenario = readScenario(text, file);
    return { ok: true, scenario, hash: scenarioHash(scenario) };
  } catch (error) {
    if (error instanceof ScenarioError) return { ok: false, issues: error.issues };
    throw error;
  }
}

/** Takes another file in place of the present one. */
export function open(next: Source): void {
  source.value = next;
}

/** Takes an edited text of the same file. */
export function edit(text: string): void {
  if (text !== source.value.text) source.value = { ...source.value, text };
}
