/**
 * Sound of small mouths that breathe, heard in the open over a hard plane.
 *
 *   P_k = (i omega_k M_k / 4 pi) sum over mouths and their images of exp(-i (omega_k R/c + phase)) / R
 *
 *   M_k  amplitude of the mass flow out of one mouth [kg/s]   R  way from mouth or image to the ear [m]
 *   P_k  amplitude of pressure at the ear [Pa]   c  speed of sound [m/s]   phase  2 pi k of the mouth's lag
 *
 * A mouth sends alike in all directions while it is small against the wavelength: radius times wave number
 * below about 1. The mouths stand in a row, or one a bank, at one height, side on to the ear, which faces their middle.
 *
 * Source: Pierce, Acoustics, sec. 4-1 and 5-1 (monopole; image in a rigid plane), from memory.
 */
import { cos, sin } from '../elementary/angles.ts';
import { square } from '../elementary/powers.ts';
import { frequencyOf, type Orders, phaseOf } from './orders.ts';

/** One mouth of the row. */
export interface Mouth {
  /** Along the row from its middle [m]. */
  place: number;
  /** Bank of a V that it stands in, from 0, and how far towards the ear from the middle of both [m]; absent: one row. */
  bank?: number;
  across?: number;
  /** By what share of a cycle it breathes later [0..1]. */
  lag: number;
}

/** The row of mouths. */
export interface Row {
  mouths: readonly Mouth[];
  /** Above the plane [m]. */
  height: number;
}

export interface Listener {
  /** From the row, or the middle between both, level [m]. */
  distance: number;
  /** Above the plane [m]. */
  height: number;
}

/** Sound at the ear; `flow` is out of one mouth [kg/s], the result a pressure [Pa]. */
export function heard(flow: Orders, row: Row, ear: Listener, soundSpeed: number): Orders {
  const ways = row.mouths.flatMap(({ place, lag, across = 0 }) =>
    [ear.height - row.height, ear.height + row.height].map((rise) => ({
      lag,
      way: Math.sqrt(square(ear.distance - across) + square(place) + square(rise)),
    })),
  );
  const all = flow.re.map((_, entry) => {
    const frequency = frequencyOf(flow, entry);
    let [re, im] = [0, 0];
    for (const { way, lag } of ways) {
      const phase = phaseOf((frequency * way) / soundSpeed + (entry + 1) * lag);
      re += cos(phase) / way;
      im -= sin(phase) / way;
    }
    return times(
      { re, im },
      { re: -frequency * flow.im[entry]! * 0.5, im: frequency * flow.re[entry]! * 0.5 },
    );
  });
  return {
    fundamental: flow.fundamental,
    re: all.map(({ re }) => re),
    im: all.map(({ im }) => im),
  };
}

interface Pair {
  re: number;
  im: number;
}

const times = (a: Pair, b: Pair): Pair => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
