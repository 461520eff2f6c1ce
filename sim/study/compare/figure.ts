/** A measured run over the prediction. */
import { axes, type Mark, type Plot, plotted, type Series } from '../../report/plot.ts';
import { headed, SPEED } from '../../report/quantities.ts';
import type { MeasuredStudy } from './compute.ts';
import { comparedQuantity, fitOf } from './tables.ts';

export function comparePlot(study: MeasuredStudy): Plot {
  const { comparison } = study;
  const { speeds, measured, predicted, peaks, figure } = comparison;
  const quantity = comparedQuantity(figure);
  const line = (name: string, look: Series['look'], xs: readonly number[], ys: number[]) => ({
    ...{ name, look, xs },
    ys: plotted(quantity, ys),
  });
  const fitted = fitOf(study)?.comparison;
  const peak = (at: number | undefined, look: Mark['look']): Mark[] =>
    at === undefined ? [] : [{ axis: 'x', at, name: 'peak', look }];
  const caption = `${quantity.name![0]!.toUpperCase()}${quantity.name!.slice(1)} over engine speed`;
  return {
    id: 'measured-run',
    caption,
    description: `${headed(quantity)} over engine speed: measured and predicted. The figures stand in the table below.`,
    ...axes(SPEED, quantity),
    series: [
      line('predicted', 'cut', speeds, predicted),
      line('measured', 'now', speeds, measured),
      ...(fitted ? [line('fitted', 'third', fitted.speeds, fitted.predicted)] : []),
    ],
    marks: [...peak(peaks.measured, 'now'), ...peak(peaks.predicted, 'cut')],
  };
}
