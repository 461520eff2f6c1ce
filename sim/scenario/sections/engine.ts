/** Cylinders, crank and combustion chamber. */
import type { EngineSpecification } from '../../specification.ts';
import { maybe, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import { takeAll, type ViewOf } from '../view.ts';
import { banksKey } from './banks.ts';
import { firingSection } from './firing.ts';

export const engineSection = section('Cylinders, crank and combustion chamber.', {
  cylinders: quantity('ratio', 'Number of cylinders.', {
    example: '4',
    limits: ['1', '16'],
    whole: true,
    form: { group: 'Engine', label: 'Cylinders' },
  }),
  firing: firingSection,
  banks: banksKey,
  bore: quantity('length', 'Cylinder bore, by bore gauge.', {
    limits: ['10 mm', '300 mm'],
    usual: ['35 mm', '130 mm'],
    doubt: { half: '0.02 mm', why: 'bore gauge' },
    form: { group: 'Engine', label: 'Bore' },
  }),
  stroke: quantity('length', 'Piston stroke: twice the throw of the crank.', {
    limits: ['10 mm', '300 mm'],
    usual: ['30 mm', '130 mm'],
    doubt: { half: '0.1 mm', why: 'dial gauge' },
    form: { group: 'Engine', label: 'Stroke' },
  }),
  rod: quantity('length', 'Connecting rod, centre of big end to centre of small end.', {
    limits: ['10 mm', '800 mm'],
    usual: ['60 mm', '250 mm'],
    doubt: { half: '0.2 mm', why: 'vernier' },
    form: { group: 'Engine', label: 'Connecting rod' },
  }),
  compressionRatio: quantity('ratio', 'Volume at bottom over volume at top dead centre.', {
    example: '11.5',
    limits: ['2', '25'],
    usual: ['6', '16'],
    doubt: { half: '0.2', why: 'burette and gasket' },
    form: { group: 'Engine', label: 'Compression ratio' },
  }),
  wallTemperature: maybe('temperature', 'Mean temperature of piston crown, head and liner.', {
    limits: ['250 K', '900 K'],
    usual: ['350 K', '600 K'],
    absent: { value: '450 K', why: 'common practice, no source' },
    doubt: { half: '40 K', why: 'nobody measures it' },
  }),
  pipeHeat: maybe('ratio', "Heat between gas and pipe walls over the correlation's.", {
    limits: ['0', '4'],
    usual: ['0.5', '2'],
    absent: { value: '1', why: 'Depcik & Assanis 2002, abstract' },
    doubt: { half: '30 %', why: 'scatter of the data behind it, our own reading' },
  }),
  crevice: maybe('ratio', 'Volume of top land, ring grooves, gasket and plug in the clearance.', {
    example: '1.5 %',
    limits: ['0', '20 %'],
    usual: ['0.5 %', '4 %'],
    absent: { value: '1.5 %', why: 'Heywood (1988) sec. 8.6, from memory' },
    doubt: { half: '0.005', why: 'nobody measures it; our own reading, no source' },
  }),
  blowBy: maybe('ratio', 'Charge lost past the rings at full load and 15 m/s mean piston speed.', {
    example: '0.5 %',
    limits: ['0', '10 %'],
    usual: ['0.1 %', '3 %'],
    absent: { value: '0.5 %', why: 'sound rings; common practice, no source' },
    doubt: { half: '0.003', why: 'rings worn or fresh, unless leak is measured' },
  }),
});

type EngineView = ViewOf<typeof engineSection>;

export function checkEngine({ stroke: { given: stroke }, rod }: EngineView): void {
  if (stroke === undefined || rod.given === undefined) return;
  const ratio = rod.given / stroke;
  if (ratio <= 1 / 2) {
    rod.problem(
      'the connecting rod is not longer than the throw of the crank',
      'measure the rod between centres; it must exceed half the stroke',
      `more than ${quantityToText(stroke / 2, 'length')}`,
    );
  } else if (ratio < 1.3 || ratio > 2.7) {
    rod.warn(`rod over stroke is ${ratio.toFixed(2)}; most engines lie within 1.3 to 2.7`);
  }
}

type Whole = Pick<EngineSpecification, 'cylinder' | 'pipeHeat'>;

export function resolveEngine(engine: EngineView): Whole {
  const { firing: _, banks: _banks, ...leaves } = engine;
  const { cylinders, rod, pipeHeat, ...rest } = takeAll(leaves);
  return { cylinder: { count: cylinders, rodLength: rod, ...rest }, pipeHeat };
}
