/** Charge temperature at valve closing against speed, by where the fuel comes in. */
import { fixed, rpm } from '../format.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';
import { figureOf, PLACE_NAME, placeLine } from './injector.ts';
import { baseLayout } from './look.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

const PLACES = ['none', 'near', 'both', 'above'] as const;

export const injectorCoolingView: View = {
  id: 'injector-cooling',
  question: 'How much does it cool the charge?',
  width: 'half',
  height: 420,
  asked: true,
  applies: isPlaced,
  reading: () =>
    'Temperature of what is trapped at valve closing. The lower the line, the more of the fuel has drawn its heat from the air in time.',
  summary: () => {
    const { speeds } = placed()!;
    const [near, above] = [celsius('near'), celsius('above')];
    return speeds
      .map((speed, i) => `${rpm(speed)}: ${words(near[i])} near, ${words(above[i])} above`)
      .join('; ');
  },
  ready: () => placed() !== undefined,
  figure: (_, look) => {
    const layout = baseLayout(look, 'engine speed [rpm]', 'charge at valve closing [°C]');
    return {
      data: PLACES.map((place) => placeLine(place, placed()!, celsius(place), look)),
      layout: withKey(look, { ...layout, yaxis: { ...layout.yaxis, hoverformat: '.1f' } }, 2),
    };
  },
  table: () => {
    const columns = PLACES.map((place) => celsius(place));
    return {
      columns: [
        { name: 'speed', unit: 'rpm', decimals: 0 },
        ...PLACES.map((place) => ({
          name: `charge temperature at closing, ${PLACE_NAME[place]}`,
          unit: 'degC',
          decimals: 1,
        })),
      ],
      rows: placed()!.speeds.map((speed, i) => [speed, ...columns.map((column) => column[i])]),
    };
  },
  watch: () => [placement.state.value],
};

const ZERO_CELSIUS = 273.15;

function celsius(place: (typeof PLACES)[number]): (number | undefined)[] {
  return placed()!.outcomes[place].map((point) =>
    figureOf(point, ({ chargeTemperature }) => chargeTemperature - ZERO_CELSIUS),
  );
}

const words = (value: number | undefined) =>
  value === undefined ? 'failed' : `${fixed(value, 0)} degrees`;
