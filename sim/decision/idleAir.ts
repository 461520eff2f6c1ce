/**
 * Air at idle by closed formulas.
 *
 *   choked hole          m = Cd A psi p0 / sqrt(R T),  psi the critical flow function
 *   pulsed valve         mean m = m_open (duty - t_dead f);  dp = m (1 - duty) R T / (f V) in a volume V behind it
 *   one cylinder apart   its air (1 + x) of the others': lambda N (1 + x) / (N + x), theirs N / (N + x), of equal
 *                        fuel with the common mixture at 1
 *   filling              turns = 2 V / (eta Vd), the volume V behind a choked plate or valve
 *
 *   eta  filling at manifold density [-]; no constant is fitted
 *
 * Source: mass balance, exact while holes choke; nozzle as nozzle.ts.
 */
import { flowFunction } from '../loss/nozzle.ts';

const GAMMA = 1.4;

/** Still air before a hole. */
export interface StillAir {
  /** Pressure [Pa], temperature [K], gas constant [J/(kg K)]. */
  pressure: number;
  temperature: number;
  gasConstant: number;
}

/** Mass flow of an effective area [m^2] that chokes [kg/s]. */
export function chokedFlow(area: number, { pressure, temperature, gasConstant }: StillAir): number {
  return (area * pressure * flowFunction(0, GAMMA)) / Math.sqrt(gasConstant * temperature);
}

/** A valve that is opened and shut so many times a second. */
export interface PulsedValve {
  /** Flow held open [kg/s]. */
  flow: number;
  /** [Hz] */
  frequency: number;
  /** Time before it opens, less that before it shuts [s]. */
  deadTime: number;
}

/** Share of the period that it must be driven for a mean flow [kg/s]; above 1 where it cannot. */
export function dutyFor({ flow, frequency, deadTime }: PulsedValve, wanted: number): number {
  return wanted / flow + deadTime * frequency;
}

/** Peak to peak of the pressure [Pa] in a volume [m^3] that takes a mean flow [kg/s] on at one rate. */
export function valveRipple(
  valve: PulsedValve,
  wanted: number,
  volume: number,
  { gasConstant, temperature }: StillAir,
): number {
  const open = Math.min(wanted / valve.flow, 1);
  return (wanted * (1 - open) * gasConstant * temperature) / (valve.frequency * volume);
}

/** Lambda of one cylinder with a share [-] more air than each other, and of those; equal fuel, together 1. */
export function oneApart(share: number, cylinders: number): { one: number; others: number } {
  const others = cylinders / (cylinders + share);
  return { one: (1 + share) * others, others };
}

/** Crank turns in which a volume [m^3] behind a choked hole fills to one e-th; `swept` by what it feeds. */
export function turnsToFill(volume: number, swept: number, filling = USUAL_FILLING): number {
  return (2 * volume) / (filling * swept);
}

/** Filling at manifold density at idle [-]; common practice, no source. */
const USUAL_FILLING = 0.8;
