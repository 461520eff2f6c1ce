/** Inputs by how much the gain hangs on them. */
import type { Data, Layout } from 'plotly.js-dist-min';
import { inputsTable, plotted, quantities as q } from '../../sim/index.ts';
import type { View } from '../drawing/view.ts';
import { told } from '../format.ts';
import { axis, baseLayout, MARGIN } from '../look.ts';
import { resultOf } from '../state/asked.ts';
import { doubt } from '../state/doubt.ts';
import { ranked } from './doubt.tsx';

/** Bars drawn; the table has all. */
const SHOWN = 8;

export const measureNextView: View = {
  id: 'measure-next',
  question: 'What should I measure next?',
  width: 'half',
  height: 430,
  asked: true,
  applies: ranked,
  reading: () =>
    'Each bar is one input’s share of what the gain is uncertain by. Measuring the uppermost better narrows the gain most. Beside it stands how far the gain moves over half the input’s spread.',
  summary: () =>
    effects()
      .slice(0, SHOWN)
      .map(({ input, share }) => `${input}: ${q.told(q.SHARE_OF_VARIANCE, share)}`)
      .join(', '),
  ready: ranked,
  figure: (_, look) => {
    const shown = effects().slice(0, SHOWN).reverse();
    const shares = plotted(
      q.SHARE_OF_VARIANCE,
      shown.map(({ share }) => share),
    );
    const bars = {
      type: 'bar',
      orientation: 'h',
      x: shares,
      y: shown.map((_, i) => i),
      width: Math.min(0.3, shown.length / 12),
      marker: { color: look.role.best },
      text: shown.map(({ effect }) => ` ${told(q.GAIN_EFFECT, effect)}`),
      textposition: 'outside',
      textfont: { color: look.ink },
      cliponaxis: false,
      hoverinfo: 'skip',
    } as unknown as Partial<Data>;
    const most = Math.max(...shares);
    const layout = baseLayout(look, 'share of the variance of the gain [%]', '');
    return {
      data: [bars],
      layout: {
        ...layout,
        margin: { ...MARGIN, l: 12, r: 28 },
        hovermode: false,
        xaxis: { ...axis(look, 'share of the variance of the gain [%]'), range: [0, 1.2 * most] },
        yaxis: { ...axis(look, ''), visible: false, range: [-0.5, shown.length - 0.2] },
        annotations: shown.map(({ input }, i) => ({
          text: input,
          x: 0,
          y: i + Math.min(0.18, shown.length / 20),
          xanchor: 'left',
          yanchor: 'bottom',
          showarrow: false,
          font: { color: look.ink },
        })),
      } as Partial<Layout>,
    };
  },
  table: () => inputsTable(resultOf(doubt)!),
  watch: () => [doubt.state.value],
};

const effects = () => resultOf(doubt)?.study.effects ?? [];
