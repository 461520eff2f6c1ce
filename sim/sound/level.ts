/**
 * Sound levels of what repeats every cycle.
 *
 *   L = 10 log10( sum of |P_k|^2 / 2 / p0^2 ),  p0 = 20 uPa;   each term times R_A(f)^2 / R_A(1 kHz)^2 in dB(A)
 *   R_A(f) = f4^2 f^4 / ((f^2 + f1^2) sqrt((f^2 + f2^2) (f^2 + f3^2)) (f^2 + f4^2))
 *
 *   f1 20.60, f2 107.7, f3 737.9, f4 12194 Hz
 *
 * Sources: reference pressure, ISO 1683; weighting A, IEC 61672-1:2013, annex E; both from memory.
 */
import { log10, square } from '../elementary/powers.ts';
import { frequencyOf, type Orders } from './orders.ts';

/** Sound pressure of 0 dB [Pa]. */
const REFERENCE_PRESSURE = 20e-6;

const [F1, F2, F3, F4] = [20.6, 107.7, 737.9, 12194] as const;

function response(frequency: number): number {
  const f = square(frequency);
  const middle = Math.sqrt((f + square(F2)) * (f + square(F3)));
  return (square(F4) * square(f)) / ((f + square(F1)) * middle * (f + square(F4)));
}

const AT_1_KHZ = response(1000);

/** Weighting A of a frequency [Hz] as a factor of pressure [-]. */
export const weightA = (frequency: number): number => response(frequency) / AT_1_KHZ;

/** A mean square of pressure [Pa2] as a level [dB]. */
export const levelOf = (meanSquare: number): number =>
  10 * log10(meanSquare / square(REFERENCE_PRESSURE));

/** Mean square of one order [Pa2]. */
export const orderPower = ({ re, im }: Orders, entry: number): number =>
  (square(re[entry]!) + square(im[entry]!)) / 2;

/** Level of all orders together [dB]. */
export function level(orders: Orders): number {
  return levelOf(orders.re.reduce((sum, _, entry) => sum + orderPower(orders, entry), 0));
}

/** The same by weighting A [dB(A)]. */
export function levelA(orders: Orders): number {
  const weighted = (entry: number) =>
    orderPower(orders, entry) * square(weightA(frequencyOf(orders, entry)));
  return levelOf(orders.re.reduce((sum, _, entry) => sum + weighted(entry), 0));
}
