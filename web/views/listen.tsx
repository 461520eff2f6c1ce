/** What the intake sounds like, as fitted now and as recommended. */
import {
  listenFigures,
  listenSentences,
  listenTables,
  NOISE_CAUTIONS,
  type Sound,
} from '../../sim/index.ts';
import { lengthIn, rpm } from '../format.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { resultOf } from '../state/asked.ts';
import { listening, playing, toggle } from '../state/listening.ts';
import { askedView } from './asked.tsx';

export const listenView = askedView({
  id: 'listen',
  question: 'What does it sound like?',
  width: 'wide',
  height: 420,
  study: listening,
  applies: () => true,
  reading:
    'Level of the intake alone at full load, half a metre from the mouths, or from the inlet of the box that boosted mouths stand in, in the open over hard ground. The exhaust is not in it. Differences between lengths hold better than levels.',
  sentences: listenSentences,
  plot: listenFigures.levelPlot,
  table: listenTables.speedsTable,
  ask: {
    label: 'Work out the sound',
    cost: () => 'One cycle at every speed for two lengths, about a second of one core each.',
    ready: ({ study }) => study.full !== undefined,
  },
  Below: Playing,
});

/** A button a sound; one scale for all, so that they compare by ear. */
function Playing() {
  const found = resultOf(listening);
  return (
    <>
      {found && (
        <p class="player-row">
          {found.lengths.flatMap(({ length, held, runUp }) => [
            <PlayButton
              key={`held ${length}`}
              name={`${lengthIn(length, found.lengthUnit)} at ${rpm(found.speed)}`}
              sound={held}
              fullScale={found.fullScale}
            />,
            <PlayButton
              key={`run up ${length}`}
              name={`${lengthIn(length, found.lengthUnit)}, run up`}
              sound={runUp}
              fullScale={found.fullScale}
            />,
          ])}
        </p>
      )}
      <details open={found !== undefined}>
        <summary>Before you play it, or stand beside one</summary>
        <Cautions items={NOISE_CAUTIONS} />
      </details>
    </>
  );
}

interface PlayProps {
  name: string;
  sound: Sound | undefined;
  fullScale: number;
}

function PlayButton({ name, sound, fullScale }: PlayProps) {
  if (!sound) return null;
  const now = playing.value === name;
  return (
    <button type="button" aria-pressed={now} onClick={() => toggle(name, sound, fullScale)}>
      {now ? 'Stop' : 'Hear'} {name}
    </button>
  );
}
