/** The scenario's text, and what it says. The text is the one truth; form controls edit it. */
import { computed, effect, signal } from '@preact/signals';
import {
  type LengthUnit,
  readScenario,
  type Scenario,
  ScenarioError,
  type ScenarioIssue,
  scenarioHash,
} from '../../sim/index.ts';
import { demos } from './demos.ts';
import { recall, remember } from './device.ts';

export interface Source {
  /** Name of the file, for messages and for saving. */
  file: string;
  text: string;
  /** Opened, chosen or made as a whole: no other letter is to come, so it is answered at once. */
  whole?: true;
}

export type Reading =
  | { ok: true; scenario: Scenario; hash: string }
  | { ok: false; issues: readonly ScenarioIssue[] };

const PRESENT = 'present';

let last: (Source & { reading: Reading }) | undefined;

export const source = signal<Source>(left() ?? { file: demos[0]!.file, text: demos[0]!.text });

/** What the text says now, right or wrong. */
export const reading = computed<Reading>(() => read(source.value));

/** The unit in which the scenario gives the trumpet; that of the last one that could be read. */
export const unit = signal<LengthUnit>('mm');
effect(() => {
  const now = reading.value;
  if (now.ok) unit.value = now.scenario.lengthUnit;
});

/** What a text says; the last one asked about is not read again. */
export function read({ file, text }: Source): Reading {
  if (last?.text !== text || last.file !== file)
    last = { file, text, reading: readAfresh(file, text) };
  return last.reading;
}

function readAfresh(file: string, text: string): Reading {
  try {
    const scenario = readScenario(text, file);
    return { ok: true, scenario, hash: scenarioHash(scenario) };
  } catch (error) {
    if (error instanceof ScenarioError) return { ok: false, issues: error.issues };
    throw error;
  }
}

/** Takes another text in place of the present one. */
export function open({ file, text }: Source): void {
  source.value = { file, text, whole: true };
}

/** Takes an edited text of the same file. */
export function edit(text: string): void {
  const { file, text: present } = source.value;
  if (text !== present) source.value = { file, text };
}

/** Whether the text is that of a demo, word for word. */
export const isDemo = (text: string) => demos.some((demo) => demo.text === text);

/** From now on what is on the page is there again after a reload. */
export function keepPresent(): void {
  effect(() => {
    const { file, text } = source.value;
    remember(PRESENT, { file, text });
  });
}

/** The text that was on the page when it was left. */
function left(): Source | undefined {
  const kept = recall(PRESENT) as Partial<Source> | undefined;
  if (typeof kept?.file !== 'string' || typeof kept.text !== 'string') return undefined;
  return { file: kept.file, text: kept.text };
}
