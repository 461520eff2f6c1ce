/** Crank angle as the axis of a cycle: dead centres named, valves' open spans drawn. */
import type { Layout } from 'plotly.js-dist-min';
import type { Trace } from '../../sim/index.ts';
import { axis, type Look } from '../look.ts';

export const CYCLE = 720;

export function crankAxis(look: Look): Partial<Layout['xaxis']> {
  return {
    ...axis(look, 'crank angle [deg]'),
    range: [0, CYCLE],
    tickvals: [0, 180, 360, 540, 720],
    ticktext: ['0<br>firing', '180<br>BDC', '360<br>TDC', '540<br>BDC', '720'],
    minor: { tickvals: [90, 270, 450, 630], showgrid: true, gridcolor: look.line },
  };
}

/** The same upwards. */
export function crankAxisUp(look: Look): Partial<Layout['yaxis']> {
  const across = crankAxis(look);
  const ticktext = (across.ticktext as string[]).map((text) => text.replace('<br>', ' '));
  return { ...across, ticktext, ticks: '', ticklabelstandoff: 22, title: { text: '' } } as Partial<
    Layout['yaxis']
  >;
}

/** Spans of the cycle in which a valve is open; one round its end is two, the second without a name. */
function openSpans({ intakeEvents, exhaustEvents }: Trace, look: Look) {
  const valves = [
    { name: 'intake open', ...intakeEvents, color: look.ink, row: 0 },
    { name: 'exhaust open', ...exhaustEvents, color: look.quiet, row: 1 },
  ];
  return valves.flatMap((valve) =>
    valve.open < valve.close
      ? [valve]
      : [
          { ...valve, close: CYCLE },
          { ...valve, open: 0, name: '' },
        ],
  );
}

/** Open spans as bars along the top of the plot, named. */
export function valveBars(trace: Trace, look: Look) {
  const spans = openSpans(trace, look);
  const height = (row: number) => 1.03 + 0.055 * row;
  const shapes: NonNullable<Layout['shapes']> = spans.map(({ open, close, color, row }) => ({
    type: 'line',
    yref: 'paper',
    x0: open,
    x1: close,
    y0: height(row),
    y1: height(row),
    line: { color, width: 4 },
  }));
  const annotations: NonNullable<Layout['annotations']> = spans
    .filter(({ name }) => name !== '')
    .map(({ name, open, row }) => ({
      text: name,
      x: open,
      y: height(row),
      yref: 'paper',
      xanchor: 'right',
      yanchor: 'middle',
      xshift: -6,
      showarrow: false,
      font: { size: 12, color: look.quiet },
    }));
  return { shapes, annotations };
}

/** The same upwards, at the valve's side; each is named where it begins. */
export function valveBarsUp(trace: Trace, look: Look) {
  const spans = openSpans(trace, look);
  const across = (row: number) => -0.012 - 0.018 * row;
  const shapes: NonNullable<Layout['shapes']> = spans.map(({ open, close, color, row }) => {
    const x = across(row);
    const line = { color, width: 4 };
    return { type: 'line', xref: 'paper', x0: x, x1: x, y0: open, y1: close, line };
  });
  const annotations: NonNullable<Layout['annotations']> = spans
    .filter(({ name }) => name !== '')
    .map(({ name, open }) => ({
      text: name.replace('open', 'opens'),
      x: 0,
      y: open,
      xref: 'paper',
      xanchor: 'left',
      yanchor: 'bottom',
      showarrow: false,
      bgcolor: look.paper,
      font: { size: 12, color: look.ink },
    }));
  return { shapes, annotations };
}

/** The moment the intake valve closes, across the whole plot. */
export function closingLevel({ intakeEvents: { close } }: Trace, look: Look) {
  const line = { color: look.quiet, width: 1, dash: 'dot' } as const;
  return { type: 'line', xref: 'paper', x0: 0, x1: 1, y0: close, y1: close, line } as const;
}

/** The moment the intake valve closes, through the whole plot. */
export function closingLine(trace: Trace, look: Look): NonNullable<Layout['shapes']> {
  const { close } = trace.intakeEvents;
  return [
    {
      type: 'line',
      yref: 'paper',
      x0: close,
      x1: close,
      y0: 0,
      y1: 1,
      line: { color: look.quiet, width: 1, dash: 'dot' },
    },
  ];
}
