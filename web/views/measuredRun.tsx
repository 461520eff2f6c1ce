/** A run off the dyno over the prediction. */
import { comparePlot, compareTable, compareWords, type MeasuredStudy } from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { View } from '../drawing/view.ts';
import { MeasuredControl } from '../parts/MeasuredControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { resultOf } from '../state/asked.ts';
import { measured } from '../state/measured.ts';
import { unit } from '../state/scenario.ts';

export const measuredRunView: View = {
  id: 'measured-run',
  question: 'Does my dyno run agree?',
  width: 'wide',
  height: 420,
  asked: true,
  reading: () =>
    'Open a run as CSV: a head line such as speed_rpm,torque_Nm (or power_kW, volumetric_efficiency), one row a speed; the air of the day in lines above it, such as “# temperature: 24 degC”. It is read in this browser and goes nowhere. Shapes are compared, not levels.',
  summary: () => sentencesOf(resultOf(measured)!).join(' '),
  ready: () => resultOf(measured) !== undefined,
  figure: (_, look) => drawn(comparePlot(resultOf(measured)!), look),
  table: () => compareTable(resultOf(measured)!),
  watch: () => [measured.state.value],
  Above: () => {
    const study = resultOf(measured);
    return (
      <>
        <MeasuredControl />
        {study && <Sentences sentences={sentencesOf(study)} />}
      </>
    );
  },
};

function sentencesOf(study: MeasuredStudy): string[] {
  const { answer, peak, air, meaning, leftOut, fit } = compareWords(study, unit.value);
  return [`${answer} ${peak}`, ...fit, air, meaning, leftOut];
}
