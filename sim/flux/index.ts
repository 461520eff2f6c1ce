/** The registry of numerical fluxes: scenario keyword to function. */
import { fluxHllc } from './hllc.ts';
import type { NumericalFlux } from './numericalFlux.ts';
import { fluxRusanov } from './rusanov.ts';

export const FLUXES: Readonly<Record<string, NumericalFlux>> = {
  hllc: fluxHllc,
  rusanov: fluxRusanov,
};
