/** Plots whose lines are not the three lengths carry a key of their own, above the plot. */
import type { Layout } from 'plotly.js-dist-min';
import { type Look, MARGIN } from '../look.ts';

/** Room that one row of the key takes [px]. */
const ROW = 24;

export function withKey(look: Look, layout: Partial<Layout>, rows = 1): Partial<Layout> {
  return {
    ...layout,
    margin: { ...MARGIN, ...layout.margin, t: MARGIN.t + rows * ROW },
    showlegend: true,
    legend: {
      orientation: 'h',
      x: 0,
      xanchor: 'left',
      y: 1.02,
      yanchor: 'bottom',
      font: { color: look.ink },
      itemclick: false,
      itemdoubleclick: false,
    },
  };
}
