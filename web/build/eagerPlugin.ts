/**
 * Lets the browser compile the plotting library in one go. A function in parentheses is one that runs at once, so
 * it is compiled as it is read, in the background; without them the library's one great function is read
 * there only to find its end, and read again by the page's own thread, which stands still meanwhile.
 */
import type { Plugin } from 'vite';

const LIBRARY = /plotly\.js-dist-min\/plotly\.min\.js$/;

/** The library's function as its build writes it, and with parentheses. */
const OPENS = [
  ', () => {\n"use strict";var Plotly=',
  ', (() => {\n"use strict";var Plotly=',
] as const;
const CLOSES = ['return Plotly;\n}));', 'return Plotly;\n})));'] as const;

export function eagerPlugin(): Plugin {
  return {
    name: 'trumpetry-eager',
    transform: (code, id) =>
      LIBRARY.test(id.split('?')[0]!) ? { code: eager(code), map: null } : undefined,
  };
}

/** @throws Error where the library's build writes its function in another way */
function eager(code: string): string {
  return [OPENS, CLOSES].reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`the plotting library has no one "${from}"`);
    return text.replace(from, to);
  }, code);
}
