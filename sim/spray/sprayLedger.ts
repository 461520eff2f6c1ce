/**
 * The books of a spray since the last reset: what came in from outside the gas and the liquid, and
 * what left both. Masses [kg], energies [J] by the reference of the gas (vapour zero at 298.15 K).
 */
export interface SprayLedger {
  /** Through the injectors, kinetic energy included. */
  injectedMass: number;
  injectedEnergy: number;
  /** For good: drops that missed the mouth or flew out of reach, vapour that did not come back. */
  lostMass: number;
  lostEnergy: number;
  /** Vapour blown out of the mouth, taken up from the open air's books. */
  blownMass: number;
  blownEnergy: number;
  /** Kept from the gas by the coupling. */
  withheldMass: number;
  withheldEnergy: number;
  /** Heat from walls into films. */
  wallHeat: number;
  /** Work of gravity on drops. */
  gravityWork: number;
}

export function sprayLedger(): SprayLedger {
  return {
    injectedMass: 0,
    injectedEnergy: 0,
    lostMass: 0,
    lostEnergy: 0,
    blownMass: 0,
    blownEnergy: 0,
    withheldMass: 0,
    withheldEnergy: 0,
    wallHeat: 0,
    gravityWork: 0,
  };
}

/** Mass [kg] and energy [J] that gas and liquid together have received. */
export function receivedBySpray(l: SprayLedger): { mass: number; energy: number } {
  return {
    mass: l.injectedMass + l.blownMass - l.lostMass - l.withheldMass,
    energy:
      l.injectedEnergy +
      l.blownEnergy +
      l.wallHeat +
      l.gravityWork -
      l.lostEnergy -
      l.withheldEnergy,
  };
}
