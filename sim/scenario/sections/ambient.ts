/** The air around the engine. */
import type { AmbientSpecification } from '../../specification.ts';
import { maybe, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';

export const ambientSection = section('The air around the engine on the day.', {
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

export function resolveAmbient(reading: Reading): AmbientSpecification {
  return {
    pressure: reading.take('ambient.pressure'),
    temperature: reading.take('ambient.temperature'),
    relativeHumidity: reading.take('ambient.humidity'),
  };
}
