/** The curves of both lengths with the room that the spreads of the inputs leave them. */
import type { Data } from 'plotly.js-cartesian-dist-min';
import { type LengthSpread, USUAL_UNCERTAINTY, uncertaintySentences } from '../../sim/index.ts';
import { millimetres } from '../format.ts';
import { AskControl } from '../parts/AskControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { resultOf } from '../state/asked.ts';
import { doubt } from '../state/doubt.ts';
import { type Picture, picture, type Role } from '../state/picture.ts';
import { bandLabels, bandShapes, baseLayout, type Look, ROLE_LINE, ROLE_NAME } from './look.ts';
import { scored } from './scored.ts';
import type { Column } from './table.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

export const doubtView: View = {
  id: 'doubt',
  question: 'How sure is it, when my figures are not exact?',
  width: 'half',
  height: 400,
  asked: true,
  reading: () =>
    'Many engines are drawn, each input anywhere within its spread: the one in the file, or what the trade can measure. The strips hold nine engines of ten.',
  summary: () => uncertaintySentences(resultOf(doubt)!.study).join(' '),
  ready: () => resultOf(doubt) !== undefined,
  figure: ({ scenario: { target } }, look) => {
    const { name, unit, times } = scored(target);
    const { speeds, baseline, recommended } = resultOf(doubt)!.study;
    const layout = baseLayout(look, 'engine speed [rpm]', `${name} [${unit}]`);
    return {
      data: [
        ...strip('now', baseline, speeds, times, look),
        ...strip('best', recommended, speeds, times, look),
      ],
      layout: withKey(look, {
        ...layout,
        yaxis: { ...layout.yaxis, hoverformat: '.1f' },
        shapes: bandShapes(look, target),
        annotations: bandLabels(look, target),
      }),
    };
  },
  table: ({ scenario: { target } }) => {
    const { speeds, baseline, recommended } = resultOf(doubt)!.study;
    const { name, unit, times } = scored(target);
    const lengths = [
      { role: 'now', spread: baseline },
      { role: 'best', spread: recommended },
    ] as const;
    const columns = lengths.flatMap(({ role, spread }) =>
      FIGURES.map(([, words]): Column => {
        const of = `${ROLE_NAME[role]}, ${millimetres(spread.length)}`;
        return { name: `${name}, ${words}, ${of}`, unit, decimals: times === 1 ? 2 : 1 };
      }),
    );
    return {
      columns: [{ name: 'speed', unit: 'rpm', decimals: 0 }, ...columns],
      rows: speeds.map((speed, j) => [
        speed,
        ...lengths.flatMap(({ spread }) =>
          FIGURES.map(([key]) => times * spread.curve[j]![key].value),
        ),
      ]),
    };
  },
  watch: () => [doubt.state.value],
  Above,
};

const FIGURES = [
  ['mean', 'mean'],
  ['p5', '5 % below'],
  ['p50', 'median'],
  ['p95', '5 % above'],
] as const;

function Above() {
  const found = resultOf(doubt);
  if (found) return <Sentences sentences={uncertaintySentences(found.study)} />;
  const now = picture.value;
  const { samples } = now?.scenario.uncertainty ?? USUAL_UNCERTAINTY;
  const points = 2 * samples * (now?.scenario.speeds.length ?? 0);
  const cost = `At least ${points} points, some minutes of all cores; the page goes on working meanwhile.`;
  const full = now?.study.full !== undefined;
  return <AskControl study={doubt} label="Work out how sure it is" cost={cost} ready={full} />;
}

/** Upper edge, lower edge filled up to it, and the median. */
function strip(
  role: Role,
  { curve, length }: LengthSpread,
  speeds: readonly number[],
  times: number,
  look: Look,
): Partial<Data>[] {
  const color = look.role[role];
  const { dash, width, symbol } = ROLE_LINE[role];
  const line = (key: 'p5' | 'p50' | 'p95') => ({
    type: 'scatter',
    x: speeds,
    y: curve.map((spread) => times * spread[key].value),
  });
  const edge = { mode: 'lines', line: { color, width: 1, dash }, showlegend: false };
  return [
    { ...line('p95'), ...edge, name: '5 % above' },
    { ...line('p5'), ...edge, name: '5 % below', fill: 'tonexty', fillcolor: `${color}33` },
    {
      ...line('p50'),
      mode: 'lines+markers',
      name: `${ROLE_NAME[role]}, ${millimetres(length)}`,
      line: { color, width, dash },
      marker: { color, symbol, size: 6 },
    },
  ] as Partial<Data>[];
}

/** Whether the study has found anything to rank. */
export function ranked(_: Picture): boolean {
  return (resultOf(doubt)?.study.effects.length ?? 0) > 0;
}
