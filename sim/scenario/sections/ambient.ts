/** The air around the engine. */
import { geopotentialAltitude, standardAtmosphere } from '../../gas/atmosphere.ts';
import type { AmbientSpecification } from '../../specification.ts';
import { STANDARD_ATMOSPHERE } from '../../units.ts';
import { maybe, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';

export const ambientSection = section('The air around the engine on the day.', {
  altitude: maybe('length', 'Altitude of the place above the sea, in place of the barometer.', {
    limits: ['-430 m', '5000 m'],
    example: '600 m',
    optional: true,
  }),
  pressure: maybe('pressure', 'Barometer at the place, not reduced to sea level.', {
    limits: ['500 mbar', '1100 mbar'],
    usual: ['700 mbar', '1050 mbar'],
    absent: { value: '1013.25 mbar', why: 'standard atmosphere, 10th CGPM 1954' },
  }),
  temperature: maybe('temperature', 'Temperature of the air at the mouths of the trumpets.', {
    limits: ['-50 degC', '70 degC'],
    usual: ['-20 degC', '50 degC'],
    absent: { value: '20 degC', why: 'common practice, no source' },
  }),
  humidity: maybe('ratio', 'Relative humidity, as a percentage or a number from 0 to 1.', {
    limits: ['0', '1'],
    absent: { value: '50 %', why: 'common practice, no source' },
  }),
}).optional();

/** Pressure of the outside air as far as it is known [Pa]. */
export function ambientPressure(reading: Reading): number {
  const altitude = reading.given('ambient.altitude');
  const pressure = reading.given('ambient.pressure') ?? STANDARD_ATMOSPHERE;
  return altitude === undefined
    ? pressure
    : standardAtmosphere(geopotentialAltitude(altitude)).pressure;
}

/** A place is known by its barometer or by its altitude. */
export function checkAmbient(reading: Reading): void {
  if (!reading.has('ambient.altitude') || !reading.has('ambient.pressure')) return;
  const remedy = 'keep the barometer; altitude stands in where there is none';
  reading.problem('ambient.altitude', 'the pressure is given twice', remedy);
}

export function resolveAmbient(reading: Reading): AmbientSpecification {
  const altitude = reading.given('ambient.altitude');
  if (altitude !== undefined) return resolveAltitude(reading, altitude);
  return {
    pressure: reading.take('ambient.pressure'),
    temperature: reading.take('ambient.temperature'),
    relativeHumidity: reading.take('ambient.humidity'),
  };
}

const STANDARD = 'U.S. Standard Atmosphere 1976 at that altitude';

/** Pressure and, where no thermometer was read, temperature from the altitude. */
function resolveAltitude(reading: Reading, altitude: number): AmbientSpecification {
  const standard = standardAtmosphere(geopotentialAltitude(altitude));
  const given = reading.given('ambient.temperature');
  reading.note('ambient.pressure', quantityToText(standard.pressure, 'pressure'), STANDARD);
  if (given === undefined) {
    const shown = quantityToText(standard.temperature, 'temperature');
    reading.note('ambient.temperature', shown, STANDARD);
  }
  return {
    pressure: standard.pressure,
    temperature: given ?? standard.temperature,
    relativeHumidity: reading.take('ambient.humidity'),
  };
}
