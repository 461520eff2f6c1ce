/** What the valves flow: points off a flow bench, a table of coefficients, or the default. */
import type { ValveFlowSpecification } from '../../specification.ts';
import { choice, maybe, quantity, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { checkRising } from './rows.ts';
import { maximumLift, seatOf } from './valveHead.ts';

/** Specific gas constant of dry air [J/(kg K)]: 8.314462618 / 0.0289647 (CIPM-2007 molar mass). */
const AIR_GAS_CONSTANT = 287.055;

/**
 * Discharge coefficient on the curtain area against lift over diameter: the middle of the band of a
 * typical intake valve, Heywood (1988) fig. 6-14, from memory, doubtful to +-0.06.
 */
const TYPICAL = {
  liftRatio: [0.05, 0.1, 0.15, 0.2, 0.25, 0.3],
  coefficient: [0.69, 0.67, 0.62, 0.58, 0.525, 0.475],
};

export const flowBenchSection = section(
  'What the head flowed on the bench, all valves of this kind of one cylinder together.',
  {
    depression: quantity('pressure', 'Pressure drop held by the bench.', {
      limits: ['2 inH2O', '80 inH2O'],
      usual: ['10 inH2O', '60 inH2O'],
    }),
    temperature: maybe('temperature', 'Temperature of the bench air.', {
      limits: ['-10 degC', '60 degC'],
      absent: { value: '20 degC', why: 'common practice, no source' },
    }),
    pressure: maybe('pressure', 'Barometer at the bench.', {
      limits: ['500 mbar', '1100 mbar'],
      absent: { value: '1013.25 mbar', why: 'standard atmosphere, 10th CGPM 1954' },
    }),
    points: section('One point of the bench sheet.', {
      lift: quantity('length', 'Lift at which the valves were held.', {
        limits: ['0.1 mm', '30 mm'],
      }),
      flow: quantity('flow', 'Volume flow at bench air.', { limits: ['0.5 cfm', '2000 cfm'] }),
    })
      .array()
      .min(2)
      .max(100)
      .meta({ description: 'Flow against lift, rising lift.' }),
  },
).optional();

export const flowCoefficientSection = section(
  'Discharge coefficients, from the total pressure upstream to the static pressure downstream.',
  {
    reference: choice(
      ['curtain', 'seat'],
      'The area that the coefficients are stated on: curtain, pi times seat diameter times lift; or seat, the circle inside the seat.',
    ),
    points: section('One point of the table.', {
      liftRatio: quantity('ratio', 'Lift over inner seat diameter.', { limits: ['0.001', '1'] }),
      coefficient: quantity('ratio', 'Discharge coefficient.', { limits: ['0.01', '1'] }),
    })
      .array()
      .min(2)
      .max(100)
      .meta({ description: 'Coefficient against lift ratio, rising ratio.' }),
  },
).optional();

export function checkValveFlow(reading: Reading, path: string): void {
  const bench = `${path}.flowBench`;
  const table = `${path}.flowCoefficient`;
  if (reading.has(bench) && reading.has(table)) {
    reading.problem(table, 'the flow is given twice', 'keep flowBench or flowCoefficient');
  }
  checkRising(reading, `${bench}.points`, 'lift', reading.column(`${bench}.points`, 'lift'));
  const ratios = reading.column(`${table}.points`, 'liftRatio');
  checkRising(reading, `${table}.points`, 'liftRatio', ratios);
  checkBenchFlow(reading, path);
  checkBenchReach(reading, path);
}

/** No valve flows more than its geometric area would without any loss. */
function checkBenchFlow(reading: Reading, path: string): void {
  const bench = `${path}.flowBench`;
  const seat = seatOf(reading, path);
  const count = reading.given(`${path}.count`);
  const depression = reading.given(`${bench}.depression`);
  if (seat === undefined || count === undefined || depression === undefined) return;
  const density =
    (reading.given(`${bench}.pressure`) ?? 101325) /
    (AIR_GAS_CONSTANT * (reading.given(`${bench}.temperature`) ?? 293.15));
  const velocity = Math.sqrt((2 * depression) / density);
  const lift = reading.column(`${bench}.points`, 'lift');
  const flow = reading.column(`${bench}.points`, 'flow');
  const row = lift.findIndex((height, i) => {
    const area = count * Math.PI * seat * Math.min(height, seat / 4);
    return flow[i]! > area * velocity;
  });
  if (row < 0) return;
  reading.problem(
    `${bench}.points.${row}.flow`,
    'the flow is more than the valves pass without any loss',
    'check that flow, depression, count and head diameter belong together',
    'the smaller of curtain and seat area times the velocity of the depression',
  );
}

function checkBenchReach(reading: Reading, path: string): void {
  const lift = reading.column(`${path}.flowBench.points`, 'lift');
  const last = lift[lift.length - 1];
  const maximum = maximumLift(reading, `${path}.lift`);
  if (last === undefined || maximum === undefined || last >= 0.95 * maximum) return;
  reading.warn(
    `${path}.flowBench.points`,
    'the bench stops short of full lift; beyond the last point its coefficient is held',
  );
}

export function resolveFlow(reading: Reading, path: string): ValveFlowSpecification {
  if (reading.has(`${path}.flowBench`)) return resolveBench(reading, `${path}.flowBench`);
  const table = `${path}.flowCoefficient`;
  if (!reading.has(table)) return typicalFlow(reading, table);
  return {
    kind: 'coefficient',
    liftRatio: reading.column(`${table}.points`, 'liftRatio'),
    coefficient: reading.column(`${table}.points`, 'coefficient'),
    reference: reading.choose(`${table}.reference`) as 'curtain' | 'seat',
  };
}

function resolveBench(reading: Reading, bench: string): ValveFlowSpecification {
  return {
    kind: 'bench',
    lift: reading.column(`${bench}.points`, 'lift'),
    flow: reading.column(`${bench}.points`, 'flow'),
    depression: reading.take(`${bench}.depression`),
    temperature: reading.take(`${bench}.temperature`),
    pressure: reading.take(`${bench}.pressure`),
  };
}

function typicalFlow(reading: Reading, table: string): ValveFlowSpecification {
  const { liftRatio, coefficient } = TYPICAL;
  const points = liftRatio.map((ratio, i) => `${coefficient[i]} at ${ratio}`).join(', ');
  reading.note(
    table,
    `on the curtain area, against lift over seat diameter: ${points}`,
    'typical intake valve, Heywood (1988) fig. 6-14, from memory, doubtful to +-0.06; flow-bench points are the better way in',
  );
  return { kind: 'coefficient', ...structuredClone(TYPICAL), reference: 'curtain' };
}
