/** What the flow meter, the pressure sensor and the plate are led astray by, in sentences. */
import { climbed, dayError } from '../../decision/airSense.ts';
import { ringingSpeed } from '../../decision/boxRinging.ts';
import { STEADY } from '../../decision/flowMeter.ts';
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { leadChamber } from '../../fittings.ts';
import { rpm, share, sizeIn } from '../../report/figures.ts';
import * as q from '../../report/quantities.ts';
import type { MeteredPoint, MeterStudy } from './compute.ts';
import type { SensorErrors } from './errors.ts';
import { worstOf } from './figure.ts';
import { rangeOfFlow } from './range.ts';
import * as t from './tables.ts';

export type Known = MeteredPoint & { errors: SensorErrors };
/** Points that have not failed. */
export const knownOf = ({ points }: MeterStudy) =>
  points.filter((one): one is Known => !!one.errors);
export const plate = (angle: number) => q.told(q.plateAngle('', ''), angle);
const flow = (value: number) => q.told(t.FLOW, value);
const placeWords = ({ speed, above }: MeteredPoint) =>
  `at ${rpm(speed)} with plates ${plate(above)} above their stop`;

const KINDS: Record<MeterStudy['meter']['kind'], string> = {
  hot: 'A hot element',
  difference: 'A meter by difference of pressure',
  straight: 'A meter that follows the flow straight, blind to its direction,',
};

export function meterWords(study: MeterStudy, unit?: LengthUnit): string {
  const { meter } = study;
  const worst = worstOf(study);
  if (!worst) return '';
  const pulses = knownOf(study).map(({ errors }) => errors.pulse);
  const { pulsation } = worst.seen!;
  const signed = (value: number) => q.told(t.PULSE, value);
  return (
    `${KINDS[meter.kind]} ${sizeIn(meter.position, unit)} into the snorkel is led astray by pulsation by ` +
    `${signed(Math.min(...pulses))} to ${signed(Math.max(...pulses))}, most ${placeWords(worst)}, where the flow swings between ` +
    `${flow(pulsation.least)} and ${flow(pulsation.most)} about ${flow(pulsation.mean)} and ${share(pulsation.back, 0)} of the air goes back and comes again. ` +
    steadyWords(study)
  );
}

/** From which speed on the flow counts as steady. */
function steadyWords(study: MeterStudy): string {
  const known = knownOf(study);
  const restless = (one: Known) => one.seen!.pulsation.unsteadiness > STEADY;
  const last = known.findLast(restless);
  if (!last) return 'It flows steadily everywhere.';
  const next = study.meter.speeds.find((speed) => speed > last.speed);
  const limit = `fluctuation up to ${STEADY} of the mean`;
  return next === undefined
    ? `At no speed is the flow steady at every opening (${limit}).`
    : `From ${rpm(next)} on it flows steadily (${limit}).`;
}

/** A speed counts as the ringing one within this share of it. */
const NEAR = 0.1;

export function ringingWords(study: MeterStudy): string {
  const { airbox, engine } = study;
  const { volume, cylinders } = leadChamber(airbox, engine.cylinder.count);
  const speed = ringingSpeed({ ...airbox, volume }, cylinders, engine.intake.feed.temperature);
  const worst = worstOf(study);
  const there =
    worst && Math.abs(worst.speed / speed - 1) < NEAR ? ', where the meter is worst' : '';
  const at = `Box and snorkel ring with the firing at about ${rpm(Math.round(speed / 10) * 10)}`;
  return speed > study.meter.speeds.at(-1)!
    ? `${at}, above every speed asked for: more volume or a longer, narrower snorkel would bring it down to them.`
    : `${at}${there}: more volume or a longer, narrower snorkel lowers that speed.`;
}

/** Less is what mesh and settling leave. */
const PASSES = 0.03;

/** What the meter counts and no cylinder keeps. */
export function throughWords(study: MeterStudy): string {
  const worst = knownOf(study).toSorted((a, b) => b.seen!.through - a.seen!.through)[0];
  if (!worst || worst.seen!.through < PASSES) return '';
  return (
    `Any meter counts what passes straight into the exhaust while both valves are open, up to ${q.told({ ...t.THROUGH, signed: false }, worst.seen!.through)} more than ` +
    `cylinders catch, ${placeWords(worst)}; that is in none of the errors.`
  );
}

