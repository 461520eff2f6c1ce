/** What a length costs and where, and how sure the figures are between the speeds, in words. */
import { inTarget } from '../../decision/target.ts';
import { percentOver } from '../../decision/tradeOff.ts';
import { change, lengthIn, percent, rpm, UNFELT } from '../../report/figures.ts';
import { FLYWHEEL_POWER, FLYWHEEL_TORQUE, scored, told } from '../../report/quantities.ts';
import { inTens, lossWords, stretchWords } from '../verdict.ts';
import type { LengthStudy } from './compute.ts';

/** What is lost outside the bands. */
export function price({ decision, speeds, target, recommended, baseline }: LengthStudy): string {
  if (recommended.length === baseline.length) return '';
  if (speeds.every((speed) => inTarget(target, speed))) {
    return 'No speed outside the band was computed, so the price there is not known.';
  }
  const { worstLossPercent, worstLossSpeed, feltLossPercent } = decision;
  if (!Number.isFinite(worstLossPercent)) {
    return 'The price outside the band is not known, because points there failed.';
  }
  if (worstLossSpeed === undefined) return 'No speed computed outside the band loses by it.';
  return `The price is paid outside the band: at worst ${lossWords(worstLossPercent, worstLossSpeed, feltLossPercent)}.`;
}

/** What is lost inside the bands, and where it wins and loses over all speeds. */
export function inside({ decision, target, recommended, baseline }: LengthStudy): string {
  const { bandLossPercent, bandLossSpeed, feltBandLossPercent, least, leastSpeed } = decision;
  const figure = told(scored(target.score), least);
  const leastWords = `the least in the band is ${figure}, at ${rpm(Math.round(leastSpeed))}`;
  if (recommended.length === baseline.length) return `${capital(leastWords)}.`;
  const loses = decision.stretches.filter(({ changePercent }) => changePercent < 0);
  const where = [
    stretchWords(decision.stretches, 'wins'),
    ...(loses.length > 0 ? [stretchWords(decision.stretches, 'loses')] : []),
  ];
  const all = where.join(' and ');
  const overAll = all === '' ? '' : ` Over all speeds it ${all}.`;
  const band =
    bandLossSpeed === undefined || bandLossPercent < UNFELT
      ? 'No speed in the band loses by it'
      : `Inside the band it loses too, at worst ${lossWords(bandLossPercent, bandLossSpeed, feltBandLossPercent)}`;
  return `${band}; ${leastWords}.${overAll}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Both lengths as a dyno at the flywheel would compare them. */
export function flywheelWords({
  flywheel,
  recommended,
  baseline,
  unit = 'mm',
}: LengthStudy): string {
  const [ours, own] = [flywheel.recommended, flywheel.baseline];
  const torque = (value: number) => told(FLYWHEEL_TORQUE[unit], value);
  const power = (value: number) => told(FLYWHEEL_POWER[unit], value);
  if (![ours, own].every(({ meanTorque, power: most }) => meanTorque > 0 && most > 0)) return '';
  const at = rpm(inTens(ours.powerSpeed));
  const same = recommended.length === baseline.length;
  const than = same
    ? ''
    : ` instead of ${torque(own.meanTorque)} (${change(percentOver(ours.meanTorque, own.meanTorque))})`;
  const before = same ? '' : ` instead of ${power(own.power)}`;
  return (
    `At the flywheel, less friction by a correlation: mean torque in the band ${torque(ours.meanTorque)}${than}, ` +
    `greatest power ${power(ours.power)}${before}, at ${at}.`
  );
}

/** What becomes of the answer where the band lies a little elsewhere. */
export function edge({ moved, recommended, unit }: LengthStudy): string {
  if (moved.length === 0) return '';
  const stays = moved.filter(({ gainPercent }) => gainPercent < UNFELT);
  const turn = (by: number) => (by < 0 ? 'lower' : 'higher');
  const words = (by: number) => `${rpm(Math.abs(by))} ${turn(by)}`;
  const turns = stays.map(({ by }) => turn(by)).join(' or ');
  const name = lengthIn(recommended.length, unit);
  const parts = [
    ...(stays.length > 0
      ? [
          `with the band ${rpm(Math.abs(stays[0]!.by))} ${turns} ${name} stays the best, or within ` +
            percent(UNFELT),
        ]
      : []),
    ...moved
      .filter((one) => !stays.includes(one))
      .map(
        ({ by, length, gainPercent }) =>
          `with the band ${words(by)} ${lengthIn(length, unit)} would win by ${percent(gainPercent)}`,
      ),
  ];
  return `${capital(parts.join('; '))}.`;
}
