/** Error of the air by each sensor over the plate angle at one speed, and the flow past the meter over a cycle. */
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import type { MeteredPoint, MeterStudy } from './compute.ts';
import { SENSORS, type Sensor, sizeOf } from './errors.ts';
import { ABOVE_STOP, ERRORS, SENSOR_NAMES } from './tables.ts';

const LOOKS: Record<Sensor, PlotLook> = { flow: 'cut', pressure: 'now', angle: 'third' };

/** At the speed at which the meter is worst. */
export function errorsPlot(study: MeterStudy): Plot {
  const { meter } = study;
  const speed = worstOf(study)?.speed ?? meter.speeds[0]!;
  const row = study.points.filter((one) => one.speed === speed);
  const y = { ...ERRORS.flow, name: 'error of the air' };
  const xs = plotted(
    ABOVE_STOP,
    row.map(({ above }) => above),
  );
  const finite = (value: number) => (Number.isFinite(value) ? value : undefined);
  return {
    id: 'meter-errors',
    caption: `Error of the air by each sensor at ${speed} rpm`,
    description: `Error of the air by flow meter, pressure and plate angle over the plate angle at ${speed} rpm.`,
    ...axes(ABOVE_STOP, y),
    series: SENSORS.map((sensor) => ({
      name: SENSOR_NAMES[sensor],
      look: LOOKS[sensor],
      xs,
      ys: plotted(
        y,
        row.map(({ errors }) => errors && finite(sizeOf(errors, sensor))),
      ),
    })),
    marks: [{ axis: 'y', at: plotted(y, [meter.allowed])[0]!, name: 'allowed', look: 'other' }],
  };
}

/** The point at which pulsation leads the meter furthest astray; undefined where every point failed. */
export function worstOf({ points }: MeterStudy): MeteredPoint | undefined {
  const known = points.filter(({ errors }) => errors);
  const size = (one: MeteredPoint) => Math.abs(one.errors!.pulse);
  return known.length > 0 ? known.reduce((a, b) => (size(b) > size(a) ? b : a)) : undefined;
}

/** Over one cycle, where the meter is worst and where the engine is fastest, plates alike. */
export function flowPlot(study: MeterStudy): Plot {
  const worst = worstOf(study);
  const fast = study.points.findLast((one) => one.seen && one.angle === worst?.angle);
  const shown = [worst, fast].filter((one, i, all) => one && all.indexOf(one) === i);
  const looks: PlotLook[] = ['cut', 'now'];
  return {
    id: 'meter-flow',
    caption: 'Flow past the meter over a cycle',
    description:
      'Mass flow through the snorkel at the meter over a cycle; below zero it flows back.',
    ...axes(q.CRANK_ANGLE, q.MASS_FLOW),
    series: shown.map((one, i) => ({
      name: `${one!.speed} rpm`,
      look: looks[i]!,
      xs: one!.seen!.flow.map((_, angle) => angle),
      ys: plotted(q.MASS_FLOW, one!.seen!.flow),
    })),
    marks: [{ axis: 'y', at: 0, name: 'still', look: 'other' }],
  };
}
