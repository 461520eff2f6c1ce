/** One look for all plots, taken from the page's own colours so that both themes carry over. */
import type { Layout } from 'plotly.js-dist-min';
import { bandsOf, type PlotLook, type Target } from '../sim/index.ts';

/** Whose length a curve shows: fitted now, recommended, or under the reader's hand. */
export type Role = 'now' | 'best' | 'hand';

export interface Look {
  ink: string;
  quiet: string;
  line: string;
  paper: string;
  band: string;
  gain: string;
  price: string;
  role: Record<Role, string>;
  /** Below, at and above the still air. */
  wave: [string, string, string];
  /** Rising values, dark to light or the other way by theme. */
  ramp: string[];
  font: string;
}

/** Reads the look from the style sheet. */
export function readLook(): Look {
  const style = getComputedStyle(document.documentElement);
  const get = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: get('ink'),
    quiet: get('quiet'),
    line: get('line'),
    paper: get('paper'),
    band: get('band'),
    gain: get('gain'),
    price: get('price'),
    role: { now: get('now'), best: get('best'), hand: get('hand') },
    wave: [get('wave-low'), get('wave-still'), get('wave-high')],
    ramp: ['ramp-0', 'ramp-1', 'ramp-2', 'ramp-3', 'ramp-4'].map(get),
    font: get('font'),
  };
}

/** Names of the three lengths, the same everywhere. */
export const ROLE_NAME: Record<Role, string> = {
  now: 'fitted now',
  best: 'recommended',
  hand: 'your length',
};

/** The same lengths in plots of studies. */
export const ROLE_PLOT: Record<Role, PlotLook> = { now: 'now', best: 'cut', hand: 'third' };

/** Lines differ in dash and marker as well as in colour. */
export const ROLE_LINE: Record<Role, { dash: string; width: number; symbol: string }> = {
  now: { dash: 'dot', width: 2, symbol: 'square' },
  best: { dash: 'solid', width: 3, symbol: 'circle' },
  hand: { dash: 'solid', width: 2, symbol: 'diamond' },
};

export const phone = matchMedia('(max-width: 40rem)');

/** Margins are fixed so that things drawn over a plot know where its axes lie [px]. */
export const MARGIN = { l: 56, r: 16, t: 12, b: 48 } as const;

export function baseLayout(look: Look, x: string, y: string): Partial<Layout> {
  return {
    margin: { ...MARGIN },
    paper_bgcolor: 'rgba(0,0,0,0)',
    plot_bgcolor: 'rgba(0,0,0,0)',
    font: { family: look.font, size: 13, color: look.quiet },
    showlegend: false,
    hovermode: 'x unified',
    dragmode: false,
    hoverlabel: { bgcolor: look.paper, bordercolor: look.line, font: { color: look.ink } },
    xaxis: speedAxis(look, x),
    yaxis: axis(look, y),
  };
}

/** An axis of whole numbers. Where they do not fit side by side they are fewer, never aslant: the title stands below them. */
export function speedAxis(look: Look, title: string): Partial<Layout['xaxis']> {
  return { ...axis(look, title), tickformat: 'd', tickangle: 0, nticks: phone.matches ? 4 : 0 };
}

export function axis(look: Look, title: string): Partial<Layout['xaxis']> {
  return {
    title: { text: title, standoff: 10 },
    gridcolor: look.line,
    linecolor: look.line,
    zeroline: false,
    ticks: 'outside',
    tickcolor: look.line,
    ticklen: 4,
    automargin: false,
    fixedrange: true,
    exponentformat: 'none',
    separatethousands: false,
  };
}

/** The bands of the target as shaded strips behind everything. */
export function bandShapes(look: Look, target: Target): NonNullable<Layout['shapes']> {
  return bandsOf(target).map(({ from, to }) => ({
    type: 'rect',
    xref: 'x',
    yref: 'paper',
    x0: from,
    x1: to,
    y0: 0,
    y1: 1,
    fillcolor: look.band,
    line: { width: 0 },
    layer: 'below',
  }));
}

export function bandLabels(look: Look, target: Target): NonNullable<Layout['annotations']> {
  const bands = bandsOf(target);
  return bands.map(({ from, to, weight = 1 }) => ({
    x: (from + to) / 2,
    y: 1,
    xref: 'x',
    yref: 'paper',
    yanchor: 'top',
    text: bands.length === 1 ? 'your band' : `band ×${weight}`,
    showarrow: false,
    font: { color: look.quiet, size: 12 },
  }));
}
