/** What the valves flow: points off a flow bench, a table of coefficients, or the default. */
import type { ValveFlowSpecification } from '../../specification.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../units.ts';
import { choice, type Doubt, list, maybe, quantity, section } from '../key.ts';
import { numbers } from '../view.ts';
import { warnKink } from './smooth.ts';
import type { ValvesView } from './valve.ts';
import { maximumLift, seatOf } from './valveHead.ts';

/**
 * Discharge coefficients on the curtain area against lift over diameter: the middle of the bands of
 * typical valves, Heywood (1988) fig. 6-14 for intake and fig. 6-21 for exhaust valves, both from
 * memory. Out of the cylinder the flow stays on the head longer: more at low and middle lifts.
 */
const TYPICAL = {
  intake: {
    liftRatio: [0.05, 0.1, 0.15, 0.2, 0.25, 0.3],
    coefficient: [0.69, 0.67, 0.62, 0.58, 0.525, 0.475],
    origin: 'Heywood (1988) fig. 6-14, from memory, doubtful to +-0.06',
    doubt: {
      half: '12 %',
      why: 'typical intake valve: the band of Heywood (1988) fig. 6-14, from memory, 0.06 of 0.5',
    },
  },
  exhaust: {
    liftRatio: [0.05, 0.1, 0.15, 0.2, 0.25, 0.3],
    coefficient: [0.73, 0.72, 0.68, 0.63, 0.57, 0.51],
    origin: 'Heywood (1988) fig. 6-21, from memory, doubtful to +-0.08',
    doubt: {
      half: '15 %',
      why: 'typical exhaust valve: the band of Heywood (1988) fig. 6-21, from memory, 0.08 of 0.55',
    },
  },
} as const;

type Kind = keyof typeof TYPICAL;

/** Share of the loss-free flow of the seats that full lift seldom stays below [-]; common practice. */
const POOR_FLOW = 0.35;

/** Doubt in the coefficients, which rise and fall together: of a table given, and of the typical one. */
export const TABLE_DOUBT: Doubt = { half: '5 %', why: 'bench and reference area' };
export const typicalDoubt = (kind: Kind): Doubt => TYPICAL[kind].doubt;

const benchPoint = section('One point of the bench sheet.', {
  lift: quantity('length', 'Lift at which the valves were held.', { limits: ['0.1 mm', '30 mm'] }),
  flow: quantity('flow', 'Volume flow at bench air.', { limits: ['0.5 cfm', '2000 cfm'] }),
});

export const flowBenchSection = section(
  'What the head flowed on the bench, all valves of this kind of one cylinder together.',
  {
    depression: quantity('pressure', 'Pressure drop held by the bench.', {
      limits: ['2 inH2O', '80 inH2O'],
      usual: ['10 inH2O', '60 inH2O'],
      doubt: { half: '6 %', why: 'benches differ by 3 % in flow' },
    }),
    temperature: maybe('temperature', 'Temperature of the bench air.', {
      limits: ['-10 degC', '60 degC'],
      usual: ['5 degC', '40 degC'],
      absent: { value: '20 degC', why: 'common practice, no source' },
    }),
    pressure: maybe('pressure', 'Barometer at the bench.', {
      limits: ['500 mbar', '1100 mbar'],
      absent: { value: '1013.25 mbar', why: 'standard atmosphere, 10th CGPM 1954' },
    }),
    points: list(benchPoint, 'Flow against lift, rising lift.', {
      least: 2,
      most: 100,
      rising: 'lift',
    }),
  },
);

const tablePoint = section('One point of the table.', {
  liftRatio: quantity('ratio', 'Lift over inner seat diameter.', { limits: ['0.001', '1'] }),
  coefficient: quantity('ratio', 'Discharge coefficient.', { limits: ['0.01', '1'] }),
});

