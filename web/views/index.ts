/**
 * The places of the page beside the workbench, in the order in which a reader asks, each with its views. A
 * new question is one line here: its name in the row of places, and its view or views.
 */

import type { View } from '../drawing/view.ts';
import type { Picture } from '../state/picture.ts';
import { airboxView } from './airbox.tsx';
import { balanceView } from './balance.ts';
import { closingPressureView } from './closingPressure.ts';
import { curvesView } from './curves.tsx';
import { cycleTraceView } from './cycleTrace.tsx';
import { differenceView } from './difference.ts';
import { doubtView } from './doubt.tsx';
import { idleView } from './idle.tsx';
import { idleValveView } from './idleValve.ts';
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
import { meterView } from './meter.tsx';
import { meterFlowView } from './meterFlow.ts';
import { paretoView } from './pareto.ts';
import { pedalView } from './pedal.tsx';
import { plateSpreadView } from './plateSpread.ts';
import { plenumView } from './plenum.tsx';
import { responseView } from './response.tsx';
import { shelfView } from './shelf.tsx';
import { signalView } from './signal.tsx';
import { signalChoiceView } from './signalChoice.ts';
import { signalRippleView } from './signalRipple.ts';
import { trimsView } from './trims.ts';
import { variedTogetherView, variedView } from './varied.tsx';
import { waveView } from './wave.tsx';
import { worthView } from './worth.ts';

/** A place of the page: some questions that belong together. */
export interface Place {
  /** Name in the address. */
  id: string;
  /** Name in the row of places. */
  name: string;
  views: readonly View[];
}

/** The two plots of the workbench. */
export { curvesView, lengthMapView };

const place = (id: string, name: string, ...views: View[]): Place => ({ id, name, views });

export const places: readonly Place[] = [
  place('price', 'Gain and price', differenceView, paretoView, shelfView),
  place('wave', 'Wave', cycleTraceView, waveView, closingPressureView),
  place('doubt', 'How sure', doubtView, measureNextView),
  place('keys', 'Other keys', variedView, variedTogetherView),
  place(
    'injectors',
    'Injectors',
    injectorPlaceView,
    injectorSplitView,
    injectorCoolingView,
    injectorEvaporationView,
    injectorStandOffView,
    injectorPulsesView,
  ),
  place('worth', 'Worth it', worthView),
  place('plenum', 'Plenum', plenumView, airboxView, responseView),
  place('load', 'Part throttle', loadView),
  place('idle', 'Idle', idleView, idleValveView),
  place('balance', 'Balance', plateSpreadView, balanceView, trimsView),
  place(
    'sensor',
    'Sensor',
    meterView,
    meterFlowView,
    signalView,
    signalRippleView,
    signalChoiceView,
  ),
  place('pedal', 'Pedal', pedalView),
  place('sound', 'Sound', listenView),
  place('dyno', 'Dyno run', measuredRunView),
];

/** The views of a place that this scenario poses the question of. */
export const viewsFor = ({ views }: Place, picture: Picture): readonly View[] =>
  views.filter((view) => view.applies?.(picture) ?? true);
