/** Light or dark: what the system prefers, unless the reader chose. */
import { computed, effect, signal } from '@preact/signals';
import { type Look, readLook } from '../look.ts';

export type Theme = 'system' | 'light' | 'dark';

const KEY = 'trumpetry-theme';
const dark = matchMedia('(prefers-color-scheme: dark)');
const print = matchMedia('print');

const systemDark = signal(dark.matches);
/** Whether the page is on its way to paper. */
export const printing = signal(print.matches);
dark.addEventListener('change', () => (systemDark.value = dark.matches));
print.addEventListener('change', () => (printing.value = print.matches));

export const theme = signal<Theme>(stored());

/** What is shown; paper is always light. */
const shownTheme = computed<'light' | 'dark'>(() => {
  if (printing.value) return 'light';
  if (theme.value !== 'system') return theme.value;
  return systemDark.value ? 'dark' : 'light';
});

effect(() => {
  document.documentElement.dataset.theme = shownTheme.value;
});

/** Colours of the plots, read again whenever the theme changes. */
export const look = computed<Look>(() => {
  document.documentElement.dataset.theme = shownTheme.value;
  return readLook();
});

export function chooseTheme(next: Theme): void {
  theme.value = next;
  try {
    localStorage.setItem(KEY, next);
  } catch {
    // Storage may be forbidden; the choice then lasts as long as the page.
  }
}

function stored(): Theme {
  try {
    const value = localStorage.getItem(KEY);
    return value === 'light' || value === 'dark' ? value : 'system';
  } catch {
    return 'system';
  }
}
