/** When the pressure before the intake valve stands highest, against when the valve closes. */
import { type Front, frontFrom, quantities as q, type Trace } from '../../sim/index.ts';
import { told } from '../format.ts';
import type { Picture } from '../state/picture.ts';

/** While the intake is open: the highest pressure before the valve [Pa], and when [deg]. */
export function arrivalOf({ stations, crankAngle, intakeEvents }: Trace) {
  const port = stations.find(({ name }) => name === 'port')!.pressure;
  const inside = crankAngle.map(
    (angle) => angle >= intakeEvents.open && angle <= intakeEvents.close,
  );
  const at = port.reduce(
    (best, p, i) => (inside[i] && (best < 0 || p > port[best]!) ? i : best),
    -1,
  );
  return { peak: port[at] ?? Number.NaN, angle: crankAngle[at] ?? Number.NaN };
}

export function arrivalWords(trace: Trace): string {
  const { peak, angle } = arrivalOf(trace);
  const when = beforeClosing(trace, angle);
  return `The pressure before the valve is highest ${when}: ${told(q.PRESSURE, peak)} at ${Math.round(angle)} degrees.`;
}

/** The front of the strongest suction: it leaves the valve when the pressure before it is lowest. */
export function suctionFront(trace: Trace, picture: Picture): Front {
  const front = FRONTS.get(trace) ?? frontOf(trace, picture);
  FRONTS.set(trace, front);
  return front;
}

/** Followed once a trace. */
const FRONTS = new WeakMap<Trace, Front>();

function frontOf(trace: Trace, { scenario }: Picture): Front {
  const { stations, crankAngle, intakeEvents } = trace;
  const port = stations.find(({ name }) => name === 'port')!.pressure;
  const open = crankAngle.map((angle) => angle >= intakeEvents.open && angle < intakeEvents.close);
  const lowest = port.reduce((at, p, i) => (open[i] && (at < 0 || p < port[at]!) ? i : at), -1);
  const { pressure, temperature } = scenario.engine.intake.feed;
  return frontFrom(trace, { pressure, temperature }, crankAngle[Math.max(lowest, 0)]!);
}

export function frontWords(trace: Trace, { crankAngle, back }: Front): string {
  const left = `The front of the suction leaves the valve at ${Math.round(crankAngle[0]!)} degrees`;
  return back === undefined
    ? `${left} and is not back within the cycle.`
    : `${left} and is back, as pressure, ${beforeClosing(trace, back)}.`;
}

function beforeClosing({ intakeEvents: { close } }: Trace, angle: number): string {
  const before = Math.round(close - angle);
  if (before === 0) return 'as the valve closes';
  return `${Math.abs(before)} degrees ${before > 0 ? 'before the valve closes' : 'after it has closed'}`;
}
