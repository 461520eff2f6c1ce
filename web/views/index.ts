/** The views of the page, in the order in which a reader asks. */

import type { View } from '../drawing/view.ts';
import { balanceView } from './balance.ts';
import { closingPressureView } from './closingPressure.ts';
import { cycleTraceView } from './cycleTrace.tsx';
import { differenceView } from './difference.ts';
import { doubtView } from './doubt.tsx';
import { efficiencyView } from './efficiency.ts';
import { idleView } from './idle.tsx';
import { injectorCoolingView } from './injectorCooling.ts';
import { injectorEvaporationView } from './injectorEvaporation.ts';
import { injectorPlaceView } from './injectorPlace.tsx';
import { injectorPulsesView } from './injectorPulses.ts';
import { injectorSplitView } from './injectorSplit.ts';
import { injectorStandOffView } from './injectorStandOff.ts';
import { lengthMapView } from './lengthMap.tsx';
import { listenView } from './listen.tsx';
import { loadView } from './load.tsx';
import { measuredRunView } from './measuredRun.tsx';
import { measureNextView } from './measureNext.ts';
import { paretoView } from './pareto.ts';
import { pedalView } from './pedal.tsx';
import { plateSpreadView } from './plateSpread.ts';
import { plenumView } from './plenum.tsx';
import { shelfView } from './shelf.tsx';
import { signalView } from './signal.tsx';
import { signalChoiceView } from './signalChoice.ts';
import { signalRippleView } from './signalRipple.ts';
import { trimsView } from './trims.ts';
import { variedView } from './varied.tsx';
import { waveView } from './wave.tsx';

/** The proof beside the answer. */
export const proof: View = efficiencyView;

export const views: readonly View[] = [
  differenceView,
  paretoView,
  shelfView,
  lengthMapView,
  closingPressureView,
  cycleTraceView,
  waveView,
  doubtView,
  measureNextView,
  variedView,
  injectorPlaceView,
  injectorSplitView,
  injectorCoolingView,
  injectorEvaporationView,
  injectorStandOffView,
  injectorPulsesView,
  measuredRunView,
  loadView,
  listenView,
  pedalView,
  signalView,
  signalRippleView,
  signalChoiceView,
  idleView,
  plateSpreadView,
  balanceView,
  trimsView,
  plenumView,
];
