/**
 * Internal energy and specific heat of the mixture, by polynomials of t = T / 1000 K, one set below
 * 1000 K and one above:
 *
 *   cv = sum_j c_j t^j,   e = z + T sum_j c_j t^j / (j + 1),   c_j = air_j + Yb dB_j + Yf dF_j
 *
 * T above 1000 K has its own z, so that e is one curve. Source: the components' own laws, whose
 * coefficients these are (gas/gas.ts).
 */

import { all, any, type B, type I, K, type V } from './lanes.ts';
import { GAS_HIGH, GAS_LOW, R_AIR, R_BURNED, R_FUEL } from './layout.ts';

/** What `caloric` found: cv [J/kg K], e [J/kg], and what products and vapour add to e [J/kg]. */
export let gasCv: V = 0;
export let gasE: V = 0;
export let gasEBurned: V = 0;
export let gasEFuel: V = 0;

/** Gas constant of the mixture [J/kg K]. */
export function gasConstant(burned: V, fuel: V): V {
  return K[R_AIR] + burned * K[R_BURNED] + fuel * K[R_FUEL];
}

/** Finds cv and e at temperature [K]; without `vapour` fuel counts as none. */
export function caloric(temperature: V, burned: V, fuel: V, vapour: boolean): void {
  const cool: B = temperature < 1000;
  if (all(cool)) {
    inRange(GAS_LOW, temperature, burned, fuel, vapour);
  } else if (!any(cool)) {
    inRange(GAS_HIGH, temperature, burned, fuel, vapour);
  } else {
    inRange(GAS_LOW, temperature, burned, fuel, vapour);
    const cv: V = gasCv;
    const e: V = gasE;
    const eBurned: V = gasEBurned;
    const eFuel: V = gasEFuel;
    inRange(GAS_HIGH, temperature, burned, fuel, vapour);
    gasCv = cool ? cv : gasCv;
    gasE = cool ? e : gasE;
    gasEBurned = cool ? eBurned : gasEBurned;
    gasEFuel = cool ? eFuel : gasEFuel;
  }
}

/** The same with the coefficients at `k`: of air, of products less air, of vapour less air. */
function inRange(k: I, temperature: V, burned: V, fuel: V, vapour: boolean): void {
  const t: V = temperature * 0.001;
  gasEBurned = energyOf(k + 11, temperature, t);
  gasE = energyOf(k, temperature, t) + burned * gasEBurned;
  gasCv = capacityOf(k, t) + burned * capacityOf(k + 11, t);
  if (vapour) {
    gasEFuel = energyOf(k + 22, temperature, t);
    gasE = gasE + fuel * gasEFuel;
    gasCv = gasCv + fuel * capacityOf(k + 22, t);
  }
}

/** Five coefficients of cv, five of e, z. */
function capacityOf(k: I, t: V): V {
  return K[k] + t * (K[k + 1] + t * (K[k + 2] + t * (K[k + 3] + t * K[k + 4])));
}

function energyOf(k: I, temperature: V, t: V): V {
  const mean: V = K[k + 5] + t * (K[k + 6] + t * (K[k + 7] + t * (K[k + 8] + t * K[k + 9])));
  return K[k + 10] + temperature * mean;
}
