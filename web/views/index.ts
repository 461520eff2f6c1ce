/** The views of the page, in the order in which a reader asks. */
import { closingPressureView } from './closingPressure.ts';
import { cycleTraceView } from './cycleTrace.tsx';
import { differenceView } from './difference.ts';
import { efficiencyView } from './efficiency.ts';
import { lengthMapView } from './lengthMap.tsx';
import type { View } from './view.ts';
import { waveView } from './wave.tsx';

/** The proof beside the answer. */
export const proof: View = efficiencyView;

export const views: readonly View[] = [
  differenceView,
  lengthMapView,
  closingPressureView,
  cycleTraceView,
  waveView,
];
