/** What is on sale, what fits, and what a cut gives. */
import type { Data, Layout, Shape } from 'plotly.js-dist-min';
import {
  fits,
  type LengthStudy,
  plotted,
  quantities as q,
  shelfWords,
  tableOf,
  words,
} from '../../sim/index.ts';
import { between } from '../compute/between.ts';
import type { Table } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { told } from '../format.ts';
import { baseLayout, type Look, MARGIN, ROLE_LINE } from '../look.ts';
import { Sentences } from '../parts/Sentences.tsx';
import { type Picture, picture } from '../state/picture.ts';
import { unit } from '../state/scenario.ts';
import { lengthFigure, lengthText } from '../state/unit.ts';

export const shelfView: View = {
  id: 'shelf',
  question: 'What do I buy, and where do I saw?',
  width: 'half',
  height: 360,
  applies: ({ scenario }) => (scenario.fit?.shelf.length ?? 0) > 0,
  reading: ({ scenario: { fit } }) =>
    `Mean over your band against the recommended length. Upright lines are lengths on sale${fit?.longest === undefined ? '' : '; what lies in the shaded ground has no room'}. Above the dashed line a length is good enough, within ${told(q.LOSS, fit?.withinPercent ?? 0)}.`,
  summary: (now) => wordsOf(now),
  ready: ({ study }) => study.full !== undefined,
  figure: (now, look) => {
    const study = now.study.full!;
    const { recommended, weighed } = study;
    const layout = baseLayout(look, q.headed(lengthFigure()), q.headed(q.AGAINST_BEST));
    const curve = {
      type: 'scatter',
      mode: 'lines+markers',
      x: plotted(
        lengthFigure(),
        weighed.map(({ length }) => length),
      ),
      y: plotted(
        q.AGAINST_BEST,
        weighed.map(({ length }) => changeAt(study, length)),
      ),
      line: { color: look.ink, width: 2 },
      marker: { color: look.ink, size: 5 },
      hovertemplate: `%{x} ${unit.value}: %{y:+.2f} %<extra></extra>`,
    };
    const best = {
      type: 'scatter',
      mode: 'markers',
      x: plotted(lengthFigure(), [recommended.length]),
      y: [0],
      marker: { color: look.role.best, symbol: ROLE_LINE.best.symbol, size: 13 },
      hovertemplate: `recommended: %{x} ${unit.value}<extra></extra>`,
    };
    return {
      data: [curve, best] as Partial<Data>[],
      layout: {
        ...layout,
        margin: { ...MARGIN, t: 34 },
        hovermode: 'closest',
        shapes: shelfShapes(now, look),
        annotations: shelfLabels(study, look),
      } as Partial<Layout>,
    };
  },
  table: shelfTable,
  Above: () => {
    const now = picture.value;
    return now?.study.full ? <Sentences sentences={[wordsOf(now)]} /> : null;
  },
};

const wordsOf = ({ study }: Picture) => (study.full ? shelfWords(study.full) : '');

/** Mean over the bands against the recommended length [-]; between lengths computed by the cubic. */
function changeAt({ weighed, decision }: LengthStudy, length: number): number | undefined {
  const known = weighed.filter(({ bandMean }) => Number.isFinite(bandMean));
  const mean = between(
    known.map((one) => one.length),
    known.map((one) => one.bandMean),
    length,
  );
  return mean && mean / decision.bandMean - 1;
}

function shelfShapes({ scenario, study }: Picture, look: Look): Partial<Shape>[] {
  const { shelf, longest, withinPercent } = scenario.fit!;
  const upright = { type: 'line', yref: 'paper', y0: 0, y1: 1 } as const;
  const sold = shelf.map((length): Partial<Shape> => {
    const bought = length === study.full!.shelf?.buy;
    const line = bought
      ? { color: look.role.best, width: 3 }
      : ({ color: look.quiet, width: 1, dash: 'dot' } as const);
    return { ...upright, ...across(length), line };
  });
  const enough: Partial<Shape> = {
    type: 'line',
    xref: 'paper',
    x0: 0,
    x1: 1,
    y0: -withinPercent,
    y1: -withinPercent,
    line: { color: look.ink, width: 1, dash: 'dash' },
  };
  return [...sold, enough, ...noRoom(longest, study.full!, look)];
}

/** Ground beyond the longest that may be fitted, as far as anything is drawn. */
function noRoom(longest: number | undefined, { weighed, fit }: LengthStudy, look: Look) {
  const end = Math.max(...weighed.map(({ length }) => length), ...(fit?.shelf ?? []));
  if (longest === undefined || longest >= end) return [];
  const place = { type: 'rect', yref: 'paper', y0: 0, y1: 1, layer: 'below' } as const;
  const ground: Partial<Shape> = {
    ...place,
    x0: across(longest).x0,
    x1: across(end).x0,
    fillcolor: `${look.price}26`,
    line: { color: look.price, width: 1 },
  };
  return [ground];
}

function shelfLabels({ shelf, recommended, fit }: LengthStudy, look: Look) {
  return (fit?.shelf ?? []).map((length) => {
    const bought = length === shelf?.buy;
    const cut = bought && shelf?.cutTo !== undefined;
    const text = q.shown(lengthFigure(), length);
    return {
      text: bought ? `<b>buy ${text}</b>` : text,
      x: across(length).x0,
      y: 1,
      yref: 'paper',
      yanchor: 'bottom',
      showarrow: false,
      font: { color: bought ? look.role.best : look.quiet, size: 12 },
      ...(cut && { hovertext: `cut to ${lengthText(recommended.length)}` }),
    };
  });
}

/** Both ends of an upright line at a length. */
function across(length: number) {
  const [x] = plotted(lengthFigure(), [length]);
  return { x0: x!, x1: x! };
}

function shelfTable({ study }: Picture): Table {
  const full = study.full!;
  const { fit, shelf, weighed } = full;
  const bought = (length: number) => length === shelf?.buy;
  const computed = (length: number) => weighed.some((one) => one.length === length);
  return tableOf<number>(
    'What is on sale',
    [
      { ...lengthFigure(), name: 'length on sale', of: (length) => length },
      {
        ...q.AGAINST_BEST,
        name: 'as sold, against the recommended length',
        of: (length) => changeAt(full, length),
      },
      words('how_known', 'how known', (length) => (computed(length) ? 'computed' : 'between')),
      words('room', 'room', (length) => (fits(length, fit) ? 'fits' : 'too long as sold')),
      words('advice', 'advice', (length) => (bought(length) ? 'buy' : '')),
      {
        ...lengthFigure(),
        key: 'cut_to_mm',
        name: 'cut to',
        of: (length) => (bought(length) ? shelf?.cutTo : undefined),
      },
      { ...q.LOSS, of: (length) => (bought(length) ? shelf?.missPercent : undefined) },
    ],
    fit?.shelf ?? [],
  );
}
