/** What the foot feels, and whether every plate shuts with any one part gone. */
import {
  PEDAL_CAUTIONS,
  pedalFigures,
  pedalSentences,
  pedalStudyOf,
  pedalTables,
} from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { View } from '../drawing/view.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { type Picture, picture } from '../state/picture.ts';

export const pedalView: View = {
  id: 'pedal',
  question: 'Do the throttles shut whatever breaks, and what does my foot feel?',
  width: 'wide',
  height: 420,
  applies: ({ scenario }) => scenario.pedal !== undefined,
  reading: () =>
    'Force at the pad over its travel, the way out above, the way back below; between them lies the friction of cable, throttles and pedal. Parts are taken off one at a time, on paper: do the same by hand.',
  summary: (now) => pedalSentences(studyOf(now), now.scenario.lengthUnit)[0]!,
  figure: (now, look) =>
    drawn(pedalFigures.effortPlot(studyOf(now), now.scenario.lengthUnit), look),
  table: (now) => pedalTables.effortTable(studyOf(now)),
  Above: () => {
    const now = picture.value;
    return now?.scenario.pedal ? (
      <Sentences sentences={pedalSentences(studyOf(now), now.scenario.lengthUnit)} />
    ) : null;
  },
  Below: () => <Cautions items={PEDAL_CAUTIONS} />,
};

const studyOf = ({ scenario }: Picture) => pedalStudyOf(scenario.pedal!);
