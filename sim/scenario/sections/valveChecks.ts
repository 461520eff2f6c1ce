/** What heads, cams and lift tables of valves must agree in. */
import { usualOf } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import { numbers } from '../view.ts';
import { warnRough } from './smooth.ts';
import { type LiftView, LONGEST_DURATION, type ValvesView } from './valve.ts';
import { checkValveFlow } from './valveFlow.ts';
import { maximumLift, seatOf } from './valveHead.ts';

/** Largest lift over seat diameter that is taken, and that draws no warning [-]. */
const LIFT_RATIO = { most: 0.6, usual: 0.42 };

export function checkValves(valves: ValvesView): void {
  const { headDiameter, seatDiameter, lift } = valves;
  if (seatDiameter.given! > headDiameter.given!) {
    seatDiameter.problem(
      'the seat is wider than the valve head',
      'give the inner diameter of the seat; the head must cover it',
      `at most ${quantityToText(headDiameter.given!, 'length')}`,
    );
  }
  if (lift.table.present) checkTable(lift);
  else checkTiming(lift);
  checkLiftRatio(valves);
  checkValveFlow(valves);
}

function checkTiming(lift: LiftView): void {
  const { checkLift, maximum } = lift;
  checkDuration(lift);
  warnNearSeat(lift);
  if (!(maximum.given! <= checkLift.given!)) return;
  maximum.problem(
    'full lift does not exceed the check lift',
    'give the greatest lift of the valve, not of the check',
    `more than ${quantityToText(checkLift.given!, 'length')}`,
  );
}

/** Check lifts [m] next to the seat, and how long valves are open there at least [deg]; common practice, no source. */
const NEAR_SEAT = 0.3e-3;
const OPEN_THERE = 280;

function warnNearSeat({ open, close, duration, checkLift }: LiftView): void {
  const span = duration.given ?? close.given! - open.given!;
  if (!(checkLift.given! < NEAR_SEAT && span > 0 && span < OPEN_THERE)) return;
  checkLift.warn(
    `open for ${Number(span.toPrecision(4))} deg at a lift of ${checkLift.quantity!.text} is short: so near the seat most valves are open for ${OPEN_THERE} deg or more; cam cards often state timing at 1 mm or 0.05 in`,
  );
}

function checkDuration(lift: LiftView): void {
  const { open, close } = lift;
  if (open.given === undefined || close.given === undefined) return;
  const remedy =
    'count from the right dead centre: intake valves open near TDC and close ABDC, exhaust valves open BBDC and close near TDC';
  const duration = close.given - open.given;
  if (duration <= 0) {
    const message = `the valve closes at ${close.given} deg, before it opens at ${open.given} deg`;
    close.problem(message, remedy, `more than ${open.given} deg`);
  } else if (duration > LONGEST_DURATION || duration < 90) {
    const limit = `90 deg to ${LONGEST_DURATION} deg open`;
    close.problem(`the valve is open for ${duration} deg`, remedy, limit);
  } else {
    warnCentre(lift, (open.given + close.given) / 2);
  }
}

/** Events that are each usual may still be those of no cam. */
function warnCentre({ centre: { key }, here }: LiftView, at: number): void {
  const [low, high] = usualOf(key)!;
  if (at >= low && at <= high) return;
  const top = key.deadCentres!.top;
  const shown = `${Number(Math.abs(at - top).toPrecision(4))} deg ${at < top ? 'B' : 'A'}TDC`;
  const [from, to] = key.usual!;
  here.warn(
    `open and close put the lobe's centre at ${shown}; most engines lie within ${from} to ${to}`,
  );
}

function checkTable({ fullness, table: { rows } }: LiftView): void {
  if (fullness.present) {
    fullness.problem(
      'the table says how full the lift is',
      'keep the table, or timing with fullness',
    );
  }
  warnRough(
    numbers(rows.map(({ angle }) => angle)),
    rows.map(({ lift }) => lift),
  );
  for (const row of rows.length > 0 ? [rows[0]!, rows.at(-1)!] : []) {
    if (!(row.lift.given! > 0)) continue;
    row.lift.problem(
      'the table does not begin and end shut',
      'add a row of 0 mm before the valve opens and after it closes',
      '0 mm in the first and the last row',
    );
  }
}

function checkLiftRatio(valves: ValvesView): void {
  const { lift } = valves;
  const ratio = maximumLift(lift)! / seatOf(valves)!;
  const at = lift.maximum.present ? lift.maximum : lift.here;
  const shown = `full lift is ${ratio.toFixed(2)} of the seat diameter`;
  if (ratio > LIFT_RATIO.most) {
    at.problem(
      shown,
      'check units: lift at the valve, not at the lobe, and the diameter of one valve',
      `at most ${LIFT_RATIO.most}`,
    );
  } else if (ratio > LIFT_RATIO.usual) {
    at.warn(`${shown}; beyond ${LIFT_RATIO.usual} few valves gain any flow`);
  }
}
