/** Whether an injector above the trumpet pays, from which speed, and with what share. */
import { FUEL_CAUTIONS, injectFigures, injectTables, placementSentences } from '../../sim/index.ts';
import type { View } from '../drawing/view.ts';
import { AskControl } from '../parts/AskControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { hasPlacement, placed, placement } from '../state/placement.ts';
import { placedView } from './injector.ts';

export const injectorPlaceView: View = {
  ...placedView({
    id: 'injector-place',
    question: 'Does an injector above the trumpet pay, and from which speed?',
    height: 480,
    reading:
      'Change of filling at full load against all fuel near the valve, with the trumpets fitted now. Between the level lines a difference is less than the model’s own uncertainty.',
    plot: injectFigures.gainPlot,
    table: injectTables.speedsTable,
    decimals: 2,
  }),
  width: 'wide',
  applies: hasPlacement,
  summary: () => placementSentences(placed()!)[0]!,
  Above: () => {
    const study = placed();
    if (study) return <Sentences sentences={placementSentences(study)} />;
    const cost =
      'Hundreds of points with sprays, some minutes of all cores, one speed after another.';
    return <AskControl study={placement} label="Compare the placements" cost={cost} />;
  },
  Below: Cautions,
};

/** Stands below the plot and before it is asked for: fuel in the open is no matter of computing. */
function Cautions() {
  return (
    <details open={placed() !== undefined}>
      <summary>Before you fit an injector above the trumpets</summary>
      <ul class="cautions">
        {FUEL_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}
