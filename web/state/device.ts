/** What is kept on this device, in the browser's own storage and nowhere else. */
import { signal } from '@preact/signals';

/** Why nothing can be kept; empty where it can. */
export const keepTrouble = signal('');

const PREFIX = 'trumpetry-';

/** What was kept under a name, as plain data of unknown shape; undefined where there is none. */
export function recall(name: string): unknown {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Keeps plain data under a name. */
export function remember(name: string, value: unknown): void {
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(value));
    keepTrouble.value = '';
  } catch {
    keepTrouble.value =
      'This browser keeps nothing for the page, or has no room left: what you change is gone when you close it. Save the scenario as a file.';
  }
}
