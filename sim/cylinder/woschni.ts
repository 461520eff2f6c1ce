/** Factor of Woschni's law for p in Pa in place of kPa (step/cylinder.ts): 3.26 / 1000^0.8. Source: as there. */
export const WOSCHNI = 3.26 * 1000 ** -0.8;
