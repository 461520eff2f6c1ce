/** Figures of the core in the page's type. No source: typography. */
import { expect, test } from 'vitest';
import { typeset } from '../../web/format.ts';

const SET: [string, string][] = [
  ['gives +4.8 % +- 0.7 % and', 'gives +4.8\u00a0%\u00a0±\u00a00.7\u00a0% and'],
  ['(0.8 % over +-50 rpm)', '(0.8\u00a0% over\u00a0±50\u00a0rpm)'],
  ['10 cm3 at -10 degC', '10\u00a0cm³ at \u221210\u00a0°C'],
  ['a.yaml-2 of cm30', 'a.yaml-2 of cm30'],
];

test.each(SET)('%s', (told, set) => {
  expect(typeset(told)).toBe(set);
  // Known from now on, and the same.
  expect(typeset(told)).toBe(set);
});
