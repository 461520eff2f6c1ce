/** Cylinders, crank and combustion chamber. */
import type { CylinderSpecification } from '../../specification.ts';
import { maybe, quantity, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';

export const engineSection = section('Cylinders, crank and combustion chamber.', {
  cylinders: quantity('ratio', 'Number of cylinders.', {
    example: '4',
    limits: ['1', '16'],
    whole: true,
  }),
  bore: quantity('length', 'Cylinder bore, by bore gauge.', {
    limits: ['10 mm', '300 mm'],
    usual: ['35 mm', '130 mm'],
  }),
  stroke: quantity('length', 'Piston stroke: twice the throw of the crank.', {
    limits: ['10 mm', '300 mm'],
    usual: ['30 mm', '130 mm'],
  }),
  rod: quantity('length', 'Connecting rod, centre of big end to centre of small end.', {
    limits: ['10 mm', '800 mm'],
    usual: ['60 mm', '250 mm'],
  }),
  compressionRatio: quantity('ratio', 'Volume at bottom over volume at top dead centre.', {
    example: '11.5',
    limits: ['2', '25'],
    usual: ['6', '16'],
  }),
  wallTemperature: maybe('temperature', 'Mean temperature of piston crown, head and liner.', {
    limits: ['250 K', '900 K'],
    usual: ['350 K', '600 K'],
    absent: { value: '450 K', why: 'common practice, no source' },
  }),
});

export function checkEngine(reading: Reading): void {
  const stroke = reading.given('engine.stroke');
  const rod = reading.given('engine.rod');
  if (stroke === undefined || rod === undefined) return;
  if (rod <= stroke / 2) {
    reading.problem(
      'engine.rod',
      'the connecting rod is not longer than the throw of the crank',
      'measure the rod between centres; it must exceed half the stroke',
      `more than ${quantityToText(stroke / 2, 'length')}`,
    );
  } else if (rod / stroke < 1.3 || rod / stroke > 2.7) {
    const ratio = (rod / stroke).toFixed(2);
    reading.warn('engine.rod', `rod over stroke is ${ratio}; most engines lie within 1.3 to 2.7`);
  }
}

export function resolveEngine(reading: Reading): CylinderSpecification {
  return {
    count: reading.take('engine.cylinders'),
    bore: reading.take('engine.bore'),
    stroke: reading.take('engine.stroke'),
    rodLength: reading.take('engine.rod'),
    compressionRatio: reading.take('engine.compressionRatio'),
    wallTemperature: reading.take('engine.wallTemperature'),
  };
}