export function rangeWords(study: MeterStudy): string {
  const { meter } = study;
  const range = rangeOfFlow(study);
  if (!range) return '';
  const { least, most, peak, turnDown, idle } = range;
  const from = meter.most / meter.turnDown;
  const enough = least >= from && peak <= meter.most;
  return (
    `Range: from ${flow(least)}${idle ? ' at idle' : ''} to ${flow(most)}, peaks ${flow(peak)}: a turn-down of ${turnDown.toFixed(0)}, of a difference of ` +
    `pressure ${(turnDown * turnDown).toFixed(0)}. The meter reads ${flow(from)} to ${flow(meter.most)}: ${enough ? 'enough' : 'not enough'}.`
  );
}

/** The worst of a sensor that can tell. */
function worstBy(study: MeterStudy, sensor: 'pressure' | 'angle'): Known | undefined {
  return knownOf(study)
    .filter(({ errors }) => errors[sensor] !== undefined)
    .toSorted((a, b) => b.errors[sensor]! - a.errors[sensor]!)[0];
}

const blindWords = (study: MeterStudy, sensor: 'pressure' | 'angle', why: string) => {
  const blind = knownOf(study).filter(({ errors }) => errors[sensor] === undefined).length;
  return blind > 0 ? ` At ${blind} of ${study.points.length} ${why}, and it tells nothing.` : '';
};

export function pressureWords(study: MeterStudy): string {
  const { meter } = study;
  const worst = worstBy(study, 'pressure');
  if (!worst) return '';
  const alone = Math.max(...knownOf(study).map(({ seen }) => seen!.pressure.alone));
  const ripple = Math.max(...knownOf(study).map(({ seen }) => seen!.pressure.ripple));
  const joined = study.engine.cylinder.count > 1 ? 'all joined and lagged' : 'lagged';
  const offset = q.told({ ...t.RIPPLE, decimals: 1 }, meter.pressureError);
  return (
    `Pressure: ${offset} off and the ripple that a lag of ${q.told(q.milliseconds('', '', 0), meter.pressureLag)} leaves are ${share(worst.errors.pressure!)} of the air at worst, ` +
    `${placeWords(worst)}. Behind one plate alone it swings by up to ${q.told(t.ALONE, alone)}, ${joined} by ${q.told(t.RIPPLE, ripple)} rms.` +
    blindWords(study, 'pressure', 'it does not rise with the air')
  );
}

export function angleWords(study: MeterStudy): string {
  const { meter } = study;
  const worst = worstBy(study, 'angle');
  if (!worst) return '';
  const { choked, density } = climbed(meter.climb);
  const off = (corrected: boolean) =>
    q.told(q.signedShare('', ''), dayError(meter.climb, corrected, false));
  return (
    `Plate angle: ${plate(meter.plateError)} off and the day are ${share(worst.errors.angle!)} of the air at worst, ${placeWords(worst)}. ` +
    `A climb of ${q.told(q.ALTITUDE, meter.climb)} leaves ${share(choked)} of the air past a choked plate and ${share(density)} by density: a table of angles is off by ${off(false)} without ` +
    `correction and by up to ${off(true)} with p / sqrt(T).${blindWords(study, 'angle', 'air does not rise with the angle')}`
  );
}

/** Time constants to nine tenths of a step: ln 10. */
const NINE_TENTHS = Math.LN10;
/** 40 CFR 1065.930 [s]. */
const ASKED = 0.3;

export function quickWords({ meter, boxTurns }: MeterStudy): string {
  const time = NINE_TENTHS * meter.lag;
  const ms = (value: number) => q.told(q.milliseconds('', '', 0), value);
  const verdict = time <= ASKED ? 'within' : 'longer than';
  return (
    `When plates move, the meter counts what fills the box besides, with a time constant of ${boxTurns.toFixed(1)} turns of the crank at small openings, and has nine tenths of a step after ` +
    `${ms(time)}, ${verdict} the ${ms(ASKED)} that 40 CFR 1065.930 asks; the plate angle leads the air.`
  );
}
