/** The valves of one kind: heads, cam, and what they flow. */
import type { LiftSpecification, ValveSpecification } from '../../specification.ts';
import { type LeafOptions, maybe, quantity, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { checkRising } from './rows.ts';
import {
  checkValveFlow,
  flowBenchSection,
  flowCoefficientSection,
  resolveFlow,
} from './valveFlow.ts';
import { maximumLift, seatOf } from './valveHead.ts';

/** Dead centres that BTDC, ATDC, BBDC and ABDC mean for each kind of valve [deg]. */
const DEAD_CENTRES = {
  intake: { top: 360, bottom: 540 },
  exhaust: { top: 360, bottom: 180 },
} as const;

export type ValveKind = keyof typeof DEAD_CENTRES;

/** Opening and closing must fall into this span [deg]: one turn either side of the stroke. */
const SPAN = {
  intake: ['180 deg', '720 deg'],
  exhaust: ['0 deg', '540 deg'],
} as const;

/** Longest opening that is taken [deg of crank]; common practice, no source. */
const LONGEST_DURATION = 400;

/** Largest lift over seat diameter that is taken, and that draws no warning [-]. */
const LIFT_RATIO = { most: 0.6, usual: 0.42 };

const LIFT = { limits: ['0 mm', '30 mm'] } as const;

export function valvesSection(kind: ValveKind) {
  return section(`The ${kind} valves of one cylinder.`, {
    count: quantity('ratio', `Number of ${kind} valves per cylinder.`, {
      example: '2',
      limits: ['1', '4'],
      whole: true,
    }),
    headDiameter: quantity('length', 'Outside diameter of the valve head, by vernier.', {
      limits: ['5 mm', '150 mm'],
      usual: ['15 mm', '60 mm'],
    }),
    seatDiameter: maybe('length', 'Inner diameter of the seat: what the throat leaves open.', {
      limits: ['4 mm', '150 mm'],
      absent: { rule: '0.93 of the head', why: 'common practice, no source' },
    }),
    lift: liftSection(kind),
    flowBench: flowBenchSection,
    flowCoefficient: flowCoefficientSection,
  });
}

function liftSection(kind: ValveKind) {
  const row = { limits: SPAN[kind], deadCentres: DEAD_CENTRES[kind] };
  const turn = { ...row, optional: true } as const;
  return section(
    'Lift of the valve, clearance taken off: open and close, or centre and duration, each with checkLift and maximum; or a table.',
    {
      open: maybe('angle', 'Crank angle of opening at the check lift, off the cam card.', turn),
      close: maybe('angle', 'Crank angle of closing at the check lift, off the cam card.', turn),
      centre: maybe('angle', 'Crank angle of full lift: the centre of the lobe.', turn),
      duration: maybe('angle', 'Crank angle open at the check lift.', {
        limits: ['90 deg', `${LONGEST_DURATION} deg`],
        usual: ['180 deg', '330 deg'],
        optional: true,
      }),
      checkLift: maybe('length', 'Lift at which the timing is stated.', {
        limits: ['0.05 mm', '5 mm'],
        usual: ['0.1 mm', '1.5 mm'],
        optional: true,
      }),
      maximum: maybe('length', 'Full lift at the valve.', {
        limits: ['1 mm', '30 mm'],
        usual: ['4 mm', '18 mm'],
        optional: true,
      }),
      table: tableOf(row).optional(),
    },
  );
}

function tableOf(turn: LeafOptions) {
  return section('One row of the lift table.', {
    angle: quantity('angle', 'Crank angle; 0 deg is firing top dead centre.', turn),
    lift: quantity('length', 'Lift of the valve at that angle.', LIFT),
  })
    .array()
    .min(5)
    .max(400)
    .meta({ description: 'Lift against crank angle, rising angles, from 0 lift to 0 lift.' });
}

export function checkValves(reading: Reading, path: string): void {
  checkSeat(reading, path);
  const lift = `${path}.lift`;
  if (reading.has(`${lift}.table`)) checkTable(reading, lift);
  else if (reading.hasSection(lift)) checkTiming(reading, lift);
  checkLiftRatio(reading, path);
  checkValveFlow(reading, path);
}

function checkSeat(reading: Reading, path: string): void {
  const head = reading.given(`${path}.headDiameter`);
  const seat = reading.given(`${path}.seatDiameter`);
  if (head === undefined || seat === undefined || seat <= head) return;
  reading.problem(
    `${path}.seatDiameter`,
    'the seat is wider than the valve head',
    'give the inner diameter of the seat; the head must cover it',
    `at most ${quantityToText(head, 'length')}`,
  );
}

function checkTiming(reading: Reading, lift: string): void {
  const byEvents = ['open', 'close'].some((key) => reading.has(`${lift}.${key}`));
  const byLobe = ['centre', 'duration'].some((key) => reading.has(`${lift}.${key}`));
  if (byEvents && byLobe) {
    reading.problem(
      lift,
      'the timing is given twice',
      'give open and close, or centre and duration, not both',
    );
  }
  const needed = byLobe && !byEvents ? ['centre', 'duration'] : ['open', 'close'];
  for (const key of [...needed, 'checkLift', 'maximum']) {
    if (reading.has(`${lift}.${key}`)) continue;
    reading.problem(
      lift,
      `${key} is missing`,
      `add ${key} from the cam card, or give a table of lift against crank angle`,
    );
  }
  checkOrder(reading, lift);
}

function checkOrder(reading: Reading, lift: string): void {
  const open = reading.given(`${lift}.open`);
  const close = reading.given(`${lift}.close`);
  if (open !== undefined && close !== undefined) checkDuration(reading, lift, open, close);
  const check = reading.given(`${lift}.checkLift`);
  const maximum = reading.given(`${lift}.maximum`);
  if (check === undefined || maximum === undefined || maximum > check) return;
  reading.problem(
    `${lift}.maximum`,
    'full lift does not exceed the check lift',
    'give the greatest lift of the valve, not of the check',
    `more than ${quantityToText(check, 'length')}`,
  );
}

function checkDuration(reading: Reading, lift: string, open: number, close: number): void {
  const remedy =
    'count from the right dead centre: intake valves open near TDC and close ABDC, exhaust valves open BBDC and close near TDC';
  if (close <= open) {
    const message = `the valve closes at ${close} deg, before it opens at ${open} deg`;
    reading.problem(`${lift}.close`, message, remedy, `more than ${open} deg`);
  } else if (close - open > LONGEST_DURATION || close - open < 90) {
    const message = `the valve is open for ${close - open} deg`;
    reading.problem(`${lift}.close`, message, remedy, `90 deg to ${LONGEST_DURATION} deg open`);
  }
}

function checkTable(reading: Reading, lift: string): void {
  const others = ['open', 'close', 'centre', 'duration', 'checkLift', 'maximum'];
  for (const key of others.filter((other) => reading.has(`${lift}.${other}`))) {
    reading.problem(
      `${lift}.${key}`,
      'the lift is given twice',
      'a table says all: leave this key away, or leave the table away',
    );
  }
  const angle = reading.column(`${lift}.table`, 'angle');
  const heights = reading.column(`${lift}.table`, 'lift');
  checkRising(reading, `${lift}.table`, 'angle', angle);
  for (const row of [0, heights.length - 1]) {
    if (!(heights[row]! > 0)) continue;
    reading.problem(
      `${lift}.table.${row}.lift`,
      'the table does not begin and end shut',
      'add a row of 0 mm before the valve opens and after it closes',
      '0 mm in the first and the last row',
    );
  }
}

function checkLiftRatio(reading: Reading, path: string): void {
  const seat = seatOf(reading, path);
  const maximum = maximumLift(reading, `${path}.lift`);
  if (seat === undefined || maximum === undefined) return;
  const ratio = maximum / seat;
  const at = reading.has(`${path}.lift.maximum`) ? `${path}.lift.maximum` : `${path}.lift`;
  const shown = `full lift is ${ratio.toFixed(2)} of the seat diameter`;
  if (ratio > LIFT_RATIO.most) {
    reading.problem(
      at,
      shown,
      'check units: lift at the valve, not at the lobe, and the diameter of one valve',
      `at most ${LIFT_RATIO.most}`,
    );
  } else if (ratio > LIFT_RATIO.usual) {
    reading.warn(at, `${shown}; beyond ${LIFT_RATIO.usual} few valves gain any flow`);
  }
}

export function resolveValves(reading: Reading, path: string): ValveSpecification {
  return {
    count: reading.take(`${path}.count`),
    diameter: reading.take(`${path}.seatDiameter`, () => seatOf(reading, path)!),
    lift: resolveLift(reading, `${path}.lift`),
    flow: resolveFlow(reading, path),
  };
}

function resolveLift(reading: Reading, lift: string): LiftSpecification {
  if (reading.has(`${lift}.table`)) {
    const angle = reading.column(`${lift}.table`, 'angle');
    return { kind: 'table', angle, lift: reading.column(`${lift}.table`, 'lift') };
  }
  const centre = reading.given(`${lift}.centre`);
  const half = (reading.given(`${lift}.duration`) ?? 0) / 2;
  return {
    kind: 'timing',
    open: centre === undefined ? reading.take(`${lift}.open`) : centre - half,
    close: centre === undefined ? reading.take(`${lift}.close`) : centre + half,
    checkLift: reading.take(`${lift}.checkLift`),
    maximum: reading.take(`${lift}.maximum`),
  };
}
