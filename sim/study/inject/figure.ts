/** What the placements do, as plots over speed and along the intake. */

import { difference, sprayOf } from '../../decision/placementEffects.ts';
import { cumulative } from '../../report/numbers.ts';
import { axes, type Mark, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { chargeTemperatureOf, efficiencyOf } from '../points.ts';
import type { PlacementStudy } from './compute.ts';

type Line = [name: string, ys: readonly (number | undefined)[], look: PlotLook];

/** Lines over speed at full load. */
function overSpeed(
  study: PlacementStudy,
  id: string,
  caption: string,
  quantity: q.Quantity,
  lines: readonly Line[],
  marks: readonly Mark[] = [],
): Plot {
  return {
    id,
    caption,
    description: `${caption}, against engine speed, full load`,
    ...axes(q.SPEED, quantity),
    series: lines.map(([name, values, look]) => ({
      name,
      xs: study.speeds,
      ys: plotted(quantity, values),
      look,
    })),
    marks,
  };
}

/** Gain over all fuel near the valve, with what a difference is uncertain by. */
export function gainPlot(study: PlacementStudy): Plot {
  const { outcomes, uncertainty, choice } = study;
  const gain = (points: readonly PointOutcome[]) =>
    points.map((point, i) => difference(point, outcomes.near[i]!));
  const quantity = q.fillingChange('', 'change of filling');
  const doubt = plotted(quantity, [uncertainty.value, -uncertainty.value]);
  const at = (axis: Mark['axis'], place: number, name: string): Mark => ({
    ...{ axis, at: place, name, look: 'other' },
  });
  return overSpeed(
    study,
    'injector-place',
    'Change of filling against all fuel near the valve',
    quantity,
    [
      ['above the trumpet', gain(outcomes.above), 'cut'],
      ['both, as staged', gain(outcomes.both), 'third'],
    ],
    [
      at('y', doubt[0]!, 'uncertain below'),
      at('y', doubt[1]!, ''),
      ...(choice.switchOver === undefined ? [] : [at('x', choice.switchOver, 'switch here')]),
    ],
  );
}

export function fillingPlot(study: PlacementStudy): Plot {
  return overSpeed(study, 'injector-filling', 'Filling by placement', q.EFFICIENCY, [
    ...byPlacement(study, efficiencyOf),
  ]);
}

export function coolingPlot(study: PlacementStudy): Plot {
  const caption = 'Charge temperature at valve closing';
  return overSpeed(study, 'injector-cooling', caption, q.CHARGE_TEMPERATURE, [
    ...byPlacement(study, chargeTemperatureOf),
  ]);
}

function byPlacement(
  { outcomes: { near, above, none } }: PlacementStudy,
  of: (point: PointOutcome) => number | undefined,
): Line[] {
  return [
    ['near the valve', near.map(of), 'now'],
    ['above the trumpet', above.map(of), 'cut'],
    ['no spray', none.map(of), 'other'],
  ];
}

export function splitPlot(study: PlacementStudy): Plot {
  const { cooling, displacement, waveShift, total } = study.split;
  return overSpeed(
    study,
    'injector-split',
    'What the outer injector does to filling, against fuel that evaporates in the cylinder',
    q.fillingChange('', 'change of filling'),
    [
      ['cooling', cooling, 'third'],
      ['vapour takes room', displacement, 'now'],
      ['wave shift', waveShift, 'other'],
      ['all together', total, 'cut'],
    ],
  );
}

export function standOffPlot(study: PlacementStudy): Plot {
  const of = (figure: 'standOff' | 'returned' | 'lost') =>
    study.outcomes.above.map((point) => sprayOf(point)?.[figure]);
  const quantity = { ...q.STAND_OFF, name: 'of the fuel injected' };
  return overSpeed(study, 'injector-stand-off', 'Stand-off of the outer injector', quantity, [
    ['drops blown out', of('standOff'), 'cut'],
    ['drawn in again', of('returned'), 'other'],
    ['lost for good', of('lost'), 'now'],
  ]);
}

/** Fuel evaporated on the way, from the mouth and beyond at the right to the valve at the left. */
export function evaporationPlot(
  study: PlacementStudy,
  { engine: { intake }, lengthUnit }: Scenario,
): Plot {
  const { outcomes, speeds } = study;
  const caption = `Fuel evaporated on the way to the valve at ${speeds.at(-1)} rpm`;
  const face = intake.port.length + intake.runner.length + intake.throttle.length;
  const away = q.inUnit(q.DISTANCE_TO_VALVE, lengthUnit);
  const places = plotted(away, [face, face + intake.trumpet.length]);
  const line = (name: string, points: readonly PointOutcome[], look: PlotLook) => {
    const { distance = [], share = [] } = sprayOf(points.at(-1)!)?.along ?? {};
    const xs = plotted(away, distance);
    return { name, look, xs, ys: plotted(q.EVAPORATED, cumulative(share)) };
  };
  return {
    id: 'injector-evaporation',
    caption,
    description: `${caption}, of the fuel injected, against distance`,
    ...axes(away, q.EVAPORATED),
    series: [
      line('near the valve', outcomes.near, 'now'),
      line('above the trumpet', outcomes.above, 'cut'),
    ].filter(({ xs }) => xs.length > 0),
    marks: ['body face', 'mouth'].map((name, i) => ({
      ...{ axis: 'x' as const, at: places[i]!, name, look: 'other' as const },
    })),
  };
}
