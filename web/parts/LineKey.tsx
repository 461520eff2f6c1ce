/** Which line is which length. */

import { curveName } from '../drawing/lines.ts';
import { ROLE_LINE } from '../look.ts';
import type { Curve } from '../state/picture.ts';

/** Marks as plotly draws them, on a line of 28 by 12. */
const MARKS: Record<string, string> = {
  square: 'M11 3h6v6h-6z',
  circle: 'M10.5 6a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0z',
  diamond: 'M14 2l4 4-4 4-4-4z',
};

export function LineKey({ curves }: { curves: readonly Curve[] }) {
  return (
    <ul class="line-key">
      {curves.map((curve) => {
        const { symbol, width, dash } = ROLE_LINE[curve.role];
        return (
          <li key={curve.role} class={curve.role}>
            <svg viewBox="0 0 28 12" aria-hidden="true">
              <path
                d="M0 6H28"
                stroke-width={width}
                stroke-dasharray={dash === 'dot' ? '2 3' : undefined}
              />
              <path class="dot" d={MARKS[symbol]} />
            </svg>
            {curveName(curve)}
          </li>
        );
      })}
    </ul>
  );
}
