/**
 * The kinds of quantity that a scenario knows and the units that it may use, with the conversion by
 * mathjs. What mathjs lacks is defined here.
 */
import { create, createUnitDependencies, unitDependencies } from 'mathjs';
import { INCH_OF_MERCURY, INCH_OF_WATER } from '../units.ts';

const { unit, createUnit } = create({ unitDependencies, createUnitDependencies });
createUnit('inH2O', `${INCH_OF_WATER} Pa`);
createUnit('inHg', `${INCH_OF_MERCURY} Pa`);
createUnit('rpm', '1 / minute');

/** One kind of quantity: the unit the program computes in, and the units a file may use. */
export interface Dimension {
  /** With its article, for messages. */
  name: string;
  /** The unit inside the program, in mathjs's spelling; empty for a plain number. */
  inside: string;
  /** What a file may write -> mathjs's spelling. */
  units: Record<string, string>;
  example: string;
}

const same = (...names: string[]) => Object.fromEntries(names.map((name) => [name, name]));

/** Kinds of quantity that a scenario knows. */
export const DIMENSIONS = {
  length: {
    name: 'a length',
    inside: 'm',
    units: { ...same('mm', 'cm', 'm', 'um', 'in', 'ft'), inch: 'in', '"': 'in', thou: 'mil' },
    example: '86 mm',
  },
  pressure: {
    name: 'a pressure',
    inside: 'Pa',
    units: {
      ...same('Pa', 'hPa', 'kPa', 'mbar', 'bar', 'atm', 'mmHg', 'inHg', 'inH2O'),
      psi: 'lbf/in^2', // mathjs holds psi to ten digits only
    },
    example: '1013 mbar',
  },
  temperature: {
    name: 'a temperature',
    inside: 'K',
    units: { ...same('K', 'degC', 'degF'), '°C': 'degC', '°F': 'degF' },
    example: '20 degC',
  },
  angle: {
    name: 'an angle',
    inside: 'deg',
    units: { deg: 'deg', '°': 'deg' },
    example: '62 deg ABDC',
  },
  speed: {
    name: 'an engine speed',
    inside: 'rpm',
    units: { rpm: 'rpm', '1/min': 'rpm' },
    example: '6500 rpm',
  },
  volume: {
    name: 'a volume',
    inside: 'm^3',
    units: {
      ...same('mL', 'L'),
      mm3: 'mm^3',
      cm3: 'cm^3',
      m3: 'm^3',
      cc: 'cm^3',
      ml: 'mL',
      l: 'L',
    },
    example: '20 cm3',
  },
  flow: {
    name: 'a volume flow',
    inside: 'm^3/s',
    units: {
      cfm: 'ft^3/minute',
      'm3/s': 'm^3/s',
      'm3/h': 'm^3/hour',
      'L/s': 'L/s',
      'l/s': 'L/s',
      'L/min': 'L/minute',
      'l/min': 'L/minute',
      'cc/min': 'cm^3/minute',
      'mL/min': 'mL/minute',
    },
    example: '120 cfm',
  },
  massFlow: {
    name: 'a mass flow',
    inside: 'kg/s',
    units: {
      'kg/s': 'kg/s',
      'g/s': 'g/s',
      'g/min': 'g/minute',
      'kg/h': 'kg/hour',
      'lb/h': 'lbm/hour',
    },
    example: '5 g/s',
  },
  time: {
    name: 'a time',
    inside: 's',
    units: { s: 's', ms: 'ms', us: 'us' },
    example: '1 ms',
  },
  frequency: {
    name: 'a frequency',
    inside: 'Hz',
    units: same('Hz', 'kHz'),
    example: '100 Hz',
  },
  torque: {
    name: 'a torque',
    inside: 'N m',
    units: { Nm: 'N m', lbfft: 'lbf ft' },
    example: '210 Nm',
  },
  force: {
    name: 'a force',
    inside: 'N',
    units: same('N', 'lbf', 'kgf'),
    example: '15 N',
  },
  stiffness: {
    name: 'a spring rate',
    inside: 'N/m',
    units: same('N/mm', 'N/m', 'lbf/in'),
    example: '1.2 N/mm',
  },
  ratio: {
    name: 'a plain number',
    inside: '',
    units: { '': '', ':1': '', '%': '%' },
    example: '0.5',
  },
} satisfies Record<string, Dimension>;

export type DimensionName = keyof typeof DIMENSIONS;

/** A number from one of mathjs's units to another. */
export function convert(number: number, from: string, to: string): number {
  return from === to ? number : unit(number, from).toNumber(to);
}
