/** The curves of both lengths with the room that the spreads of the inputs leave them. */
import { bandsTable, doubtPlot, USUAL_UNCERTAINTY, uncertaintySentences } from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { View } from '../drawing/view.ts';
import { AskControl } from '../parts/AskControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { resultOf } from '../state/asked.ts';
import { doubt } from '../state/doubt.ts';
import { type Picture, picture } from '../state/picture.ts';

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
  figure: ({ scenario }, look) => drawn(doubtPlot(resultOf(doubt)!, scenario.target), look, 3),
  table: () => bandsTable(resultOf(doubt)!.study),
  watch: () => [doubt.state.value],
  Above,
};

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

/** Whether the study has found anything to rank. */
export function ranked(_: Picture): boolean {
  return (resultOf(doubt)?.study.effects.length ?? 0) > 0;
}
