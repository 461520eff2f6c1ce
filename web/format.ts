/** Figures of the core as the page sets them: a true minus, and no break between figure and unit. */
import { type LengthUnit, quantities as q } from '../sim/index.ts';

const NBSP = '\u00a0';
const MINUS = '\u2212';

/** Texts set already, so that what stays while a length is moved costs nothing; no more than this many. */
const done = new Map<string, string>();
const MOST = 2000;

/** Text of the core in the page's type. */
export function typeset(text: string): string {
  let set = done.get(text);
  if (set === undefined) {
    set = setAfresh(text);
    if (done.size === MOST) done.clear();
    done.set(text, set);
  }
  return set;
}

function setAfresh(text: string): string {
  return text
    .replaceAll('+-', '±')
    .replace(/± (?=\d)/g, `±${NBSP}`)
    .replace(/ ±(?=.\d)/g, `${NBSP}±`)
    .replace(/\bcm3\b/g, 'cm³')
    .replace(/\bdeg ?C\b/g, '°C')
    .replace(/(^|[\s(])-(?=\d)/g, `$1${MINUS}`)
    .replace(
      /(\d) (?=(?:mm|in|rpm|kPa|ms|deg|degrees|Nm|N|kW|K|Hz|dB|mg|g)\b|%|cm³|°C)/g,
      `$1${NBSP}`,
    );
}

/** A figure with its unit. */
export const told = (quantity: q.Quantity, value: number) => typeset(q.told(quantity, value));

/** A length [m] in the unit of the scenario. */
export const lengthIn = (length: number, unit: LengthUnit) => told(q.lengthQuantity(unit), length);

/** A speed [rpm]. */
export const rpm = (speed: number) => told(q.SPEED, Math.round(speed));
