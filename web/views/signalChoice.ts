/** Ripple against lag: hoses, jets and volumes that no other beats. */
import { signalFigures, signalTables } from '../../sim/index.ts';
import { hasBar, sensing } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const signalChoiceView = askedView({
  id: 'signal-choice',
  question: 'Which hoses, jets and bar would do better?',
  width: 'half',
  height: 360,
  study: sensing,
  applies: hasBar,
  reading:
    'Each point is a bar that no other of those tried beats in ripple and lag; left of the line is quick enough. By linear theory, which ranks and does not size.',
  plot: signalFigures.choicePlot,
  table: signalTables.unbeatenTable,
  decimals: 2,
});
