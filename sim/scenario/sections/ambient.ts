/** The air around the engine. */
import { geopotentialAltitude, standardAtmosphere } from '../../gas/atmosphere.ts';
import type { AmbientSpecification } from '../../specification.ts';
import { maybe, oneOf, optional, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ViewOf } from '../view.ts';

export const ambientSection = optional(
  section(
    'The air around the engine on the day.',
    {
      altitude: maybe('length', 'Altitude of the place above the sea, in place of the barometer.', {
        limits: ['-430 m', '5000 m'],
        example: '600 m',
        condition: true,
        form: { group: 'Day and fuel', label: 'Altitude' },
        doubt: { half: '30 m', why: 'map, and the weather in place of a barometer' },
      }),
      pressure: maybe('pressure', 'Barometer at the place, not reduced to sea level.', {
        limits: ['500 mbar', '1100 mbar'],
        usual: ['700 mbar', '1050 mbar'],
        absent: { value: '1013.25 mbar', why: 'standard atmosphere, 10th CGPM 1954' },
        condition: true,
        form: { group: 'Day and fuel', label: 'Barometer' },
        doubt: { half: '3 mbar', why: 'weather over a day, and the barometer' },
      }),
      temperature: maybe('temperature', 'Temperature of the air at the mouths of the trumpets.', {
        limits: ['-50 degC', '70 degC'],
        usual: ['-20 degC', '50 degC'],
        absent: { value: '20 degC', why: 'common practice, no source' },
        condition: true,
        doubt: { half: '3 K', why: 'air at the mouths is not air in the shade' },
        form: { group: 'Day and fuel', label: 'Air temperature' },
      }),
      humidity: maybe('ratio', 'Relative humidity, as a percentage or a number from 0 to 1.', {
        limits: ['0', '1'],
        absent: { value: '50 %', why: 'common practice, no source' },
        condition: true,
        form: { group: 'Day and fuel', label: 'Humidity' },
        doubt: { half: '0.15', why: 'weather report' },
      }),
    },
    oneOf(
      'the pressure',
      [['pressure'], ['altitude']],
      'keep the barometer; altitude stands in where there is none',
      true,
    ),
  ),
);

type AmbientView = ViewOf<typeof ambientSection>;

/** Pressure of the outside air as far as it is known [Pa]. */
export function ambientPressure({ altitude, pressure }: AmbientView): number {
  return altitude.given === undefined
    ? pressure.assumed
    : standardAtmosphere(geopotentialAltitude(altitude.given)).pressure;
}

export function resolveAmbient(ambient: AmbientView): AmbientSpecification {
  const { altitude, pressure, temperature, humidity } = ambient;
  if (altitude.given !== undefined) return resolveAltitude(ambient, altitude.given);
  return {
    pressure: pressure.take(),
    temperature: temperature.take(),
    relativeHumidity: humidity.take(),
  };
}

const STANDARD = 'U.S. Standard Atmosphere 1976 at that altitude';

/** Pressure and, where no thermometer was read, temperature from the altitude. */
function resolveAltitude(ambient: AmbientView, altitude: number): AmbientSpecification {
  const { pressure, temperature, humidity } = ambient;
  const standard = standardAtmosphere(geopotentialAltitude(altitude));
  pressure.note(quantityToText(standard.pressure, 'pressure'), STANDARD);
  return {
    pressure: standard.pressure,
    temperature: temperature.given ?? temperature.takeAs(standard.temperature, STANDARD),
    relativeHumidity: humidity.take(),
  };
}
