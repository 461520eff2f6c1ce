/** An engine of the reader's own, begun from the few figures at hand; what is written is kept on this device. */
import { computed, effect, signal } from '@preact/signals';
import { type LengthUnit, type OwnIssue, ownEngine } from '../../sim/index.ts';
import { recall, remember } from './device.ts';
import { take } from './opening.ts';
import { read } from './scenario.ts';

const STORE = 'begun';

/** What the reader wrote, by path; its name under `title`. */
export const written = signal<Readonly<Record<string, string>>>(stored());
effect(() => remember(STORE, written.value));

/** Unit of the lengths that are written without one. */
export const lengths = computed<LengthUnit>(() => (written.value[LENGTHS] === 'in' ? 'in' : 'mm'));
const LENGTHS = 'lengths';

/** Takes lengths in a unit from now on; what is written stays as it is. */
export function chooseLengths(unit: LengthUnit): void {
  written.value = { ...written.peek(), [LENGTHS]: unit };
  troubles.value = [];
}

/** What is wrong with the figures as they were last asked for an answer; of those written since, nothing. */
export const troubles = signal<readonly OwnIssue[]>([]);

export function write(path: string, text: string): void {
  written.value = { ...written.peek(), [path]: text };
  troubles.value = troubles.peek().filter((one) => one.path !== path);
}

/** Makes the scenario and puts it on the page; says whether it could. */
export function begin(): boolean {
  const title = written.peek().title?.trim() || 'My engine';
  const made = ownEngine(title, written.peek(), lengths.peek());
  troubles.value = 'issues' in made ? made.issues : [];
  if ('issues' in made) return false;
  const next = { file: `${fileName(title)}.yaml`, text: made.text };
  const now = read(next);
  troubles.value = now.ok ? [] : now.issues;
  if (now.ok) take(next);
  return now.ok;
}

const fileName = (title: string) =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40) || 'my-engine';

function stored(): Record<string, string> {
  const found = Object.entries(recall(STORE) ?? {});
  return Object.fromEntries(found.filter(([, text]) => typeof text === 'string'));
}
