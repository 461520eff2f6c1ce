/** Keywords of a scenario's numerics. */

/** theta of step/limiter.ts. */
export const LIMITERS = { minmod: 1, 'theta-1.7': 1.7, mc: 2 } as const;
export type LimiterName = keyof typeof LIMITERS;

/** step/faces.ts. */
export const FLUXES = ['hllc', 'rusanov'] as const;
export type FluxName = (typeof FLUXES)[number];
