/**
 * Whether an injector can serve from idle to the rev limit: it must not be open for more than the
 * cycle at full load, nor for less than it repeats well at idle.
 *
 *   pulse = m_fuel / flow + dead time,   duty = pulse n / 120
 */
import type { InjectorSpecification } from '../injectors.ts';

/** Duty above which pulses of neighbours run into one another [-]; common practice, no source. */
export const MOST_DUTY = 0.85;

/** Air at idle over a full cylinder [-]; common practice, no source: measured values run 0.2 to 0.35. */
export const IDLE_AIR = 0.25;

export interface PulseFigures {
  name: string;
  /** Pulse [s], dead time included, and duty [-] where the injector alone feeds the engine full. */
  fullPulse: number;
  fullDuty: number;
  /** Pulse at idle where it alone feeds the engine [s], and the shortest that repeats well [s]. */
  idlePulse: number;
  smallestPulse: number;
  /** Whether it can do either alone. */
  servesFull: boolean;
  servesIdle: boolean;
}

/**
 * @param fullFuel fuel a cycle at full load and the highest speed [kg]
 * @param idleFuel fuel a cycle at idle [kg]
 */
export function pulseFigures(
  injector: InjectorSpecification,
  fullFuel: number,
  topSpeed: number,
  idleFuel: number,
): PulseFigures {
  const fullPulse = pulseOf(injector, fullFuel);
  const fullDuty = (fullPulse * topSpeed) / 120;
  const idlePulse = pulseOf(injector, idleFuel);
  return {
    name: injector.name,
    fullPulse,
    fullDuty,
    idlePulse,
    smallestPulse: injector.smallestPulse,
    servesFull: fullDuty <= MOST_DUTY,
    servesIdle: idlePulse >= injector.smallestPulse,
  };
}

/** Largest share of `fuel` [kg] that the injector can give in a cycle at `speed` [rpm]. */
export function mostShare(injector: InjectorSpecification, fuel: number, speed: number): number {
  const open = (MOST_DUTY * 120) / speed - injector.deadTime;
  return Math.min(1, Math.max(0, (open * injector.flow) / fuel));
}

/** Pulse [s] for `fuel` [kg], dead time included. */
export function pulseOf(injector: InjectorSpecification, fuel: number): number {
  return fuel / injector.flow + injector.deadTime;
}
