/**
 * Where the reader is: the place of the page and the tab of the engine's drawer, if that is open. Both stand
 * in the address after `#/`, so that reload keeps them and Back leads to the one before.
 */
import { batch, signal } from '@preact/signals';

/** The workbench itself. */
export const HOME = 'length';

export const TABS = ['begin', 'figures', 'file', 'kept'] as const;
export type Tab = (typeof TABS)[number];

export const place = signal(HOME);
export const drawer = signal<Tab | undefined>(undefined);

const BEGIN = '#/';

/** The address of a place, with the drawer open at a tab or shut. */
export const addressOf = (name: string, tab?: Tab) => `${BEGIN}${name}${tab ? `/${tab}` : ''}`;

export function openDrawer(tab: Tab): void {
  location.hash = addressOf(place.peek(), tab);
}

export function closeDrawer(): void {
  location.hash = addressOf(place.peek());
}

/** Follows the address from now on. */
export function followAddress(): void {
  window.addEventListener('hashchange', readAddress);
  readAddress();
}

function readAddress(): void {
  const { hash } = location;
  if (hash !== '' && !hash.startsWith(BEGIN)) return;
  const [name, tab] = hash.slice(BEGIN.length).split('/');
  batch(() => {
    place.value = name || HOME;
    drawer.value = TABS.find((one) => one === tab);
  });
}
