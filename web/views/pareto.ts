/** Gain in the band against price outside it, every length computed; the unbeaten ones joined. */
import type { Data, Layout } from 'plotly.js-dist-min';
import {
  floorWords,
  type LengthStudy,
  lengthsTable,
  quantities as q,
  type WeighedLength,
} from '../../sim/index.ts';
import type { View } from '../drawing/view.ts';
import { withKey } from '../drawing/withKey.ts';
import { told, typeset } from '../format.ts';
import { baseLayout, type Look, ROLE_LINE, ROLE_NAME } from '../look.ts';
import { moveHand } from '../state/hand.ts';
import type { Picture } from '../state/picture.ts';
import { lengthFigure, lengthText } from '../state/unit.ts';

export const paretoView: View = {
  id: 'price-of-gain',
  question: 'Which lengths are worth weighing?',
  width: 'half',
  height: 400,
  reading: (picture) =>
    `Gain in your band upwards, the worst loss outside it to the right. Lengths on the line are beaten by none: no other gives more at no higher price. Choose a point to try its length. ${floorsOf(picture)}`,
  summary: (picture) =>
    `Not beaten: ${studyOf(picture)
      .pareto.map(
        ({ length, gainPercent, worstLossPercent }) =>
          `${lengthText(length)}, ${told(q.GAIN, gainPercent)} for ${told(q.WORST_LOSS, worstLossPercent)}`,
      )
      .join('; ')}.`,
  ready: ({ study }) => study.full !== undefined,
  figure: (picture, look) => {
    const { weighed, pareto, recommended } = studyOf(picture);
    const own = picture.scenario.engine.intake.trumpet.length;
    const beaten = weighed.filter((one) => !pareto.some(({ length }) => length === one.length));
    const at = (wanted: number) => weighed.filter(({ length }) => length === wanted);
    const layout = baseLayout(look, q.headed(q.WORST_LOSS), q.headed(q.GAIN));
    return {
      data: [
        points('beaten', beaten, { color: look.quiet, symbol: 'circle-open', size: 8 }, look),
        {
          ...points('not beaten', pareto, { color: look.ink, symbol: 'circle', size: 7 }, look),
          mode: 'text+lines+markers',
          line: { color: look.ink, width: 1.5 },
        } as Partial<Data>,
        ring('now', at(own), look),
        ring('best', at(recommended.length), look),
      ],
      layout: withKey(
        look,
        {
          ...layout,
          hovermode: 'closest',
          yaxis: { ...layout.yaxis, zeroline: true, zerolinecolor: look.role.now },
          xaxis: { ...layout.xaxis, range: priceRange(weighed), tickformat: '' },
        } as Partial<Layout>,
        2,
      ),
    };
  },
  table: (picture) => lengthsTable(studyOf(picture)),
  onPick: (picture, price, gain) => {
    const near = studyOf(picture).weighed.find(
      (one) => one.worstLossPercent === price && one.gainPercent === gain,
    );
    if (near) moveHand(near.length);
  },
};

/** Every view of the page is drawn only once there is a full answer. */
const studyOf = ({ study }: Picture): LengthStudy => study.full!;

function points(name: string, lengths: readonly WeighedLength[], marker: object, look: Look) {
  return {
    type: 'scatter',
    mode: 'markers+text',
    name,
    x: lengths.map(({ worstLossPercent }) => worstLossPercent),
    y: lengths.map(({ gainPercent }) => gainPercent),
    text: lengths.map(({ length }) => `\u00a0\u00a0\u00a0${q.shown(lengthFigure(), length)}`),
    textposition: 'middle right',
    textfont: { size: 11, color: look.quiet },
    cliponaxis: false,
    marker,
    hovertemplate: lengths.map(
      ({ length, meetsFloors }) =>
        `${lengthText(length)}: %{y:+.1f} % for %{x:.1f} %${meetsFloors ? '' : ', breaks a floor'}<extra></extra>`,
    ),
  } as unknown as Partial<Data>;
}

/** From a little below nothing, so that marks on the axis are whole, with room for the last label. */
function priceRange(weighed: readonly WeighedLength[]): [number, number] {
  const known = weighed.map(({ worstLossPercent }) => worstLossPercent).filter(Number.isFinite);
  const most = Math.max(0.5, ...known);
  return [-0.06 * most, 1.12 * most];
}

/** A mark around the point of a length that has a name. */
function ring(role: 'now' | 'best', lengths: readonly WeighedLength[], look: Look) {
  return {
    type: 'scatter',
    mode: 'markers',
    name: ROLE_NAME[role],
    x: lengths.map(({ worstLossPercent }) => worstLossPercent),
    y: lengths.map(({ gainPercent }) => gainPercent),
    marker: {
      symbol: `${ROLE_LINE[role].symbol}-open`,
      size: 17,
      color: look.role[role],
      line: { color: look.role[role], width: 2.5 },
    },
    hoverinfo: 'skip',
  } as unknown as Partial<Data>;
}

/** How the recommended length stands to the floors; empty where there is none. */
function floorsOf({ study }: Picture): string {
  return typeset((study.full?.decision.floors ?? []).map(floorWords).join(' '));
}
