/** Fuel that the reversed flow blows back out of the mouth. */
import { percent, rpm } from '../format.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';
import { figureOf, placeLine, type Shown, type Spray } from './injector.ts';
import { baseLayout } from './look.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

const FIGURES: { name: string; place: Shown; of: (spray: Spray) => number }[] = [
  { name: 'blown out of the mouth', place: 'both', of: ({ standOff }) => standOff },
  { name: 'of it drawn in again', place: 'near', of: ({ returned }) => returned },
  { name: 'lost for good', place: 'above', of: ({ lost }) => lost },
];

export const injectorStandOffView: View = {
  id: 'injector-stand-off',
  question: 'How much fuel stands off above the mouths?',
  width: 'half',
  height: 400,
  asked: true,
  applies: isPlaced,
  reading: () =>
    'All fuel from above the trumpet: the share of it that reversed flow carries out of the mouth as fog, what the next intake draws in again, and what is lost. Fog in the open is what burns when it back-fires.',
  summary: () => {
    const lost = column(FIGURES[2]!.of);
    return placed()!
      .speeds.map((speed, i) => `${rpm(speed)}: ${percent(lost[i] ?? Number.NaN)} lost`)
      .join(', ');
  },
  ready: () => placed() !== undefined,
  figure: (_, look) => {
    const layout = baseLayout(look, 'engine speed [rpm]', 'share of the fuel [%]');
    return {
      data: FIGURES.map(({ name, place, of }) =>
        placeLine(place, placed()!, column(of), look, name),
      ),
      layout: withKey(
        look,
        { ...layout, yaxis: { ...layout.yaxis, rangemode: 'tozero', hoverformat: '.1f' } },
        2,
      ),
    };
  },
  table: () => {
    const columns = FIGURES.map(({ of }) => column(of));
    return {
      columns: [
        { name: 'speed', unit: 'rpm', decimals: 0 },
        ...FIGURES.map(({ name }) => ({ name, unit: '% of the fuel', decimals: 2 })),
      ],
      rows: placed()!.speeds.map((speed, i) => [speed, ...columns.map((values) => values[i])]),
    };
  },
  watch: () => [placement.state.value],
};

function column(of: (spray: Spray) => number): (number | undefined)[] {
  return placed()!.outcomes.above.map((point) =>
    figureOf(point, ({ spray }) => spray && 100 * of(spray)),
  );
}
