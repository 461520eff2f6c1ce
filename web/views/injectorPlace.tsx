/** Whether an injector above the trumpet pays, from which speed, and with what share. */
import { FUEL_CAUTIONS, injectFigures, injectTables, placementSentences } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { hasPlacement, placed, placement } from '../state/placement.ts';
import { askedView } from './asked.tsx';

export const injectorPlaceView = askedView({
  id: 'injector-place',
  question: 'Does an injector above the trumpet pay, and from which speed?',
  width: 'wide',
  height: 480,
  study: placement,
  applies: hasPlacement,
  reading:
    'Change of filling at full load against all fuel near the valve, with the trumpets fitted now. Between the level lines a difference is less than the model’s own uncertainty.',
  sentences: placementSentences,
  plot: injectFigures.gainPlot,
  table: injectTables.speedsTable,
  decimals: 2,
  ask: {
    label: 'Compare the placements',
    cost: () =>
      'Hundreds of points with sprays, some minutes of all cores, one speed after another.',
  },
  Below: BeforeFitting,
});

/** Stands below the plot and before it is asked for: fuel in the open is no matter of computing. */
function BeforeFitting() {
  return (
    <details open={placed() !== undefined}>
      <summary>Before you fit an injector above the trumpets</summary>
      <Cautions items={FUEL_CAUTIONS} />
    </details>
  );
}
