/**
 * What a throttle plate lets through. A jet of area sigma A leaves the opening, contracted, widens to the
 * bore A, and the plate drags:
 *
 *   sigma = Cc(s) A_open / A,   K = (1/sigma - 1)^2 + D     slow flow, dynamic heads of the bore
 *
 * s = 1 - cos psi / cos psi0: what the plate alone leaves open, for a round shaft contracts nothing;
 * A_open with shaft and rim gap (butterfly.ts), or of a slide or barrel (throttles.ts); Cc of contraction.ts; D so that wide open K is the stated
 * loss. Fast flow by the same momentum balance, jet to bore:
 *
 *   p2 + m v2 (1 + D/2) = p (1 - sigma) + pt sigma + m vt,   enthalpy constant
 *
 * p around the jet, pt in it (p, or critical when choked), m the flux of the bore. The step's throat wins
 * nothing back behind it (step/constriction.ts), so it is given the effective area Ae with which the
 * isentropic law at p2 gives that m: A / sqrt(1 + K) in slow flow, sigma A where a small opening chokes.
 *
 * A bleed past the plate is a short drilled hole, of Cd 0.82, that wins nothing back.
 * Source: Borda-Carnot; Cd: Weisbach, as in Unwin, Hydraulics, Encyclopaedia Britannica 1911, sec. 63.
 * Holds for a thin sharp plate in a straight pipe, quasi-steady; checked against Weisbach's valves.
 */

import { circleArea } from '../duct/profile.ts';
import { power, square } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import { LEVELS } from '../step/constriction.ts';
import { jetContraction, slowContraction } from './contraction.ts';
import { criticalRatio, flowFunction } from './nozzle.ts';
import { type Plate, throttleOf } from './throttles.ts';

const WIDE_OPEN = 90;
const DRILLED = 0.82;
/** Of air; the table of a plate holds for any gas near it. */
const GAMMA = 1.4;
const G = (GAMMA - 1) / GAMMA;

interface Opening {
  /** Open area over the bore's [-]. */
  open: number;
  /** Contraction of slow flow [-]. */
  contraction: number;
  /** Drag in dynamic heads of the bore [-]. */
  drag: number;
}

function openingOf(plate: Plate, angle: number): Opening {
  const bore = circleArea(plate.bore);
  const { openArea, edges, openings } = throttleOf(plate);
  const contraction = slowContraction(edges(plate, angle));
  return {
    open: inSeries(openArea(plate, angle) / bore, contraction, openings),
    contraction,
    drag: plate.openLoss - square(bore / openArea(plate, WIDE_OPEN) - 1),
  };
}

/** The one opening that loses as much as several of share `open`, one behind the other: losses add up. */
function inSeries(open: number, contraction: number, openings: number): number {
  if (openings === 1 || open <= 0) return open;
  const loss = openings * square(1 / (contraction * open) - 1);
  return 1 / (contraction * (1 + Math.sqrt(loss)));
}

/** Loss of the plate in slow flow, dynamic heads of the bore [-]; without the bleed. */
export function plateLoss(plate: Plate, angle: number): number {
  const { open, contraction, drag } = openingOf(plate, angle);
  return square(1 / (contraction * open) - 1) + drag;
}

/** Effective area [m^2] in slow flow, of a throat that wins nothing back. */
export function throttleArea(plate: Plate, angle: number): number {
  return circleArea(plate.bore) / Math.sqrt(1 + plateLoss(plate, angle)) + bleedArea(plate);
}

/** Pressure behind [over stagnation] and flux of the bore [psi, nozzle.ts], with `ratio` around the jet. */
function behindJet(
  { open, contraction, drag }: Opening,
  ratio: number,
): { pressure: number; flux: number } {
  const sigma = jetContraction(contraction, ratio, GAMMA) * open;
  const throat = Math.max(ratio, criticalRatio(GAMMA));
  const flux = sigma * flowFunction(ratio, GAMMA);
  const speed = Math.sqrt((2 / G) * (1 - power(throat, G)));
  const thrust = ratio * (1 - sigma) + throat * sigma + flux * speed;
  // m T2 / v2 + m v2 (1 + D/2) = thrust, T2 = 1 - G/2 v2^2: the slower root.
  const b = 1 + 0.5 * drag - 0.5 * G;
  const root = Math.sqrt(Math.max(square(thrust) - 4 * b * square(flux), 0));
  const fluxPerSpeed = 0.5 * (thrust + root);
  const v = flux / fluxPerSpeed;
  return { pressure: fluxPerSpeed * (1 - 0.5 * G * v * v), flux };
}

/** Pressures around the jet at which a plate is worked out; the table is straight between them. */
const SAMPLES = 256;

/**
 * Effective area over that of slow flow against the temperature ratio t = r^((gamma-1)/gamma) of the
 * expansion, in LEVELS even steps from 0 to 1, and one entry more.
 */
export function plateGrowth(plate: Plate, angle: number): Float64Array {
  const opening = openingOf(plate, angle);
  const slow = throttleArea(plate, angle);
  // What is shut is so at any pressure.
  if (slow <= 0) return new Float64Array(LEVELS + 2).fill(1);
  const fast = Array.from({ length: SAMPLES }, (_, i) =>
    behindJet(opening, (i + 1) / (SAMPLES + 1)),
  );
  const levels = [...fast.map(({ pressure }) => power(pressure, G)), 1];
  const bleed = bleedArea(plate);
  const growth = fast.map(({ pressure, flux }) => {
    const share = Math.min(flux / flowFunction(pressure, GAMMA), 1);
    return (circleArea(plate.bore) * share + bleed) / slow;
  });
  growth.push(1);
  return Float64Array.from({ length: LEVELS + 2 }, (_, i) =>
    interpolateLinear(levels, growth, i / LEVELS),
  );
}

/** Effective area over that of slow flow at a pressure ratio [0..1], from a plate's table. */
export function growthAt(table: Float64Array, ratio: number): number {
  const at = LEVELS * power(Math.min(ratio, 1), G);
  const i = Math.floor(at);
  return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
}

function bleedArea({ bleed }: Plate): number {
  return bleed ? DRILLED * bleed.open * circleArea(bleed.bore) : 0;
}
