/** Small volumes that hoses join to the runners, as an engine is told of them; all in SI units. */

/** A hose from just behind a throttle body to a bar. */
export interface HoseSpecification {
  /** Place of its cylinder in the firing order, from 0. */
  place: number;
  /** Length and bore [m]. */
  length: number;
  bore: number;
  /** Effective area of the hole at the runner's end [m^2]. */
  hole: number;
}

/** A small volume that hoses join to runners: of a pressure sensor, of idle air, of both. */
export interface BarSpecification {
  /** Frequency [Hz] and mean pressure [Pa] at which friction and inertia of the hoses are taken. */
  at: { frequency: number; pressure: number };
  hoses: readonly HoseSpecification[];
  /** [m^3] */
  volume: number;
  /** At the end of a hose of its own; absent where there is none, or where it sits on the bar. */
  sensor?: { length: number; bore: number; volume: number };
  /** What lets air of the feed in: bore of the passage and its effective area when open [m^2]. */
  valve?: {
    bore: number;
    area: number;
    /** Times it opens in a cycle of the engine, a whole number, and share of that time that it is open. */
    times: number;
    open: number;
  };
}