export const flowCoefficientSection = section(
  'Discharge coefficients, from the total pressure upstream to the static pressure downstream.',
  {
    reference: choice(
      ['curtain', 'seat'],
      'The area that the coefficients are stated on: curtain, pi times seat diameter times lift; or seat, the circle inside the seat.',
    ),
    points: list(tablePoint, 'Coefficient against lift ratio, rising ratio.', {
      least: 2,
      most: 100,
      rising: 'liftRatio',
    }),
  },
);

export function checkValveFlow(valves: ValvesView): void {
  checkBenchFlow(valves);
  checkBenchReach(valves);
  const bench = valves.flowBench.points.rows;
  const lifts = numbers(bench.map(({ lift }) => lift));
  warnKink(
    lifts,
    bench.map(({ flow }) => flow),
    'the flow',
    true,
  );
  const { points, reference } = valves.flowCoefficient;
  const ratios = numbers(points.rows.map(({ liftRatio }) => liftRatio));
  const cells = points.rows.map(({ coefficient }) => coefficient);
  warnKink(ratios, cells, 'the coefficient', reference.given === 'seat');
}

/** No valve flows more than its geometric area would without any loss. */
function checkBenchFlow(valves: ValvesView): void {
  const { depression, pressure, temperature, points } = valves.flowBench;
  const seat = seatOf(valves);
  const count = valves.count.given;
  if (seat === undefined || count === undefined || depression.given === undefined) return;
  const density = pressure.assumed / (DRY_AIR_GAS_CONSTANT * temperature.assumed);
  const velocity = Math.sqrt((2 * depression.given) / density);
  const most = (lift: number) => count * Math.PI * seat * Math.min(lift, seat / 4) * velocity;
  const bad = points.rows.find(({ lift, flow }) => flow.given! > most(lift.given!));
  const last = points.rows.at(-1);
  const share = last ? last.flow.given! / most(last.lift.given!) : Number.NaN;
  if (share < POOR_FLOW) {
    points.warn(
      `full lift flows ${share.toFixed(2)} of what the seats would without any loss; most heads flow more than ${POOR_FLOW}`,
    );
  }
  bad?.flow.problem(
    'the flow is more than the valves pass without any loss',
    'check that flow, depression, count and head diameter belong together',
    'the smaller of curtain and seat area times the velocity of the depression',
  );
}

function checkBenchReach({ flowBench: { points }, lift }: ValvesView): void {
  const last = points.rows.at(-1)?.lift.given;
  if (!(last! < 0.95 * maximumLift(lift)!)) return;
  points.warn('the bench stops short of full lift; beyond the last point its coefficient is held');
}

export function resolveFlow(valves: ValvesView, kind: Kind): ValveFlowSpecification {
  const { flowBench, flowCoefficient } = valves;
  if (flowBench.here.present) return resolveBench(flowBench);
  if (!flowCoefficient.here.present) return typicalFlow(valves, kind);
  const { rows } = flowCoefficient.points;
  return {
    kind: 'coefficient',
    liftRatio: numbers(rows.map(({ liftRatio }) => liftRatio)),
    coefficient: numbers(rows.map(({ coefficient }) => coefficient)),
    reference: flowCoefficient.reference.take(),
  };
}

function resolveBench(bench: ValvesView['flowBench']): ValveFlowSpecification {
  const { rows } = bench.points;
  return {
    kind: 'bench',
    lift: numbers(rows.map(({ lift }) => lift)),
    flow: numbers(rows.map(({ flow }) => flow)),
    depression: bench.depression.take(),
    temperature: bench.temperature.take(),
    pressure: bench.pressure.take(),
  };
}

function typicalFlow({ flowCoefficient }: ValvesView, kind: Kind): ValveFlowSpecification {
  const { liftRatio, coefficient, origin } = TYPICAL[kind];
  const points = liftRatio.map((ratio, i) => `${coefficient[i]} at ${ratio}`).join(', ');
  flowCoefficient.here.note(
    `on the curtain area, against lift over seat diameter: ${points}`,
    `typical ${kind} valve, ${origin}; flow-bench points are the better way in`,
  );
  return {
    kind: 'coefficient',
    liftRatio: [...liftRatio],
    coefficient: [...coefficient],
    reference: 'curtain',
  };
}
